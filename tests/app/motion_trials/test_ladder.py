"""The page *Ladder*, by keyboard: blind scores in, the step to use, kept to the lot, out."""

import numpy as np
import pytest

from app.pages.motion_trials.ladder import LadderPage
from core.records.rows import Machine, TrialState
from tests.app.motion_trials.motionpages import (
    choose,
    hidden,
    in_sight,
    open_page,
    press,
    rows_of,
    type_readings,
    type_setting,
    verdict,
)

PLATEAU = {200: 0, 205: 1, 210: 4, 215: 4, 220: 4, 225: 1, 230: 0}


@pytest.fixture
def page(qtbot, shop):
    return open_page(qtbot, shop, LadderPage)


def score(page, planted, first=0):
    for place, row in rows_of(page)[first:]:
        page.form.model.edit(place, "measured_mm", str(planted[row["step"]]))


def test_who_scores_does_not_see_the_steps_and_they_are_shuffled(page):
    steps = [row["step"] for _, row in rows_of(page)][:7]
    assert sorted(steps) == sorted(PLATEAU) and steps not in (sorted(steps), sorted(steps)[::-1])
    assert hidden(page) == {"judge", "step"}
    press(page.form.key_button)
    assert hidden(page) == set()
    press(page.form.key_button)
    assert hidden(page) == {"judge", "step"}


def test_scores_typed_by_keyboard_alone_give_the_middle_of_the_plateau(qtbot, page, store, shop):
    type_readings(qtbot, page, [str(PLATEAU[row["step"]]) for _, row in rows_of(page)])
    press(page.form.more_button)
    assert len(rows_of(page)) == 28
    score(page, PLATEAU, first=14)
    assert "Nozzle temperature: Use 215 °C for this lot on this machine" in verdict(page)
    assert "All other settings" in page.card.untouched.text()
    assert [event.x for event in page.plot.data.events] == [215]
    assert {"mean score", "judge 1", "judge 2"} <= {series.name for series in page.plot.data.points}
    page.keep()
    (kept,) = (t for t in store.trials(subject="ladder") if t.state is TrialState.KEPT)
    assert [(e.name, e.value) for e in kept.estimates] == [("ladder_temperature", 215.0)]
    assert kept.conditions["ladder"] == "temperature" and kept.method == "ladder 1"
    now = store.in_force("nozzle_temperature", shop.machine.id, shop.lot.id)
    assert (now.new, now.unit, now.lot_id) == (215.0, "°C", shop.lot.id)
    assert store.in_force("nozzle_temperature", shop.machine.id) is None
    assert "Use 215" in verdict(page) and not page.card.keep_button.isEnabled()
    assert hidden(page) == set()  # nothing is left to score
    page.form.new_button.click()
    assert hidden(page) == {"judge", "step"}


def test_nothing_tells_how_the_steps_stand_while_somebody_still_scores(qtbot, page):
    texts = [str(PLATEAU[row["step"]]) for _, row in rows_of(page)]
    assert "show expected" not in in_sight(page)  # of a score nothing is expected
    type_readings(qtbot, page, texts[:12])
    assert page.plot.data.point_count == 0 and page.card.card.rows == ()
    says = verdict(page)
    assert "Still to be scored" in says and "judge 2: F, G." in says and "judge 1" not in says
    assert "when all rows are scored or excluded, or with “Show the steps”" in says
    assert "Hidden until all pieces are scored" in in_sight(page)
    assert "No score yet" not in in_sight(page) and "°C" not in page.plot.accessibleDescription() + says
    assert not page.card.keep_button.isEnabled() and "press “Show the steps”" in page.why_not_keep()
    page.keep()
    assert page.kept_trial is None
    press(page.form.key_button)
    assert page.plot.data.point_count > 0 and "Still to be scored" not in verdict(page)
    press(page.form.key_button)
    assert page.plot.data.point_count == 0 and "Still to be scored" in verdict(page)
    type_readings(qtbot, page, texts[12:])
    assert page.plot.data.point_count > 0 and "Still to be scored" not in verdict(page)
    press(page.form.more_button)
    assert page.plot.data.point_count == 0 and "judge 1: H, J, K, L, M, N, P; judge 2: H" in verdict(page)


def test_the_sentences_of_too_few_scores_do_not_tell_how_they_stand_either(page):
    for place, _ in rows_of(page)[:7]:
        page.form.model.edit(place, "measured_mm", "2")
    assert "Still to be scored" in verdict(page) and "judge 2: A, B, C, D, E, F, G" in verdict(page)
    press(page.form.key_button)
    assert "One pair of eyes only" in verdict(page) and "One pair of eyes only" in page.plot.empty.text()


def test_an_excluded_piece_is_not_waited_for(page):
    score(page, PLATEAU)
    place, _ = rows_of(page)[3]
    page.form.model.edit(place, "measured_mm", "")
    assert "Still to be scored" in verdict(page) and "judge 1: D." in verdict(page)
    page.form.model.set_excluded(place, True, "fell off the bed")
    assert "Still to be scored" not in verdict(page) and page.plot.data.point_count > 0


def test_a_kept_trial_shows_all_and_the_next_one_begins_blind(page, store):
    for place, row in rows_of(page)[:-1]:
        page.form.model.edit(place, "measured_mm", str(PLATEAU[row["step"]]))
    press(page.form.key_button)
    before = verdict(page)
    page.keep()
    assert page.kept_trial is not None and "Still to be scored" not in verdict(page)
    assert page.plot.data.point_count > 0 and before.split(":")[0] in verdict(page)
    page.form.new_button.click()
    assert not page.form.key_button.isChecked() and hidden(page) == {"judge", "step"}
    page.form.model.edit(0, "measured_mm", "2")
    assert "Still to be scored" in verdict(page)


def test_the_same_step_again_verifies_the_one_in_force(page, store, shop):
    for _ in range(2):
        press(page.form.more_button)
        score(page, PLATEAU)
        page.keep()
        page.form.new_button.click()
    now = store.in_force("nozzle_temperature", shop.machine.id, shop.lot.id)
    assert now.verified_by is not None
    assert page.form.settings.field("in_force").value() == 215.0


def test_hotter_than_the_machine_may_be_is_refused_at_its_specimen(page):
    type_setting(page, "high", "260")
    place, _ = next((place, row) for place, row in rows_of(page) if row["step"] == 260)
    page.form.model.edit(place, "measured_mm", "4")
    assert "Refused" in verdict(page) and "240 °C" in verdict(page)
    assert page.form.model.problem(place, "step")


def test_what_cannot_be_a_score_is_named_with_its_specimen(page):
    page.form.model.edit(3, "measured_mm", "2,5")
    assert "D, judge 1: A score of 2.5 lies between two of the scale" in verdict(page)
    page.form.model.edit(3, "measured_mm", "7")
    assert "D, judge 1: A score of 7" in verdict(page) and page.form.model.problem(3, "measured_mm")
    assert "A score of 7" in in_sight(page) and "No score yet" not in in_sight(page)


def test_the_least_retraction_that_does_is_used(page):
    choose(page.form.ladder, "retraction")
    press(page.form.more_button)
    press(page.form.more_button)
    score(page, {0.4: 0, 0.8: 1, 1.2: 3, 1.6: 4, 2.0: 4})
    assert "Retraction: Use 1.2 mm for this lot" in verdict(page)
    assert "80 % of the pieces score 3 or more from 1.1" in verdict(page)
    (estimate,) = page.result.estimates()
    assert estimate.value == 1.2 and 0.2 <= estimate.U < 0.4


def test_the_best_at_the_end_and_no_difference_are_told(page):
    press(page.form.more_button)
    score(page, {200: 0, 205: 1, 210: 2, 215: 2, 220: 3, 225: 3, 230: 4})
    assert "extend the ladder" in verdict(page) and "Cannot tell yet" in verdict(page)
    score(page, dict.fromkeys(PLATEAU, 2))
    assert "No difference seen" in verdict(page)


def test_another_ladder_has_its_own_rows_and_caution(page):
    page.form.model.edit(0, "measured_mm", "4")
    assert "fumes" in page.form.caution.text()
    choose(page.form.ladder, "cornering")
    assert "shake" in page.form.caution.text() and "Square posts" in page.form.how.text()
    assert [row["axis"] for _, row in rows_of(page)] == ["cornering/score"] * 10
    assert len(page.form.model.rows()) == 11  # what is read stays, below, and does not count
    assert page.form.model.mark(10)
    assert page.form.settings.field("low").value() == 2.0
    steps = sorted({row["step"] for _, row in rows_of(page)})
    assert steps[1] / steps[0] == pytest.approx(steps[4] / steps[3], rel=1e-2)


def test_a_ladder_of_the_machine_needs_no_lot_and_holds_for_it(page, store, shop):
    shop.select_lot(None)
    assert "filament lot" in page.why_not_keep()
    choose(page.form.ladder, "cornering")
    press(page.form.more_button)
    steps = sorted({row["step"] for _, row in rows_of(page)})
    score(page, dict(zip(steps, (0, 1, 4, 1, 0), strict=True)))
    assert page.why_not_keep() == ""
    page.keep()
    now = store.in_force("cornering", shop.machine.id)
    assert now.new == steps[2] and now.lot_id is None


def test_pressure_lag_by_widths(page, store, shop):
    choose(page.form.ladder, "lag")
    assert hidden(page) == {"judge"} and page.form.model.column("measured_mm").title == "Width mm"
    rng = np.random.default_rng(1)
    for number, (place, row) in enumerate(rows_of(page)):
        width = 0.45 + (number % 3 - 1) * 4 * (0.043 - row["step"]) + rng.normal(0, 0.005)
        page.form.model.edit(place, "measured_mm", f"{width:.3f}")
    assert "Pressure lag: Use 0.04" in verdict(page) and "parabola" in verdict(page)
    assert page.plot.data.curves[0].name == "parabola"
    page.keep()
    assert store.in_force("pressure_lag", shop.machine.id, shop.lot.id).new == pytest.approx(0.043, abs=0.002)


def test_a_measured_value_may_be_the_least_or_the_most(page):
    choose(page.form.read_by, "high")
    force = {200: 12.0, 205: 15.1, 210: 17.8, 215: 18.9, 220: 18.2, 225: 15.7, 230: 11.6}
    place, row = rows_of(page)[0]
    page.form.model.edit(place, "measured_mm", str(force[row["step"]]))
    assert "Still to be scored" not in verdict(page) and "A parabola needs 5 values" in verdict(page)
    for place, row in rows_of(page)[:6]:
        page.form.model.edit(place, "measured_mm", str(force[row["step"]]))
    assert page.plot.data.point_count == 6  # what is measured nobody is led by: it is shown at once
    score(page, force)
    assert "Use 215" in verdict(page) and page.plot.data.x_label == "Temperature, °C"
    press(page.form.more_button)
    assert [row["feature"] for _, row in rows_of(page)][7] == "H"


def test_impossible_steps_are_said_at_their_field(page):
    type_setting(page, "high", "150")
    assert "above the first one" in page.form.settings.field("high").accessibleDescription()
    press(page.form.more_button)
    assert "above the first one" in page.form.settings.field("high").accessibleDescription()


def test_a_draft_comes_back_with_its_order(qtbot, page, shop):
    page.form.model.edit(3, "measured_mm", "2")
    again = open_page(qtbot, shop, LadderPage)
    assert again.form.model.rows()[3]["raw"] == "2"
    assert [row["step"] for _, row in rows_of(again)] == [row["step"] for _, row in rows_of(page)]


def test_another_machine_brings_its_limits(page, store, shop):
    other = store.add_machine(Machine("Teasel", limits={"hot_end_limit_c": 300.0}))
    shop.select_machine(other.id)
    assert page.form.limits["hot_end_limit_c"] == 300.0

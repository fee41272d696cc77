"""The page *Ladder*, by keyboard: blind scores in, the step to use, kept to the lot, out."""

import math
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from app.pages.motion_trials.ladder import LadderPage
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, SettingInForce, Trial, TrialState
from tests.app.atpage import choose, verdict
from tests.app.motion_trials.motionpages import hidden, in_sight, open_page, press, rows_of, type_readings, type_setting

PLATEAU = {0: 0, 25: 1, 50: 4, 75: 1, 100: 0}  # of the cooling ladder: one score for all
BOND = {200: 0, 205: 1, 210: 3, 215: 4, 220: 4, 225: 4, 230: 4}
CLEAN = {200: 4, 205: 4, 210: 4, 215: 4, 220: 4, 225: 1, 230: 0}
OVERHANG = {200: 4, 205: 4, 210: 4, 215: 3, 220: 2, 225: 1, 230: 0}
PLANTED = {"bond": BOND, "clean": CLEAN, "overhang": OVERHANG}


@pytest.fixture
def warm(qtbot, shop):
    """The page as it opens: the temperature ladder with its criteria."""
    return open_page(qtbot, shop, LadderPage)


@pytest.fixture
def page(warm):
    """The cooling ladder, which has one score."""
    choose(warm.form.ladder, "cooling")
    return warm


def score(page, planted, first=0):
    for place, row in rows_of(page)[first:]:
        page.form.model.edit(place, "measured_mm", str(planted[row["step"]]))


def fill(page, **planted):
    """Score the named criteria as planted, at the steps that are named."""
    for place, row in rows_of(page):
        value = planted.get(row["criterion"], {}).get(row["step"])
        if value is not None:
            page.form.model.edit(place, "measured_mm", str(value))


def of_criterion(page, key):
    return [(place, row) for place, row in rows_of(page) if row["criterion"] == key]


def test_who_scores_does_not_see_the_steps_and_they_are_shuffled(page):
    steps = [row["step"] for _, row in rows_of(page)][:5]
    assert sorted(steps) == sorted(PLATEAU) and steps not in (sorted(steps), sorted(steps)[::-1])
    assert hidden(page) == {"judge", "step"}
    press(page.form.key_button)
    assert hidden(page) == set()
    press(page.form.key_button)
    assert hidden(page) == {"judge", "step"}


def test_scores_typed_by_keyboard_alone_give_the_middle_of_the_plateau(qtbot, page, store, shop):
    type_readings(qtbot, page, [str(PLATEAU[row["step"]]) for _, row in rows_of(page)])
    press(page.form.more_button)
    press(page.form.more_button)
    assert len(rows_of(page)) == 30
    score(page, PLATEAU, first=10)
    assert "Cooling: Use 50 % for this lot on this machine" in verdict(page)
    assert "All other settings" in page.card.untouched.text()
    assert [event.x for event in page.plot.data.events] == [50]
    assert {"mean score", "judge 1", "judge 2"} <= {series.name for series in page.plot.data.points}
    page.keep()
    (kept,) = (t for t in store.trials(subject="ladder") if t.state is TrialState.KEPT)
    assert [(e.name, e.value) for e in kept.estimates] == [("ladder_cooling", 50.0)]
    assert kept.conditions["ladder"] == "cooling" and kept.method == "ladder 2"
    now = store.in_force("cooling", shop.machine.id, shop.lot.id)
    assert (now.new, now.unit, now.lot_id) == (50.0, "%", shop.lot.id)
    assert store.in_force("cooling", shop.machine.id) is None
    assert "Use 50" in verdict(page) and not page.card.keep_button.isEnabled()
    assert hidden(page) == set()  # nothing is left to score
    page.form.new_button.click()
    assert hidden(page) == {"judge", "step"}


def test_nothing_tells_how_the_steps_stand_while_somebody_still_scores(qtbot, page):
    texts = [str(PLATEAU[row["step"]]) for _, row in rows_of(page)]
    assert "show expected" not in in_sight(page)  # of a score nothing is expected
    type_readings(qtbot, page, texts[:8])
    assert page.plot.data.point_count == 0 and page.card.card.rows == ()
    says = verdict(page)
    assert "Still to be scored" in says and "judge 2: D, E." in says and "judge 1" not in says
    assert "when all rows are scored or excluded, or with “Show the steps”" in says
    assert "Hidden until all pieces are scored" in in_sight(page)
    assert "No score yet" not in in_sight(page) and "%" not in page.plot.accessibleDescription() + says
    assert not page.card.keep_button.isEnabled() and "press “Show the steps”" in page.why_not_keep()
    page.keep()
    assert page.kept_trial is None
    press(page.form.key_button)
    assert page.plot.data.point_count > 0 and "Still to be scored" not in verdict(page)
    press(page.form.key_button)
    assert page.plot.data.point_count == 0 and "Still to be scored" in verdict(page)
    type_readings(qtbot, page, texts[8:])
    assert page.plot.data.point_count > 0 and "Still to be scored" not in verdict(page)
    press(page.form.more_button)
    assert page.plot.data.point_count == 0 and "judge 1: F, G, H, J, K; judge 2: F" in verdict(page)


def shown_scores(page):
    return [page.form.model.text(place, "measured_mm") for place, _ in rows_of(page)]


def test_no_judge_sees_the_scores_of_another_until_all_are_in(qtbot, page, store):
    texts = [str(PLATEAU[row["step"]]) for _, row in rows_of(page)]
    type_readings(qtbot, page, texts[:3])
    assert shown_scores(page) == [*texts[:3], "", "", "", "", "", "", ""]  # a judge sees what he typed
    type_readings(qtbot, page, texts[3:5])
    assert "Kept D, judge 1" not in in_sight(page) and "Kept E, judge 1" in in_sight(page)
    assert shown_scores(page) == ["kept"] * 5 + [""] * 5
    type_readings(qtbot, page, texts[5:8])
    assert shown_scores(page) == ["kept"] * 5 + texts[5:8] + ["", ""]
    assert [row["measured_mm"] for _, row in rows_of(page)][:8] == [float(text) for text in texts[:8]]
    table, model = page.form.table, page.form.model
    table.go_to(0)
    index = table.currentIndex()
    told = [index.data(role) for role in (Qt.ItemDataRole.EditRole, Qt.ItemDataRole.ToolTipRole)]
    assert told == ["", "Kept; hidden until all judges have scored."]
    assert model.look(index.row(), index.column()).text == "kept"
    assert page.form.entry.focusProxy().text() == "" and "Type it anew to change it." in in_sight(page)
    assert shown_scores(page)[:8] == ["kept"] * 8  # whoever is done looks at nobody's
    table.copy()
    assert QGuiApplication.clipboard().text() == "kept"
    assert model.setData(index, "") and model.setData(index, "3")
    assert rows_of(page)[0][1]["measured_mm"] == 3.0 and shown_scores(page)[0] == "kept"
    press(page.form.key_button)
    assert shown_scores(page) == ["3", *texts[1:8], "", ""]
    press(page.form.key_button)
    type_readings(qtbot, page, texts[8:])
    assert shown_scores(page) == ["3", *texts[1:]]


def test_a_score_that_cannot_be_is_seen_and_a_kept_trial_shows_all(page):
    score(page, PLATEAU)
    model, (last, _row) = page.form.model, rows_of(page)[-1]
    model.edit(last, "measured_mm", "")
    model.edit(0, "measured_mm", "three")
    model.edit(2, "measured_mm", "7")
    assert [shown_scores(page)[place] for place in (0, 1, 2)] == ["three", "kept", "7"]
    assert "7" in model.problem(2, "measured_mm")
    model.edit(0, "measured_mm", "3")
    model.edit(2, "measured_mm", "3")
    model.set_excluded(last, True, "fell")
    assert "kept" not in shown_scores(page)
    model.set_excluded(last, False)
    assert "kept" in shown_scores(page)
    press(page.form.key_button)
    page.keep()
    assert page.kept_trial is not None and "kept" not in shown_scores(page)


def test_the_sentences_of_too_few_scores_do_not_tell_how_they_stand_either(page):
    for place, _ in rows_of(page)[:5]:
        page.form.model.edit(place, "measured_mm", "2")
    assert "Still to be scored" in verdict(page) and "judge 2: A, B, C, D, E." in verdict(page)
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
        press(page.form.more_button)
        score(page, PLATEAU)
        page.keep()
        page.form.new_button.click()
        choose(page.form.ladder, "cooling")
    now = store.in_force("cooling", shop.machine.id, shop.lot.id)
    assert now.verified_by is not None
    assert page.form.settings.field("in_force").value() == 50.0


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
    press(page.form.more_button)
    score(page, {0: 0, 25: 1, 50: 2, 75: 3, 100: 4})
    assert "nothing lies beyond it" in verdict(page) and "Cannot tell yet" in verdict(page)
    score(page, dict.fromkeys(PLATEAU, 2))
    assert "No difference seen" in verdict(page)


def test_another_ladder_has_its_own_rows_and_caution(warm):
    page = warm
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


def test_a_measured_value_may_be_the_least_or_the_most(warm):
    page = warm
    assert page.form.settings.field("value_unit").isHidden()
    choose(page.form.read_by, "high")
    assert page.form.model.column("measured_mm").title == "Value"
    type_setting(page, "value_unit", "N")
    assert page.form.model.column("measured_mm").title == "Value N" and page.form.settings.field("aim").isHidden()
    force = {200: 12.0, 205: 15.1, 210: 17.8, 215: 18.9, 220: 18.2, 225: 15.7, 230: 11.6}
    place, row = rows_of(page)[0]
    page.form.model.edit(place, "measured_mm", str(force[row["step"]]))
    assert "Still to be scored" not in verdict(page) and "A parabola needs 5 values" in verdict(page)
    for place, row in rows_of(page)[:6]:
        page.form.model.edit(place, "measured_mm", str(force[row["step"]]))
    assert page.plot.data.point_count == 6  # what is measured nobody is led by: it is shown at once
    score(page, force)
    assert "Use 215" in verdict(page) and page.plot.data.x_label == "Temperature, °C"
    assert page.plot.data.y_label == "value as read, N"
    press(page.form.more_button)
    assert [row["feature"] for _, row in rows_of(page)][7] == "H"


def test_the_unit_of_a_value_is_kept_and_stays_with_its_ladder(qtbot, warm, store, shop):
    page = warm
    choose(page.form.read_by, "low")
    type_setting(page, "value_unit", "mg")
    assert page.form.value_unit.toolTip().startswith("The unit of what is read")
    score(page, {step: abs(step - 215) / 5 + 1 for step in (200, 205, 210, 215, 220, 225, 230)})
    page.keep()
    press(page.form.new_button)
    assert page.form.model.column("measured_mm").title == "Score"
    page.picker.choose(store.trials(subject="ladder")[0].id)
    assert page.kept_trial is not None and page.form.model.column("measured_mm").title == "Value mg"
    assert page.plot.data.y_label == "value as read, mg"


def test_a_unit_outlasts_another_ladder_and_counts_for_no_score(warm):
    page = warm
    choose(page.form.read_by, "low")
    type_setting(page, "value_unit", "mg")
    choose(page.form.ladder, "retraction")
    choose(page.form.read_by, "low")
    assert page.form.unit == "mg"
    choose(page.form.read_by, "score")
    assert page.form.unit == "" and page.form.model.column("measured_mm").title == "Score"
    assert page.form.settings.field("value_unit").isHidden()


def test_the_picked_instrument_counts_only_where_it_is_read(warm, shop, store):
    page = warm
    shop.select_instrument(store.add_instrument(Instrument("Caliper 3")).id)
    assert shop.instrument_id is not None and page.trial_of().instrument_id is None
    choose(page.form.ladder, "lag")
    assert page.form.read_by.value() == "widths" and page.trial_of().instrument_id == shop.instrument_id


def test_a_count_has_no_unit(warm):
    page = warm
    choose(page.form.read_by, "low")
    score(page, {step: abs(step - 215) / 5 + 1 for step in (200, 205, 210, 215, 220, 225, 230)})
    assert page.plot.data.y_label == "value as read" and page.form.model.column("measured_mm").title == "Value"


def test_impossible_steps_are_said_at_their_field(warm):
    page = warm
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


# The temperature ladder: criteria, what the parts are for, and what other ladders foretell


def test_criteria_typed_by_keyboard_alone_give_the_middle_of_the_plateau(qtbot, warm, store, shop):
    page = warm
    assert [len(of_criterion(page, key)) for key in ("overhang", "clean", "bond", "force")] == [14, 14, 14, 7]
    assert hidden(page) == {"judge", "step"} and page.form.settings.field("aim").value() == "looks"
    texts = [str(PLANTED[row["criterion"]][row["step"]]) for _, row in rows_of(page)[:42]]
    type_readings(qtbot, page, texts)
    assert "Nozzle temperature: Use 215 °C for this lot on this machine" in verdict(page)
    assert "middle of the plateau, 210 to 220 °C" in verdict(page)
    assert "cleanness 3 or more, bond 3 or more" in verdict(page) and "(95 %)" in verdict(page)
    assert "may be the piece and not the step" in verdict(page)
    choose(page.form.purpose, "strength")
    assert "Use 220 °C" in verdict(page) and "upper third" in verdict(page)
    page.keep()
    (kept,) = (t for t in store.trials(subject="ladder") if t.state is TrialState.KEPT)
    assert [(e.name, e.value, e.unit) for e in kept.estimates] == [("ladder_temperature", 220.0, "°C")]
    assert kept.conditions["aim"] == "strength" and kept.method == "criteria 1" and kept.estimates[0].U >= 2.5
    now = store.in_force("nozzle_temperature", shop.machine.id, shop.lot.id)
    assert (now.new, now.unit, now.lot_id) == (220.0, "°C", shop.lot.id)
    assert store.in_force("nozzle_temperature", shop.machine.id) is None
    assert hidden(page) == set() and "Use 220" in verdict(page)


def test_the_scale_of_the_next_score_is_in_sight(warm):
    page = warm
    seen = {}
    for place, row in rows_of(page):
        page.form.entry.go_to(place)
        seen.setdefault(row["criterion"], page.form.scale.text())
    assert "4 none" in seen["clean"] and "0 a web" in seen["clean"]
    assert "4 as strong as solid" in seen["bond"] and "in N" in seen["force"] and "4 clean" in seen["overhang"]
    assert page.form.scale.isVisible()
    choose(page.form.ladder, "cooling")
    assert not page.form.scale.isVisible() and page.form.settings.field("aim").isHidden()


def test_a_trial_scored_the_other_way_round_before_is_read_as_it_was_scored(warm, store, shop):
    """Strings were scored 0 none to 4 a web: such a trial keeps its scale, its bound and its picture."""
    page = warm
    fill(page, bond=BOND, clean=CLEAN)
    page.keep()
    (kept,) = store.trials(subject="ladder", readings=True)
    turned = {"criterion": [], "raw": [], "measured_mm": []}
    columns = (kept.readings[name] for name in turned)
    for criterion, raw, value in zip(*columns, strict=True):
        was = criterion == "clean"
        turned["criterion"].append("strings" if was else criterion)
        turned["raw"].append(f"{4 - value:g}" if was else raw)
        turned["measured_mm"].append(4 - value if was else value)
    old = store.keep(replace(kept, id=None, state=TrialState.OPEN, readings={**kept.readings, **turned}))
    shop.kept.emit(old)
    assert "Use 215 °C" in verdict(page)
    assert [limit.name for limit in page.plot.data.limits] == ["strings 1 or less", "bond 3 or more"]
    assert "200 °C, strings\t0." in page.card.text() and "°C, cleanness" not in page.card.text()
    place, _ = of_criterion(page, "strings")[0]
    assert "0 none" in page.form.scale_text(page.form.model.rows()[place])


def test_only_what_counts_is_waited_for_and_each_criterion_is_named(warm):
    page = warm
    fill(page, bond=BOND)
    says = verdict(page)
    assert "judge 1: cleanness A B C D E F G; judge 2: cleanness A B C D E F G." in says
    assert "bond" not in says and "overhang" not in says and page.plot.data.point_count == 0
    fill(page, clean=CLEAN)
    assert "Still to be scored" not in verdict(page) and page.plot.data.point_count > 0
    names = {series.name for series in page.plot.data.points}
    assert {"bond", "cleanness", "meets all"} <= names and "overhang" not in names
    assert [limit.name for limit in page.plot.data.limits] == ["cleanness 3 or more", "bond 3 or more"]
    fill(page, overhang={205: 4, 215: 3, 225: 1})
    assert "overhang" in {series.name for series in page.plot.data.points}
    assert "215 °C, bond" in page.card.text() and "met:" in page.card.text()


def test_a_score_that_cannot_be_is_named_with_its_criterion(warm):
    page = warm
    fill(page, bond=BOND, clean=CLEAN)
    place, row = of_criterion(page, "bond")[2]
    page.form.model.edit(place, "measured_mm", "2,5")
    assert "C, bond, judge 1: A score of 2.5 lies between two" in verdict(page)
    assert page.form.model.problem(place, "measured_mm")


def test_the_snap_force_is_told_beside_the_scores(warm):
    page = warm
    fill(page, bond=BOND, clean=CLEAN, force={step: round(25 - ((step - 217) / 5) ** 2, 1) for step in BOND})
    assert "snap force is greatest at 217 °C" in verdict(page)


def test_no_step_that_meets_both_asks_to_dry_the_lot(warm):
    page = warm
    press(page.form.more_button)
    fill(page, bond=BOND, clean={200: 4, 205: 2, 210: 1, 215: 1, 220: 0, 225: 0, 230: 0})
    assert "Weigh the lot, dry it, weigh again" in verdict(page)
    assert "cleanness 3 or more: at 200, bond 3 or more: at 210, 215, 220, 225, 230 °C" in verdict(page)


def test_who_prints_is_told_the_order_hot_to_cold(warm):
    page = warm
    assert "Print:" not in page.form.how.text() and "Hot to cold" in page.form.how.text()
    press(page.form.key_button)
    letters = {row["step"]: row["feature"].partition(",")[0] for _, row in rows_of(page)}
    order = ", ".join(f"{step:g} {letters[step]}" for step in sorted(letters, reverse=True))
    assert f"Print: {order}." in page.form.how.text()
    press(page.form.key_button)
    assert "Print:" not in page.form.how.text()


def test_where_values_are_read_the_letters_are_listed_hot_to_cold_at_once(warm):
    """The rows go from cold to hot: the instruction says in which order they are printed."""
    choose(warm.form.read_by, "low")
    assert [row["step"] for _, row in rows_of(warm)] == [200, 205, 210, 215, 220, 225, 230]
    assert "Print: 230 G, 225 F, 220 E, 215 D, 210 C, 205 B, 200 A." in warm.form.how.text()


def test_title_and_sentences_fit_the_way_of_reading(warm):
    page = warm
    for way, title, nothing, how in (
        ("score", "Scores of the steps", "from 0 to 4", "for each judge a tab"),
        ("low", "Values of the steps", "Read one value of each specimen", "type its unit into “Value in”"),
        ("high", "Values of the steps", "Read one value of each specimen", "type its unit into “Value in”"),
        ("widths", "Widths of the steps", "Read three widths", "width of each line"),
    ):
        choose(page.form.read_by, way)
        assert page.plot.heading.text() == title and nothing in page.plot.empty.text() and how in page.form.how.text()
        assert ("judge" in page.form.how.text() + page.plot.empty.text()) == (way == "score")
    assert [page.form.read_by.itemText(place) for place in (2, 3)] == ["Least is best", "Most is best"]
    assert warm.form.group == "temperature/widths"


def test_a_value_far_from_the_others_is_named_with_its_specimen(warm):
    page = warm
    choose(page.form.read_by, "low")
    type_setting(page, "value_unit", "N")
    for (place, _), text in zip(rows_of(page), ("12.6", "0", "12.1", "11.5", "11.2", "11.9", "12.8"), strict=True):
        page.form.model.edit(place, "measured_mm", text)
    named = "B, at 205 °C, reads 0 N, the middle one of the others 12 N: read it again, or exclude it."
    assert "No difference seen" in verdict(page) and named in verdict(page)
    page.form.model.edit(rows_of(page)[1][0], "measured_mm", "12.3")
    assert "read it again" not in verdict(page)


def test_the_usual_steps_stand_about_what_is_set_now(qtbot, store, shop):
    whose = shop.machine.id, shop.lot.id
    store.put_in_force(SettingInForce(*whose, "nozzle_temperature", None, 222.0, "°C", because="It prints well."))
    page = open_page(qtbot, shop, LadderPage)
    at = {key: page.form.settings.field(key).value() for key in ("low", "high", "in_force")}
    assert at == {"low": 207.0, "high": 237.0, "in_force": 222.0}
    choose(page.form.ladder, "cornering")
    assert page.form.settings.field("low").value() == 2.0 and page.form.settings.field("in_force").value() is None


def test_a_kept_ladder_hides_what_only_helps_to_read_it_and_gives_the_names_room(page):
    form, keys = page.form, "Enter keeps, goes on"
    keys = keys.replace(" ", "\N{NO-BREAK SPACE}")
    assert form.caution.isVisible() and form.how.isVisible() and keys in in_sight(page)
    score(page, PLATEAU)
    page.keep()
    assert page.kept_trial is not None
    assert not form.caution.isVisible() and not form.how.isVisible() and keys not in in_sight(page)
    wide = {column.key: form.table.columnWidth(place) for place, column in enumerate(form.model.columns)}
    assert wide["judge"] < wide["feature"] / 1.5
    page.form.new_button.click()
    assert form.caution.isVisible() and form.how.isVisible() and keys in in_sight(page)


def test_rows_pasted_below_the_planned_ones_have_no_place_in_the_order(warm):
    warm.form.key_button.click()
    before = warm.form.how.text()
    model = warm.form.model
    model.paste(model.rowCount() - 1, 1, "3\n4\n5")
    warm.form.key_button.click()
    warm.form.key_button.click()
    assert "Print: " in before and warm.form.how.text() == before


def test_hotter_than_the_machine_may_be_is_refused_when_it_is_planned(warm):
    page = warm
    type_setting(page, "high", "260")
    assert rows_of(page) == [] and "Refused" in verdict(page) and "240 °C" in verdict(page)
    assert "Refused" in page.form.settings.field("high").accessibleDescription()
    type_setting(page, "high", "240")
    assert len(rows_of(page)) == 49 and "Refused" not in verdict(page)
    type_setting(page, "limit", "235")
    assert rows_of(page) == [] and "235 °C" in verdict(page)
    type_setting(page, "limit", "240")
    page.form.model.edit(0, "measured_mm", "4")
    before = page.form.model.rows()
    type_setting(page, "limit", "210")  # a reading is in: its pieces are printed, and all rows stay
    assert "Refused" in page.form.settings.field("high").accessibleDescription()
    assert page.form.model.rows() == before and before[0]["raw"] == "4"
    type_setting(page, "limit", "240")
    assert "Refused" not in verdict(page) and page.form.model.rows() == before


def test_the_usual_steps_stay_within_the_machines_limit(qtbot, store, shop):
    low = store.add_machine(Machine("Sedge", limits={"hot_end_limit_c": 220.0}))
    shop.select_machine(low.id)
    page = open_page(qtbot, shop, LadderPage)
    assert (page.form.settings.field("low").value(), page.form.settings.field("high").value()) == (190.0, 220.0)
    assert sorted({row["step"] for _, row in rows_of(page)})[-1] == 220.0


def test_other_ladders_foretell_this_one(qtbot, store, shop):
    machine = store.add_machine(Machine("Teasel", limits={"hot_end_limit_c": 240.0}))
    lot = store.add_lot(Lot("Chalk 2", "PETG"))

    def keep(m, f, value):
        told = Estimate("ladder_temperature", value, 1.0, math.inf, "°C")
        return store.keep(Trial("ladder", m, f, estimates=(told,))).id

    page = open_page(qtbot, shop, LadderPage)
    assert "this ladder on this machine would tell" in verdict(page)
    here = shop.machine.id
    trials = [keep(machine.id, shop.lot.id, 216.0), keep(machine.id, lot.id, 206.0), keep(here, lot.id, 210.0)]
    page.shown()
    assert "From other ladders: Predicted for this machine and lot" in verdict(page)
    assert "220.0 ± 6.8 °C" in verdict(page) and f"trials {trials[0]}, {trials[1]}, {trials[2]}" in verdict(page)
    fill(page, bond=BOND, clean=CLEAN)
    assert "Use 215" in verdict(page) and "220.0 ± 6.8 °C" in verdict(page)
    type_setting(page, "limit", "215")
    assert "Refused: do not try this lot there" in verdict(page)
    type_setting(page, "limit", "240")
    page.keep()
    page.form.new_button.click()
    assert "Its own ladder" in verdict(page) and "agrees: 215 °C" in verdict(page)
    choose(page.form.ladder, "cooling")
    assert "From other ladders" not in verdict(page)


def test_a_draft_with_one_score_for_all_is_judged_as_it_was_begun(qtbot, warm, store, shop):
    page = warm
    rows = [
        {"feature": f"{letter}, judge {judge}", "axis": "temperature/score", "kind": "travel", "judge": judge,
         "step": step, "step_raw": f"{step:g}", "measured_mm": score, "raw": f"{score:g}"}
        for letter, step, score in zip("ABCDEFG", BOND, (0, 1, 4, 4, 4, 1, 0), strict=True) for judge in "12"
    ]  # fmt: skip
    page.form.show_rows(rows)
    page.recompute()
    assert page.result.method == "ladder 2" and page.plot.data.point_count > 0

"""The page *Speed*, by keyboard: scores against time, a file timed, and half speed."""

from dataclasses import replace

import pytest

from app.pages.motion_trials.speed import SpeedPage
from core.quantity import Estimate
from core.records.rows import Machine, Motion, Trial, TrialState
from tests.app.atpage import choose, verdict
from tests.app.motion_trials.motionpages import hidden, in_sight, open_page, press, rows_of, type_readings, type_setting

LEVELS = (40.0, 56.6, 80.0, 113.0, 160.0)
SCORES = dict(zip(LEVELS, (4, 4, 4, 2, 0), strict=True))
FILE = "M83\n" + "\n".join(
    f"G1 X{20 + 60 * (n % 2)} Y{n / 2:.1f} E2.0 F3600\nG1 Y{n / 2 + 0.4:.1f} E0.02" for n in range(300)
)


@pytest.fixture
def page(qtbot, shop):
    return open_page(qtbot, shop, SpeedPage)


def score(page, planted=SCORES, first=0):
    for place, row in rows_of(page)[first:]:
        page.form.model.edit(place, "measured_mm", str(planted[row["step"]]))


def test_scores_typed_by_keyboard_alone_give_a_speed(qtbot, page, store, shop):
    assert hidden(page) == {"judge", "step"} and "lost step" in page.form.caution.text()
    type_readings(qtbot, page, [str(SCORES[row["step"]]) for _, row in rows_of(page)])
    press(page.form.more_button)
    press(page.form.more_button)
    score(page, first=10)
    assert "Printing speed: Print at 80 mm/s" in verdict(page) and "3 is asked" in verdict(page)
    assert "usual straight" in verdict(page) and "56.6 mm/s" in verdict(page)
    assert page.plot.data.title == "Score against time" and page.plot.data.limits[0].name == "asked"
    page.keep()
    (kept,) = (t for t in store.trials(subject="speed") if t.state is TrialState.KEPT)
    assert [e.name for e in kept.estimates] == ["trial_speed", "trial_score"]
    assert store.in_force("print_speed", shop.machine.id, shop.lot.id).new == 80.0


def test_nothing_tells_how_the_levels_stand_while_somebody_still_scores(qtbot, page):
    assert "show expected" not in in_sight(page)
    texts = [str(SCORES[row["step"]]) for _, row in rows_of(page)]
    type_readings(qtbot, page, texts[:-1])
    assert page.plot.data.point_count == 0 and page.card.card.rows == ()
    assert "Still to be scored" in verdict(page) and "judge 2: E." in verdict(page)
    assert "mm/s" not in verdict(page) and "Hidden until all pieces are scored" in in_sight(page)
    choose(page.view, "time")  # the time of a level tells nothing of its score
    assert page.plot.data.title == "Where faster buys nothing" and "Still to be scored" in verdict(page)
    choose(page.view, "front")
    assert page.plot.data.point_count == 0 and page.plot.heading.text() == "Score against time"
    press(page.form.key_button)
    assert page.plot.data.point_count > 0 and "56.6 mm/s" in verdict(page)
    press(page.form.key_button)
    type_readings(qtbot, page, texts[-1:])
    assert page.plot.data.point_count > 0 and "56.6 mm/s" in verdict(page)


def test_the_second_judge_does_not_see_the_first_ones_scores(page):
    model, places = page.form.model, [place for place, _ in rows_of(page)]
    for place in places[:6]:
        page.form.entry.go_to(place)
        model.edit(place, "measured_mm", "3")
    assert [model.text(place, "measured_mm") for place in places] == ["kept"] * 5 + ["3"] + [""] * 4
    for place in places[6:]:
        model.edit(place, "measured_mm", "2")
    assert [model.text(place, "measured_mm") for place in places] == ["3"] * 6 + ["2"] * 4


def test_the_same_speed_again_verifies_it(page, store, shop):
    for _ in range(2):
        press(page.form.more_button)
        press(page.form.more_button)
        score(page)
        page.keep()
        page.form.new_button.click()
    assert store.in_force("print_speed", shop.machine.id, shop.lot.id).verified_by is not None


def test_time_by_level_needs_no_score(page):
    choose(page.view, "rate")
    assert page.plot.data.point_count == 0  # straights tell no rate
    choose(page.view, "time")
    assert page.plot.data.title == "Where faster buys nothing"
    assert [curve.name for curve in page.plot.data.curves] == ["time of the part", "if it never had to slow down"]
    choose(page.form.method, "acceleration")
    assert page.plot.data.curves[1].name == "at the highest acceleration"
    assert page.form.settings.field("high").value() == 3000.0  # what Y of this machine can do
    score(page, dict.fromkeys({row["step"] for _, row in rows_of(page)}, 4))
    assert page.plot.data.title == "Where faster buys nothing" and "No difference seen" in verdict(page)


def test_faster_than_the_machine_is_refused_when_it_is_planned(page):
    type_setting(page, "high", "400")
    assert rows_of(page) == [] and "Refused" in verdict(page) and "250 mm/s" in verdict(page)
    assert "Refused" in page.form.settings.field("high").accessibleDescription()
    type_setting(page, "high", "200")
    assert len(rows_of(page)) == 10 and "Refused" not in verdict(page)
    page.form.model.edit(0, "measured_mm", "3")
    before = page.form.model.rows()
    type_setting(page, "limit", "30")  # a score is in: its pieces are printed, and all rows stay
    assert "Refused" in verdict(page) and page.form.model.rows() == before


def test_a_typed_layer_holds_fast_levels_up(page, store):
    type_setting(page, "least_layer_s", "10")
    assert "Type the length of all lines" in verdict(page)
    assert "Type the length" in page.form.settings.field("layer_mm").accessibleDescription()
    type_setting(page, "layer_mm", "600")
    for _ in range(3):
        press(page.form.more_button)
    score(page, dict(zip(LEVELS, (4, 4, 4, 4, 2), strict=True)))
    says = verdict(page)
    assert "Printing speed: Print at 80 mm/s" in says and "only waits for the least layer time" in says
    assert "From 80 mm/s on the shortest layer is done before its least 10 s and waits" in says
    assert "Up to 60 mm/s (600 mm of path in 10 s) none waits" in says and "waits 24 s" in page.card.text()
    (waits,) = (series for series in page.plot.data.points if series.name == "a layer waits")
    assert waits.x.size == 3 and waits.ringed.all()
    choose(page.view, "time")
    assert [event.x for event in page.plot.data.events] == [60.0]
    assert any(series.name == "a layer waits" for series in page.plot.data.points)
    type_setting(page, "least_layer_s", "0")
    assert "not between 0 and 600 s" in page.form.settings.field("least_layer_s").accessibleDescription()
    type_setting(page, "least_layer_s", "1")
    assert "holds no level up" in verdict(page)
    assert not any(series.name == "a layer waits" for series in page.plot.data.points)
    type_setting(page, "least_layer_s", "10")
    page.keep()
    (kept,) = (t for t in store.trials(subject="speed") if t.state is TrialState.KEPT)
    assert [e.name for e in kept.estimates] == ["trial_speed", "trial_score", "layer_floor"]
    assert kept.conditions["least_layer_s"] == 10.0 and kept.conditions["layer_mm"] == 600.0


def test_the_layers_of_a_file_are_timed(qtbot, page, tmp_path):
    path = tmp_path / "tower.gcode"
    layers = "".join(
        f"G1 Z{0.2 * n:.1f} F600\nG1 X{60 - n} Y0 E2 F3600\nG1 X{60 - n} Y{60 - n} E2\nG1 X0 Y0 E2\n"
        for n in range(1, 41)
    )
    path.write_text("M83\n" + layers, encoding="utf-8")
    type_setting(page, "least_layer_s", "4")
    score(page)
    page.time_file(str(path))
    qtbot.waitUntil(lambda: "tower.gcode: 160 moves" in verdict(page), timeout=8000)
    assert "of 40 layers wait" in verdict(page) and "The shortest layer begins at line 15" in verdict(page)
    climbing = tmp_path / "vase.gcode"
    turns = "".join(f"G1 X{20 * (n % 2)} Z{0.01 * n:.2f} E1 F3000\n" for n in range(1, 40))
    climbing.write_text("M83\n" + turns, encoding="utf-8")
    said = []
    page.context.notice.connect(lambda text, level: said.append(text))
    page.time_file(str(climbing))
    qtbot.waitUntil(lambda: any("climbs while it prints" in text for text in said), timeout=8000)


def test_a_file_is_timed_beside_the_window(qtbot, page, store, shop, tmp_path, monkeypatch):
    store.keep(Trial("ceiling", shop.machine.id, shop.lot.id,
                     estimates=(Estimate("flow_ceiling", 9.0, 0.2, 20.0, "mm3/s"),)))  # fmt: skip
    path = tmp_path / "bracket.gcode"
    path.write_text(FILE, encoding="utf-8")
    score(page)
    usual = page.part.times.time_s[40.0]
    monkeypatch.setattr("PySide6.QtWidgets.QFileDialog.getOpenFileName", lambda *_: (str(path), ""))
    press(page.form.file_button)
    assert "Timing bracket.gcode" in verdict(page)
    qtbot.waitUntil(lambda: "bracket.gcode: 600 moves" in verdict(page), timeout=8000)
    assert page.part.times.time_s[40.0] != usual
    assert "passes the flow ceiling" in verdict(page)
    choose(page.view, "rate")
    assert page.plot.data.title == "Rate along the path" and page.plot.data.limits[0].y[0] == 9.0
    type_setting(page, "other", "900")
    assert "Timing" in verdict(page)
    qtbot.waitUntil(lambda: "moves" in verdict(page), timeout=8000)
    draft = next(t for t in store.trials(subject="speed") if t.state is TrialState.OPEN)
    assert draft.conditions["file"] == "bracket.gcode" and len(draft.conditions["times_s"]) == 5
    again = open_page(qtbot, shop, SpeedPage)  # the file is not here, its times are
    assert again.part.name == "bracket.gcode" and "3 is asked" in verdict(again)
    type_setting(again, "asked_score", "2")
    assert "2 is asked" in verdict(again)
    again.form.model.edit(0, "step", "50")
    assert "choose it again" in verdict(again)


def test_files_that_cannot_be_timed_are_told(qtbot, page, tmp_path, context):
    said = []
    context.notice.connect(lambda text, level: said.append(text))
    page.time_file(str(tmp_path / "none.gcode"))
    assert "none.gcode is not there or is not a file" in said[-1]
    bad = tmp_path / "bad.gcode"
    bad.write_text("G1 X1\nG1 X1.2.3\n", encoding="utf-8")
    score(page)
    page.time_file(str(bad))
    qtbot.waitUntil(lambda: any("Line 2" in text for text in said), timeout=5000)
    assert page.part.name == "" and "usual straight" in verdict(page)


def test_half_speed_is_guided(qtbot, page, store):
    choose(page.form.method, "half")
    assert "second copy" in page.form.how.text() and page.form.key_button.isHidden()
    assert page.form.settings.field("low").isHidden()
    answers = {"1": 1, "2": 1}
    for place, row in rows_of(page):
        if row["step"] in (0.0, 1.0):
            page.form.model.edit(place, "measured_mm", str(answers[row["judge"]] + 2 * int(row["step"])))
    assert page.plot.data.point_count > 0  # the runs are named, so there is no secret to keep
    assert "Two more runs split" in verdict(page) and "doubles the time of a layer" in verdict(page)
    for place, row in rows_of(page):
        if row["step"] in (2.0, 3.0):
            page.form.model.edit(place, "measured_mm", "3" if row["step"] == 2.0 else "1")
    assert "It is the flow rate" in verdict(page)
    assert "1 usual, 2 half speed, 3 half layers, 4 two copies" in page.plot.data.x_label
    page.keep()
    kept = next(t for t in store.trials(subject="speed") if t.state is TrialState.KEPT)
    assert kept.method == "halfspeed 1" and kept.estimates == ()
    assert "flow rate" in verdict(page)


def test_half_speed_rows_and_levels_do_not_count_for_each_other(page):
    score(page)
    choose(page.form.method, "half")
    assert page.card.card is None
    press(page.form.more_button)
    assert [row["feature"] for _, row in rows_of(page)][8:10] == ["B usual, judge 1", "B half speed, judge 1"]
    assert page.form.model.mark(len(page.form.model.rows()) - 1)
    choose(page.form.method, "speed")
    assert len(rows_of(page)) == 10 and "3 is asked" in verdict(page)


def test_impossible_levels_are_said_at_their_field(page):
    type_setting(page, "high", "20")
    assert "above the first one" in page.form.settings.field("high").accessibleDescription()
    press(page.form.more_button)
    assert "above the first one" in page.form.settings.field("high").accessibleDescription()
    type_setting(page, "high", "")
    assert page.form.settings.field("high").accessibleDescription()


def test_a_machine_without_limits_is_told_so(qtbot, page, store, shop):
    other = store.add_machine(Machine("Teasel", limits={"max_flow_mm3_s": 12.0}))
    shop.select_machine(other.id)
    assert page.form.settings.field("limit").value() is None
    score(page)
    assert "not typed yet" in verdict(page)


def test_up_to_where_the_machine_goes_is_taken_from_its_newest_kept_trial(qtbot, page, store, shop):
    other = store.add_machine(Machine("Teasel"))
    for method, limit in (("speed", 180.0), ("speed", 140.0), ("acceleration", 3000.0), ("speed", None)):
        store.keep(Trial("speed", other.id, shop.lot.id, conditions={"method": method, "limit": limit}))
    shop.select_machine(other.id)
    limit = page.form.settings.field("limit")
    assert limit.value() == 140.0 and page.form.settings.field("high").value() == 140.0
    choose(page.form.method, "acceleration")
    assert limit.value() == 3000.0 and page.form.settings.field("high").value() == 3000.0
    type_setting(page, "limit", "3500")
    assert limit.value() == 3500.0
    shop.select_machine(next(m.id for m in store.machines() if m.name == "Bramble"))
    assert limit.value() == page.form.limits["max_speed_mm_s"]["x"]  # the machine's record comes first


def test_a_timing_that_is_stopped_goes_back_to_the_usual_straight(qtbot, page, tmp_path, monkeypatch):
    def slow(*_, step, **__):
        while True:
            step(0.4)

    path = tmp_path / "bracket.gcode"
    path.write_text(FILE, encoding="utf-8")
    score(page)
    monkeypatch.setattr("core.motion_trials.parttime.part_times", slow)
    page.time_file(str(path))
    qtbot.waitUntil(lambda: page.waiting.isVisible() and 50 <= page.waiting.bar.value() <= 53)  # a fifth is reading
    monkeypatch.undo()
    page.waiting.stop.click()
    qtbot.waitUntil(lambda: not page.waiting.isVisible())
    assert page.part.name == "" and "usual straights" in verdict(page)


def test_the_motors_of_crossed_belts_slow_a_diagonal(qtbot, page, store, shop, tmp_path):
    """Limits of 250 mm/s along an axis allow 177 mm/s along a diagonal, where one motor does all the work."""
    path = tmp_path / "ramp.gcode"
    path.write_text("M83\n" + "\n".join(f"G1 X{200 * (n % 2)} Y{200 * (n % 2)} E2 F60000" for n in range(1, 41)))
    type_setting(page, "high", "240")
    score(page, dict.fromkeys((row["step"] for _, row in rows_of(page)), 4))
    page.time_file(str(path))
    qtbot.waitUntil(lambda: "ramp.gcode: " in verdict(page), timeout=8000)
    straight = dict(page.part.times.time_s)
    store.change_machine(replace(shop.machine, motion=Motion.CROSSED_BELT))
    shop.machines_changed.emit()
    shop.select_machine(shop.machine.id)
    again = open_page(qtbot, shop, SpeedPage)  # with the open trial: the limits are those of the record all the same
    assert again.form.crossed_belts and again.form.limits["max_speed_mm_s"]["x"] == 250.0
    again.time_file(str(path))
    qtbot.waitUntil(lambda: "ramp.gcode: " in verdict(again), timeout=8000)
    assert again.part.times.time_s[40.0] == pytest.approx(straight[40.0], rel=0.01)
    assert again.part.times.time_s[240.0] > 1.2 * straight[240.0]

"""The page *First layer*, by keyboard: pads in, sentences, picture, setting in force and database out."""

import pytest
from PySide6.QtCore import Qt

from app.pages.machine_geometry.firstlayer import FirstLayerPage
from core.errors import StoreError
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, SettingInForce, Trial, TrialState
from core.words import tr
from tests.app.atpage import choose, show_page, type_number, type_readings, verdict

LOW = ["0,152", "0.149", "0.150", "0.153", "0.148"]  # a comma is a decimal mark too
RIGHT = ["0.202", "0.199", "0.200", "0.203", "0.198"]


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble", travel_x_mm=230.0, travel_y_mm=210.0))
    gauge = store.add_instrument(Instrument("Micrometer 1", "micrometer", 0.001, 0.002))
    context.select_machine(machine.id)
    context.select_lot(store.add_lot(Lot("Slate 7", "PETG")).id)
    context.select_instrument(gauge.id)
    return context


@pytest.fixture
def page(qtbot, shop, by_hand):
    page = show_page(qtbot, FirstLayerPage(shop))
    page.take_focus()
    return page


def type_setting(page, key, text):
    type_number(page.form.settings.field(key), text)


def type_pads(qtbot, page, texts):
    page.form.table.go_to(0)
    page.form.entry.setFocus()
    type_readings(qtbot, texts)


def flow(shop, ratio=1.0, in_force=1.0):
    return shop.store.keep(Trial("wall", shop.machine_id, shop.lot_id, conditions={"in_force_ratio": in_force},
                                 estimates=(Estimate("flow_ratio_wall", ratio, 0.004, 9.0, "1"),)))


def flat_bed(shop):
    flatness = Estimate("bed_flatness", 0.03, 0.008, 8.0, "mm")
    return shop.store.keep(Trial("bedplane", shop.machine_id, estimates=(flatness,)))


def test_pads_typed_by_keyboard_raise_the_nozzle_and_the_offset_is_in_force(qtbot, page, shop, store):
    used = (flat_bed(shop).id, flow(shop).id)
    assert [row["feature"] for row in page.form.model.rows()][:2] == ["Middle", "Front left"]
    assert (page.form.model.rows()[0]["x_mm"], page.form.model.rows()[3]["y_mm"]) == (115.0, 170.0)
    type_setting(page, "offset_mm", "-0.15")
    type_pads(qtbot, page, LOW)
    assert "Height offset" in verdict(page) and "from −0.15 to −0.100" in verdict(page)
    assert "raises the nozzle by 0.0496 mm" in verdict(page) and "expect 0.2 ± 0.02 mm" in verdict(page)
    assert "pads less height commanded" in verdict(page) and "Bramble, Slate 7" in verdict(page)
    assert "Z steps per millimetre" in page.card.untouched.text() and "Mind" not in verdict(page)
    assert page.plot.data.points[0].tips[0] == "Middle: −0.048 mm"
    assert page.plot.data.point_count == 5 and page.plot.data.ground is not None
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (kept,) = store.trials(subject="firstlayer")
    assert kept.state is TrialState.KEPT and kept.method == "firstlayer 1" and kept.used == used
    names = ["first_layer_error", "height_offset", "first_layer_spread", "first_layer_fall"]
    assert [e.name for e in kept.estimates] == names
    now = store.in_force("height_offset", shop.machine_id)
    assert (now.old, now.unit, now.lot_id, now.trial_id) == (-0.15, "mm", None, kept.id)
    assert now.new == pytest.approx(-0.1004) and now.prediction["name"] == "first_layer_error"
    assert "raises the nozzle" in verdict(page) and not page.card.keep_button.isEnabled()
    assert page.plot.data.curves[0].confidence_half[0] == kept.estimates[0].U  # as it was kept
    page.form.new_button.click()
    assert page.form.printed().offset_mm == pytest.approx(-0.1004)


def test_right_pads_verify_the_offset_in_force_or_put_it_on_record(qtbot, page, shop, store):
    flow(shop)
    type_setting(page, "offset_mm", "0")
    type_pads(qtbot, page, RIGHT)
    assert "Leave it" in verdict(page) and "Change nothing." in verdict(page)
    page.keep()
    first = store.in_force("height_offset", shop.machine_id)
    assert (first.old, first.new, first.verified_by) == (0.0, 0.0, None)
    page.form.new_button.click()
    type_pads(qtbot, page, RIGHT)
    page.keep()
    now = store.in_force("height_offset", shop.machine_id)
    assert now.id == first.id and now.verified_by == store.trials(subject="firstlayer")[0].id


def test_what_comes_first_is_said_and_puts_nothing_in_force(qtbot, page, shop, store):
    type_setting(page, "offset_mm", "0.1")
    type_pads(qtbot, page, LOW)
    assert "taken to be right within 5 %" in verdict(page) and "page Bed plane tells" in verdict(page)
    choose(page.form.state, "warm")
    assert "Let the pads cool" in verdict(page)
    choose(page.form.state, "cool")
    type_setting(page, "inside_mm", "1")
    assert "3 mm or more inside" in verdict(page)
    type_setting(page, "inside_mm", "4")
    flow(shop, 0.95)
    page.shown()
    assert "Check the flow" in verdict(page) and "from 1 to 0.950" in verdict(page)
    store.put_in_force(SettingInForce(shop.machine_id, shop.lot_id, "flow_factor", 1.0, 0.95, "1", because="wall"))
    page.shown()
    assert "Height offset" in verdict(page)
    for row, text in enumerate(["0.2", "0.16", "0.25", "0.24", "0.15"]):
        page.form.model.edit(row, "measured_mm", text)
    assert "Levelling screws" in verdict(page) and "Bed plane first" in verdict(page)
    page.keep()
    assert store.in_force("height_offset", shop.machine_id) is None


def test_refusals_are_sentences_at_their_place_and_nothing_typed_is_lost(qtbot, page):
    type_pads(qtbot, page, RIGHT[:2])
    assert "Height offset" in verdict(page) and "Nothing is typed here yet" in verdict(page)
    type_setting(page, "offset_mm", "0")
    assert "2 of 3 places so far" in verdict(page) and "Read five" in verdict(page)
    page.form.model.edit(2, "measured_mm", "0.45")
    assert "more than the bore of 0.4 mm" in page.form.model.problem(2, "measured_mm")
    page.form.model.edit(2, "measured_mm", "0")
    assert "Zero the gauge" in page.form.model.problem(2, "measured_mm")
    page.form.model.edit(2, "measured_mm", "0.201")
    type_setting(page, "layer_mm", "0")
    assert "not above 0" in verdict(page)
    type_setting(page, "layer_mm", "0.2")
    type_setting(page, "nozzle_mm", "1.2")
    for row in range(3):
        page.form.model.edit(row, "measured_mm", "0.9")
    assert "Check the homing first" in verdict(page)
    assert [row["raw"] for row in page.form.model.rows()[:3]] == ["0.9"] * 3


def test_a_place_that_stands_out_is_marked_and_one_may_be_added(qtbot, page):
    type_setting(page, "offset_mm", "0")
    type_pads(qtbot, page, ["0.202", "0.199", "0.300", "0.203", "0.198"])
    assert "read it again" in page.form.model.mark(2) and not page.form.model.mark(0)
    page.form.add_button.click()
    assert page.form.model.rows()[5]["feature"] == "Place 6"
    type_pads(qtbot, page, [])
    page.form.model.edit(5, "measured_mm", "0.201")
    assert "6 places" in verdict(page) and "type X and Y" in verdict(page)  # the added one is not told
    page.form.model.edit(2, "measured_mm", "")
    assert not page.form.model.mark(2)


def test_a_caliper_and_a_missing_machine_are_minded(qtbot, page, shop, store):
    type_setting(page, "offset_mm", "0")
    type_pads(qtbot, page, RIGHT)
    choose(page.form.gauge, "caliper")
    assert "tilt on a thin pad" in verdict(page) and "A usual caliper is taken" in verdict(page)
    shop.select_machine(None)
    type_setting(page, "offset_mm", "0")
    type_pads(qtbot, page, RIGHT)
    assert "Choose or add a machine" in page.card.card.why_not
    page.keep()
    assert not [t for t in store.trials(subject="firstlayer") if t.state is TrialState.KEPT]


def test_a_kept_flow_that_cannot_be_is_said_and_left_out(qtbot, page, shop):
    said = []
    shop.notice.connect(lambda text, _level: said.append(text))
    flow(shop, 0.0)
    type_setting(page, "offset_mm", "0")
    type_pads(qtbot, page, RIGHT)
    assert "Leave it" in verdict(page)
    assert any(text.startswith("The flow factor 0, kept last for this machine and lot, cannot be") for text in said)


def test_a_store_that_cannot_be_read_costs_only_what_it_would_say(qtbot, page, shop, store, monkeypatch):
    said = []
    shop.notice.connect(lambda text, _level: said.append(text))

    def broken(*_args, **_kwargs):
        raise StoreError(tr("The disk is away."))

    monkeypatch.setattr(store, "newest", broken)
    monkeypatch.setattr(store, "in_force", broken)
    type_setting(page, "offset_mm", "0")
    type_pads(qtbot, page, RIGHT)
    assert "Leave it" in verdict(page) and "The disk is away." in said
    with_new = FirstLayerPage(shop)
    qtbot.addWidget(with_new)
    with_new.load_draft(None)
    assert with_new.form.typed["offset_mm"].text() == ""

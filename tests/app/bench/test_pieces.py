"""The page *Pieces*: choose, look, save, read. Keys and clicks in; sentences, files and rows out."""

import math

import lib3mf
import pytest
from PySide6.QtCore import QLocale, QPoint, Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QFileDialog, QLabel

from app.pages.bench.pieces import PiecesPage
from app.pages.bench.toolpaths import ToolpathsPage
from app.pages.flow_trials.mass import MassPage
from app.pages.flow_trials.top import TopPage
from app.pages.flow_trials.wall import WallPage
from app.pages.machine_geometry.squareness import SquarenessPage
from app.pages.part_size.sizeerror import SizeErrorPage
from app.theme import apply_theme
from core.errors import StoreError
from core.guidance.squareadvice import term_name
from core.pieces.catalogue import set_names
from core.records.rows import Instrument, Lot, Machine, SettingInForce, Trial
from tests.app.atpage import show_page

TERM = term_name("xy")
BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT}))
    lot = store.add_lot(Lot("Slate 7", "PETG"))
    caliper = store.add_instrument(
        Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008, sd_hand_mm=0.013, sd_hand_dof=19)
    )
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    context.select_instrument(caliper.id)
    return context


@pytest.fixture
def page(qtbot, shop):
    page = show_page(qtbot, PiecesPage(shop))
    page.take_focus()
    return page


@pytest.fixture
def notices(shop):
    said = []
    shop.notice.connect(lambda text, level: said.append((text, level)))
    return said


def choose(page, key):
    box = page.form.wanted.field("piece")
    box.setCurrentIndex(box.findData(key))


def type_into(field, text):
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def told(page):
    return page.card.body.toPlainText()


def test_it_opens_on_the_comb_for_the_picked_machine(page):
    assert page.form.bounds.field("turn_x_mm").text() == "40"
    assert page.form.bounds.field("sd_reading_mm").text() == "0.013"
    assert page.form.table.rowCount() == 10 and page.form.table.item(0, 1).text() == "outer 1-7 x"
    assert "scale error X" in told(page) and "at best ±" in told(page) and "±" in told(page)
    assert page.picture.heading.text() == "Size comb along X"


@pytest.mark.parametrize("key", set_names())
def test_every_piece_is_planned_or_says_why_not(page, key):
    choose(page, key)
    if key.startswith("half_combs"):
        assert "Half-combs start at 160 mm" in page.form.bounds.field("caliper_mm").accessibleDescription()
        assert "No piece:" in told(page) and page.form.table.rowCount() == 0 and not page.form.save_3mf.isEnabled()
        assert page.picture.picture_button.isHidden()
        type_into(page.form.bounds.field("caliper_mm"), "300")
    assert page.result is not None and page.form.save_stl.isEnabled()
    assert page.form.table.rowCount() == len(page.result.plan.planned.gauges)
    assert page.card.keep_button.isEnabled() and page.diagonals_button.isVisible() == (key == "pillars")
    page.picture.grab()


def test_repeats_and_a_wish_for_the_scale_change_the_plan(page):
    before = told(page)
    type_into(page.form.wanted.field("rounds"), "2")
    assert [page.form.table.item(row, 4).text() for row in range(10)] == ["2"] * 10 and told(page) != before
    share = page.form.wanted.field("share")
    share.setCurrentIndex(share.findData("scale"))
    times = [int(page.form.table.item(row, 4).text()) for row in range(10)]
    assert sum(times) == 20 and times[0] > 2


def test_a_bound_that_cannot_be_is_refused_at_its_field(page):
    type_into(page.form.bounds.field("nozzle_mm"), "9")
    assert "does not suit" in page.form.bounds.field("nozzle_mm").accessibleDescription()
    assert page.result is None and not page.write_file("nothing.3mf")
    page.read_piece()
    page.form.save_3mf.setEnabled(True)
    page.form.save_3mf.click()  # asks for no file
    type_into(page.form.bounds.field("nozzle_mm"), "0.4")
    assert page.form.bounds.field("nozzle_mm").accessibleDescription() == "" and page.result is not None


def test_every_field_that_cannot_be_read_says_so_at_once(page):
    for key, text in (("nozzle_mm", "abc"), ("turn_x_mm", "-1"), ("reach_mm", "1e9")):
        type_into(page.form.bounds.field(key), text)
    said = {key: page.form.bounds.field(key).accessibleDescription() for key in ("nozzle_mm", "turn_x_mm", "reach_mm")}
    assert all(said.values()) and "too small" in said["turn_x_mm"]
    type_into(page.form.bounds.field("turn_x_mm"), "0")
    assert not page.form.bounds.field("turn_x_mm").accessibleDescription()
    assert page.form.bounds.field("nozzle_mm").accessibleDescription() == said["nozzle_mm"]


def test_what_was_typed_is_found_again(qtbot, page, shop):
    type_into(page.form.bounds.field("caliper_mm"), "200")
    choose(page, "rings")
    again = PiecesPage(shop)
    qtbot.addWidget(again)
    again.show()
    qtbot.waitExposed(again)
    assert again.form.bounds.field("caliper_mm").text() == "200"
    assert again.form.wanted.field("piece").value() == "rings" and again.form.table.rowCount() == 8


@pytest.mark.parametrize("kind", ["3mf", "stl"])
def test_a_file_is_written_where_it_was_asked_for(page, notices, tmp_path, monkeypatch, kind):
    asked = []

    def answer(_parent, _title, name, _kinds):
        asked.append(name)
        return str(tmp_path / "comb"), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", answer)
    getattr(page.form, f"save_{kind}").click()
    assert asked == [f"comb_x.{kind}"] and notices[-1][0].startswith("Written: ")
    model = lib3mf.get_wrapper().CreateModel()
    model.QueryReader(kind).ReadFromFile(str(tmp_path / f"comb.{kind}"))
    assert model.GetMeshObjects().Count() == 1


def test_a_file_that_cannot_be_written_is_said(page, notices, tmp_path):
    assert not page.write_file(tmp_path / "missing" / "comb.3mf")
    assert "cannot be written" in notices[-1][0] and notices[-1][1] == "error"


def test_gauges_are_walked_in_picture_and_table_alike(qtbot, page):
    page.picture.sheet.setFocus()
    QTest.keyClick(page.picture.sheet, Qt.Key.Key_Right)
    QTest.keyClick(page.picture.sheet, Qt.Key.Key_Right)
    assert page.form.table.currentRow() == 1
    assert page.picture.tells.text() == "№ 2   outer 2-6 x, 88 mm: over the outer faces"
    page.form.table.setFocus()
    QTest.keyClick(page.form.table, Qt.Key.Key_Down)
    assert page.picture.tells.text().startswith("№ 3   outer 3-5 x")
    place = page.picture.points()[7][0]
    QTest.mouseMove(page.picture.sheet, place)
    qtbot.waitUntil(lambda: page.form.table.currentRow() == 7)
    assert "№ 8" in page.picture.sheet.accessibleDescription()


def test_numbers_in_the_picture_do_not_cover_one_another(page):
    for key in ("comb_x", "pillars", "rings", "stair"):
        choose(page, key)
        places = [place for place, _ in page.picture.points()]
        nearest = min(
            (QPoint(a - b).x() ** 2 + QPoint(a - b).y() ** 2) ** 0.5
            for i, a in enumerate(places) for b in places[i + 1 :]
        )  # fmt: skip
        assert nearest >= 15, key


def test_the_picture_is_drawn_in_the_colours_of_the_theme(qapp, page):
    choose(page, "stair")
    light = page.picture.sheet.grab().toImage()
    apply_theme(qapp, dark=True)
    try:
        dark = page.picture.sheet.grab().toImage()
    finally:
        apply_theme(qapp, dark=False)
    at = page.picture.points()[5][0] + QPoint(0, -60)
    assert light.pixelColor(2, 2).lightness() > 240 and dark.pixelColor(2, 2).lightness() < 60
    assert light.pixelColor(at) != light.pixelColor(2, 2) and dark.pixelColor(at).lightness() < 160


def test_another_machine_or_instrument_plans_anew(page, store, shop):
    small = store.add_machine(Machine("Thistle", travel_x_mm=100, travel_y_mm=100, travel_z_mm=100))
    shop.machines_changed.emit()
    shop.select_machine(small.id)
    assert page.form.bounds.field("bed_x_mm").text() == "100" and page.form.bounds.field("turn_x_mm").text() == "0"
    assert "not on record" in told(page)
    shop.select_instrument(None)
    assert "No instrument is picked" in told(page)
    assert page.form.bounds.field("sd_reading_mm").text() == "0.02"


def test_a_machine_no_piece_suits_keeps_the_usual_bounds(page, store, shop, notices):
    tiny = store.add_machine(Machine("Moss", travel_x_mm=30, travel_y_mm=30, travel_z_mm=30))
    shop.machines_changed.emit()
    shop.select_machine(tiny.id)
    assert "does not suit these pieces" in notices[-1][0]
    assert page.form.bounds.field("bed_x_mm").text() == "220"


def size_page(qtbot, shop):
    page = SizeErrorPage(shop)
    qtbot.addWidget(page)
    page.show()
    qtbot.waitExposed(page)
    return page


def test_read_this_piece_opens_size_error_with_its_rows(qtbot, page, shop):
    asked = []
    shop.page_asked.connect(asked.append)
    type_into(page.form.bounds.field("caliper_mm"), "300")
    choose(page, "half_combs_x")
    type_into(page.form.wanted.field("rounds"), "2")
    page.card.keep_button.click()
    assert asked == ["sizeerror"]
    reads = size_page(qtbot, shop)
    rows = reads.form.model.rows()
    assert len(rows) == 18 and rows[0]["feature"] == rows[9]["feature"] == "outer 1-6 x"
    assert (rows[0]["nominal_mm"], rows[0]["kind"], rows[0]["axis"]) == (208, "tooth", "x")
    assert reads.form.piece.value() == "half_combs_x" and reads.form.sketch.isVisible()
    reads.form.model.edit(0, "measured_mm", "207.9")
    page.keep()  # the same key as elsewhere
    assert reads.form.model.rows()[0]["raw"] == "207.9" and len(asked) == 2


def test_a_page_already_open_takes_the_new_rows(qtbot, page, shop):
    reads = size_page(qtbot, shop)
    assert len(reads.form.model.rows()) == 10
    reads.hide()
    choose(page, "rings")
    page.read_piece()
    reads.show()
    assert [row["feature"] for row in reads.form.model.rows()][:2] == ["outside 1 x", "outside 1 y"]
    reads.form.model.edit(0, "measured_mm", "88.1")
    assert reads.draft is not None and reads.draft.conditions["piece"] == "rings"


def test_readings_that_are_not_kept_are_left_alone(qtbot, page, shop, notices):
    reads = size_page(qtbot, shop)
    reads.form.model.edit(0, "measured_mm", "128.1")
    choose(page, "rings")
    page.read_piece()
    assert "Keep or clear them first" in notices[-1][0]
    assert reads.form.model.rows()[0]["raw"] == "128.1"
    assert shop.store.draft("sizeerror", shop.machine.id, shop.lot.id).conditions["piece"] == "comb_x"


def test_other_pages_are_opened_for_their_pieces(page, shop):
    asked = []
    shop.page_asked.connect(asked.append)
    for key in ("wall_box_2", "mass_box", "top_pads"):
        choose(page, key)
        page.read_piece()
    assert asked == ["wall", "mass", "top"]


def opened(qtbot, shop, kind):
    page = kind(shop)
    qtbot.addWidget(page)
    page.show()
    qtbot.waitExposed(page)
    return page


def test_flare_blocks_are_read_on_size_error(qtbot, page, shop):
    choose(page, "flare_block")
    assert "first-layer flare per side" in told(page) and "±" in told(page)
    page.card.keep_button.click()
    reads = opened(qtbot, shop, SizeErrorPage)
    assert reads.form.piece.value() == "flare_block" and reads.form.sketch.isVisible()
    for row, text in enumerate(("20.22", "20.24", "19.99", "20.01", "20.24", "20.23", "20.00", "20.01")):
        reads.form.model.edit(row, "measured_mm", text)
    assert "First-layer gap" in reads.card.text() and "+0.11" in reads.card.text()
    assert {(series.name, len(series.x)) for series in reads.plot.data.points} == {
        ("outside", 2), ("outside at the first layer", 2)
    }  # fmt: skip
    reads.form.model.set_excluded(0, True, "a hair")
    assert {series.name for series in reads.plot.data.points} >= {"excluded"}


def test_the_diagonals_of_the_pillars_are_read_on_squareness(qtbot, page, shop):
    """0.1 degree on 80 x 80: the diagonals differ by 0.1974 mm, 113.137 +- 0.099 (cosine rule)."""
    asked = []
    shop.page_asked.connect(asked.append)
    choose(page, "pillars")
    page.diagonals_button.click()
    assert asked == ["squareness"]
    reads = opened(qtbot, shop, SquarenessPage)
    rows = reads.form.model.rows()
    assert [row["feature"] for row in rows][:4] == ["outer 1-3 xy", "outer 2-4 xy", "inner 1-3 xy", "inner 2-4 xy"]
    assert len(rows) == 8 and reads.form.settings.field("side_a_mm").value() == 80
    assert reads.form.settings.field("span_mm").value() == 300  # what a piece does not say is as at first
    reads.form.model.edit(0, "measured_mm", "113.24")
    assert reads.form.model.rows()[0]["questioned"]  # a digit off, asked at once
    for row, text in enumerate(("123.24", "123.04", "103.24", "103.04") * 2):
        reads.form.model.edit(row, "measured_mm", text)
    assert math.degrees(reads.result.judgement.fit.angle.value) == pytest.approx(0.1, abs=0.003)


def test_the_term_in_force_goes_with_the_diagonals(qtbot, page, store, shop):
    store.keep(Trial("squareness", shop.machine.id), (SettingInForce(shop.machine.id, None, TERM, 0.0, 0.0012, "1"),))
    choose(page, "pillars")
    page.read_diagonals()
    assert store.draft("squareness", shop.machine.id, shop.lot.id).conditions["term_ratio"] == 0.0012


@pytest.mark.parametrize(("key", "kind"), [("wall_box_2", WallPage), ("mass_box", MassPage), ("top_pads", TopPage)])
def test_flow_pages_take_bead_and_layer_of_their_piece(qtbot, page, shop, key, kind):
    seen = opened(qtbot, shop, kind)
    planned = [row["feature"] for row in seen.form.model.rows()]
    seen.hide()
    type_into(page.form.bounds.field("nozzle_mm"), "0.6")
    type_into(page.form.bounds.field("layer_mm"), "0.3")
    choose(page, key)
    page.card.keep_button.click()
    seen.show()
    values = {name: seen.form.typed[name].value() for name in ("nozzle_mm", "height_mm", "width_mm", "in_force_ratio")}
    assert values == {"nozzle_mm": 0.6, "height_mm": 0.3, "width_mm": 0.675, "in_force_ratio": 1}
    assert [row["feature"] for row in seen.form.model.rows()] == planned
    if key == "mass_box":
        assert seen.form.typed["path_filament_mm"].text() == ""  # only the slicing knows it
    if key == "wall_box_2":
        assert seen.form.typed["beads"].value() == "2"
        assert planned == [gauge.name for gauge in page.result.plan.planned.gauges]
    seen.form.model.edit(0, "measured_mm", "1.2")
    page.read_piece()  # what is typed there stays
    assert shop.store.draft(kind.subject, shop.machine.id, shop.lot.id).readings["raw"][0] == "1.2"


def test_a_store_that_fails_is_said(page, store, notices, monkeypatch):
    def fail(*_arguments, **_named):
        raise StoreError("The database is locked; nothing was written.")

    monkeypatch.setattr(store, "draft", fail)
    page.read_piece()
    assert notices[-1] == ("The database is locked; nothing was written.", "error")


def test_decimal_comma_is_shown_and_read(page):
    QLocale.setDefault(QLocale("de_DE"))
    try:
        type_into(page.form.bounds.field("layer_mm"), "0,16")
        assert page.result.wishes.bounds.layer_mm == 0.16
        assert "0,1 %" in told(page)
    finally:
        QLocale.setDefault(QLocale.c())


@pytest.mark.parametrize("kind", [PiecesPage, ToolpathsPage])
def test_every_alt_key_means_one_thing(qtbot, shop, kind):
    """Where two things share a letter the key presses neither; M, E and U pick machine, lot and instrument above."""
    page = opened(qtbot, shop, kind)
    if kind is PiecesPage:
        choose(page, "pillars")
    texts = [label.text() for label in page.findChildren(QLabel) if label.buddy() and label.buddy().isVisible()]
    texts += [button.text() for button in page.findChildren(QAbstractButton) if button.isVisible()]
    keys = [key for key in (QKeySequence.mnemonic(text).toString() for text in texts) if key]
    assert len(keys) > 10
    assert len(set(keys) | {"Alt+M", "Alt+E", "Alt+U"}) == len(keys) + 3, sorted(keys)

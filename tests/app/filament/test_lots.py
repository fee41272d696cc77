"""The page *Lots*, used as a person uses it: a lot typed and saved, weighed and kept."""

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from app.pages.filament.lots import LotsPage
from core.quantity import Estimate
from core.records.rows import Lot, Trial
from tests.app.atpage import show_page, verdict


@pytest.fixture
def page(qtbot, context):
    return shown_page(qtbot, context)


def shown_page(qtbot, context):
    page = show_page(qtbot, LotsPage(context))
    page.take_focus()
    return page


@pytest.fixture
def lot(context, store):
    lot = store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75, spool_mass_g=200.0))
    context.lots_changed.emit()
    context.select_lot(lot.id)
    return lot


def type_fields(texts):
    """Type like a person: into whatever has the focus, Enter after each."""
    for text in texts:
        field = QGuiApplication.focusObject()
        if hasattr(field, "selectAll"):
            field.selectAll()
        QTest.keyClicks(field, text)
        QTest.keyClick(field, Qt.Key.Key_Return)


def weigh(page, *texts):
    page.weighing.form.field("before_g").setFocus()
    type_fields(texts)


def test_a_lot_typed_by_keyboard_is_saved_and_picked(qtbot, page, context, store):
    type_fields(["Slate 7", "PETG", "Some Maker", "grey", "B 12", "1,75", "0.03", "212", "dry box"])
    page.keep()
    (lot,) = store.lots()
    assert (lot.name, lot.material, lot.maker, lot.colour, lot.batch, lot.note) == (
        "Slate 7", "PETG", "Some Maker", "grey", "B 12", "dry box")
    assert (lot.nominal_diameter_mm, lot.claimed_tolerance_mm, lot.spool_mass_g) == (1.75, 0.03, 212.0)
    assert context.lot == lot
    assert store.draft("drying", None, lot.id) is None
    assert not page.entry.save_button.isEnabled()


def test_a_changed_lot_is_saved_over_the_old_one(qtbot, page, lot, context, store):
    page.form.field("colour").setFocus()
    type_fields(["black"])
    assert page.entry.save_button.isEnabled()
    page.keep()
    assert store.lots()[0].colour == "black"
    assert context.lot.colour == "black"


@pytest.mark.parametrize(("key", "text", "words"), [("name", "", "needed"), ("material", "", "needed"),
                                                    ("spool_mass_g", "-3", "too small")])
def test_refused_entries_are_said_at_their_field(qtbot, page, lot, store, key, text, words):
    page.form.field(key).setText(text)
    page.keep()
    assert words in page.form.field(key).accessibleDescription()
    assert store.lots() == (lot,)


def test_a_name_that_is_taken_and_a_change_made_elsewhere_are_refused(qtbot, page, lot, context, store):
    store.add_lot(Lot("Other", "PLA"))
    said = []
    context.notice.connect(lambda text, level: said.append(text))
    page.form.field("name").setText("Other")
    page.keep()
    assert "choose another name" in page.form.field("name").accessibleDescription()
    store.change_lot(lot)
    page.form.field("name").setText("New name")
    page.keep()
    assert "changed elsewhere" in said[-1]


def test_what_is_usual_follows_the_typed_material(qtbot, page):
    page.form.field("material").setFocus()
    QTest.keyClicks(page.form.field("material"), "petg")
    assert page.material.heading.text() == "Usual for PETG"
    assert "common practice, no source" in page.material.says.text()
    QTest.keyClicks(page.form.field("material"), "-CF")
    assert "measure its density" in page.material.says.text()
    page.form.field("material").setText("")
    QTest.keyClicks(page.form.field("material"), "ABS")
    assert "seen in print" in page.material.says.text()
    QTest.keyClicks(page.form.field("material"), "x")
    assert "Nothing on record for “ABSx”" in page.material.says.text()


def test_wet_filament_is_named_and_kept(qtbot, page, lot, context, store):
    weigh(page, "1200", "1195")
    assert "The filament itself: It was wet" in verdict(page)
    assert "0.500 ± 0.055 %" in verdict(page)
    assert "unverified: weigh a metre" in verdict(page)
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (kept,) = store.trials("drying", lot_id=lot.id)
    assert [e.name for e in kept.estimates] == ["drying_loss", "stock"]
    assert kept.verdict[0]["setting"] == "filament_lot"
    assert store.trial(kept.id).conditions == {"spool_mass_g": 200.0, "material": "PETG"}
    assert page.weighing.form.texts()["now_g"] == ""
    assert "Weighed" in verdict(page) and "It lost 0.500 ± 0.055 %." in verdict(page)
    assert store.newest("stock", lot_id=lot.id) is not None


def test_what_is_typed_of_the_balance_stays_for_the_next_lot_readable_or_not(qtbot, page, lot, context, store):
    balance = page.weighing.form.field("u_balance_g")
    for typed in ("0.5", "half a gram"):
        balance.setFocus()
        type_fields([typed])
        context.select_lot(store.add_lot(Lot(f"after {typed}", "ABS")).id)
        assert page.weighing.form.texts()["u_balance_g"] == typed
    assert "is not a number" in balance.accessibleDescription()


def test_stock_by_the_measured_mass_per_length(qtbot, page, lot, context, store):
    store.keep(Trial("diameter", lot_id=lot.id, estimates=(Estimate("mass_per_length", 3.0, 0.01, 20.0, "g/m"),)))
    weigh(page, "", "500")
    assert "filament left" in verdict(page)
    assert page.result.stock.value == pytest.approx(100.0)
    assert "unverified" not in verdict(page)


def test_typed_empty_spool_counts_before_it_is_saved(qtbot, page, context, store):
    lot = store.add_lot(Lot("Bare", "PLA", nominal_diameter_mm=1.75))
    context.select_lot(lot.id)
    weigh(page, "1200", "1199.9")
    assert "empty spool is needed" in page.form.field("spool_mass_g").accessibleDescription()
    page.form.field("spool_mass_g").setFocus()
    type_fields(["200"])
    assert "Leave it: It was dry." in verdict(page)


def test_swapped_masses_are_refused_at_their_field(qtbot, page, lot):
    weigh(page, "1195", "1200")
    assert "swapped" in page.weighing.form.field("now_g").accessibleDescription()
    assert "Cannot tell yet" in verdict(page)


def test_weighing_of_an_unsaved_lot_waits_for_it(qtbot, page, context, store):
    type_fields(["Slate 7", "PLA", "", "", "", "", "", "200"])
    weigh(page, "1200", "1195")
    assert "Save the lot first" in page.card.why_not.text()
    page.keep_weighing()
    assert store.trials("drying") and not [t for t in store.trials("drying") if t.estimates]
    page.keep()
    assert page.weighing.form.texts()["before_g"] == "1200"  # the masses stay
    page.keep_weighing()
    assert store.newest("drying_loss", lot_id=context.lot.id) is not None


def test_unsaved_text_is_found_again_with_its_lot(qtbot, page, lot, context, store):
    page.form.field("note").setFocus()
    type_fields(["half used"])
    weigh(page, "1200", "1195")
    context.select_lot(None)
    assert page.form.field("note").text() == ""
    context.select_lot(lot.id)
    assert page.form.field("note").text() == "half used"
    assert page.weighing.form.texts()["now_g"] == "1195"
    again = shown_page(qtbot, context)
    assert again.form.field("note").text() == "half used"


def test_new_lot_begins_empty(qtbot, page, lot, context):
    QTest.keyClick(page.entry.new_button, Qt.Key.Key_Space)
    assert context.lot is None
    assert page.form.field("name").text() == ""
    assert page.form.field("nominal_diameter_mm").text() == "1.75"


def test_decimal_comma_in_the_locale(qtbot, page, lot):
    QLocale.setDefault(QLocale("de_DE"))
    try:
        weigh(page, "1200,5", "1195,0")
        assert "0,55" in verdict(page)
    finally:
        QLocale.setDefault(QLocale.c())


def test_caution_stands_before_the_heat(page):
    texts = [label.text() for label in page.weighing.findChildren(type(page.material.heading))]
    assert any("not in an oven used for food" in text for text in texts)


def test_a_field_that_cannot_be_read_says_so_when_it_is_left(page):
    """17.5 for 1.75, and a letter in a mass: said at once, not only on saving; mended, it is gone."""
    for key, text, part in (("nominal_diameter_mm", "17.5", "too large"), ("spool_mass_g", "21x2", "21x2")):
        field = page.form.field(key)
        field.setFocus()
        type_fields([text])
        assert part in field.accessibleDescription()
        field.setFocus()
        type_fields(["1.75"])
        assert field.accessibleDescription() == ""

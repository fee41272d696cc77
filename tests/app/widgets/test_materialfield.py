"""A material is typed with offers from the catalogue; one Enter goes on to the next field."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.newrows import NewLot
from app.widgets.fields import Form, TextField
from app.widgets.materialfield import MaterialField
from core.filament.materials import materials


@pytest.fixture
def form(qtbot):
    form = Form()
    qtbot.addWidget(form)
    form.add("material", "Material", MaterialField())
    form.add("maker", "Maker", TextField())
    form.show()
    qtbot.waitExposed(form)
    form.field("material").setFocus()
    return form


def press(qtbot, field, key):
    """Press a key as the window system gives it: to the open offers, else to the field."""
    QTest.keyClick(QApplication.activePopupWidget() or field, key)
    qtbot.wait(1)


def test_enter_goes_on_while_the_offers_are_open(qtbot, form):
    field = form.field("material")
    QTest.keyClicks(field, "pet")
    assert field.completer().popup().isVisible()
    press(qtbot, field, Qt.Key.Key_Return)
    assert not field.completer().popup().isVisible()
    assert form.field("maker").hasFocus()
    assert field.value() == "pet"


def test_an_offer_is_taken_with_arrow_and_enter(qtbot, form):
    field = form.field("material")
    QTest.keyClicks(field, "pet")
    press(qtbot, field, Qt.Key.Key_Down)
    press(qtbot, field, Qt.Key.Key_Return)
    assert field.value() == "PETG"
    assert form.field("maker").hasFocus()


def test_enter_goes_on_without_offers(qtbot, form):
    QTest.keyClicks(form.field("material"), "Xylon 3")
    press(qtbot, form.field("material"), Qt.Key.Key_Return)
    assert form.field("maker").hasFocus()


def test_a_new_lot_offers_the_materials_of_the_catalogue(qtbot, context):
    popover = NewLot(context, None)
    qtbot.addWidget(popover)
    model = popover.form.field("material").completer().model()
    offered = [model.index(row, 0).data() for row in range(model.rowCount())]
    assert offered == [known.name for known in materials()]

"""Type into the fields as a person does and read what a person reads."""

import pytest
from PySide6.QtCore import QEvent, QLocale, QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QHelpEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QLabel

from app.widgets.fields import ChoiceField, CountField, Form, LengthField, NumberField, TextField, number_text
from core.errors import InputError
from core.words import tr


@pytest.fixture(params=["C", "de_DE"])
def mark(request):
    before = QLocale()
    QLocale.setDefault(QLocale(request.param))
    yield QLocale().decimalPoint()
    QLocale.setDefault(before)


def enter(qtbot, field, text):
    field.selectAll()
    qtbot.keyClick(field, Qt.Key.Key_Delete)
    qtbot.keyClicks(field, text)
    qtbot.keyClick(field, Qt.Key.Key_Return)


def says_below(form):
    return [label.text() for label in form.findChildren(QLabel) if label.objectName() == "question"
            and label.isVisibleTo(form)]


@pytest.mark.parametrize(
    ("typed", "mm", "left"),
    [
        ("12.50", 12.5, "12.50"),
        ("12,50", 12.5, "12.50"),
        (" 12.5 mm", 12.5, "12.5"),
        ("12,345", 12.345, "12.345"),
        ("0.394in", 10.0076, "10.0076"),
        ('5,108"', 129.7432, "129.7432"),
        ("25/64in", 9.921875, "9.921875"),
        ("-3.5", -3.5, "−3.5"),
        ("", None, ""),
    ],
)
def test_a_length_is_read_and_shown_in_mm_with_the_mark_of_the_locale(qtbot, mark, typed, mm, left):
    field = LengthField()
    qtbot.addWidget(field)
    field.set_mm(1)
    enter(qtbot, field, typed)
    assert field.text() == left.replace(".", mark)
    assert field.mm() == (None if mm is None else pytest.approx(mm, abs=1e-12))
    assert field.accessibleDescription() == ""


def test_a_length_typed_in_inch_remembers_how_it_was_typed(qtbot):
    field = LengthField()
    qtbot.addWidget(field)
    enter(qtbot, field, "0.5in")
    assert field.toolTip() == "typed as 0.5in"
    field.set_mm(3)
    assert (field.toolTip(), field.text()) == ("", "3")


@pytest.mark.parametrize(
    ("value", "text"), [(10.0, "10"), (0.1 + 0.2, "0.3"), (-2.5, "−2.5"), (-1e-9, "0"), (1e4, "10000")])
def test_numbers_set_by_the_program_have_no_idle_digits(qtbot, mark, value, text):
    assert number_text(value) == text.replace(".", mark)
    field = NumberField()
    qtbot.addWidget(field)
    field.set_value(value)
    assert field.text() == text.replace(".", mark)


@pytest.mark.parametrize(
    ("kind", "limits", "typed", "says"),
    [
        (LengthField, {}, "1,234.5", "“1,234.5” is not a length; type for example 12.5, 12,5"),
        (LengthField, {}, "12.5 ft", "the unit ft is not known"),
        (LengthField, {"low_mm": 1}, "0.5", "0.5 mm is too small: at least 1 mm."),
        (LengthField, {"high_mm": 20}, "1in", "25.4 mm is too large: at most 20 mm."),
        (NumberField, {}, "1.2.3", "“1.2.3” is not a number; type for example 12.5, without thousands separators."),
        (NumberField, {"low": 0}, "-0.1", "−0.1 is too small: at least 0."),
        (NumberField, {"high": 1}, "1,1", "1.1 is too large: at most 1."),
        (CountField, {}, "20.5", "“20.5” is not a whole number; type for example 20."),
        (CountField, {}, "-1", "-1 is too few: at least 0."),
        (CountField, {"high": 200}, "201", "201 is too many: at most 200."),
        (TextField, {"required": True}, " ", "Nothing is typed here yet; this one is needed."),
    ],
)
def test_what_cannot_be_taken_stays_as_typed_with_a_sentence_below(qtbot, kind, limits, typed, says):
    form = Form()
    qtbot.addWidget(form)
    field = form.add("what", "What", kind(**limits))
    form.show()
    enter(qtbot, field, typed)
    assert field.text() == typed
    if kind is not TextField:  # an empty field is asked for when the page reads the form, not while it waits
        assert says in field.accessibleDescription()
        assert len(says_below(form)) == 1
        assert says in says_below(form)[0]
    with pytest.raises(InputError) as refused:
        form.values()
    assert refused.value.field == "what"
    assert says in refused.value.message


def test_a_problem_goes_as_soon_as_typing_mends_it(qtbot):
    form = Form()
    qtbot.addWidget(form)
    pitch = form.add("pitch", "Belt pitch", LengthField(low_mm=1), "mm")
    form.show()
    enter(qtbot, pitch, "0.2")
    assert "too small" in says_below(form)[0]
    qtbot.keyClick(pitch, Qt.Key.Key_Backspace)
    assert says_below(form)
    qtbot.keyClicks(pitch, "5")
    qtbot.keyClick(pitch, Qt.Key.Key_Home)
    qtbot.keyClicks(pitch, "2")
    assert says_below(form) == []
    assert pitch.accessibleDescription() == ""


def test_changed_follows_a_finished_edit_once_and_never_the_program(qtbot):
    form = Form()
    qtbot.addWidget(form)
    teeth, kind = form.add("teeth", "Teeth", CountField()), form.add("kind", "Kind", ChoiceField([("b", "belt")]))
    kind.set_choices([("b", "belt"), ("s", "screw")])
    form.show()
    heard = []
    form.changed.connect(heard.append)
    form.set_values({"teeth": 20, "kind": "s", "unknown": 1})
    assert heard == []
    teeth.setFocus()
    qtbot.keyClicks(teeth, "1")
    assert heard == []
    qtbot.keyClick(teeth, Qt.Key.Key_Return)
    teeth.setFocus()
    qtbot.keyClick(teeth, Qt.Key.Key_Tab)
    assert heard == ["teeth"]
    qtbot.keyClick(kind, Qt.Key.Key_Up)
    assert heard == ["teeth", "kind"]
    assert form.values() == {"teeth": 201, "kind": "b"}


def test_enter_goes_through_the_fields_and_then_says_so(qtbot):
    form = Form()
    qtbot.addWidget(form)
    name, kind = form.add("name", "Name", TextField()), form.add("kind", "Kind", ChoiceField([("b", "belt")]))
    hidden = form.add("starts", "Starts", CountField())
    teeth = form.add("teeth", "Teeth", CountField())
    form.show_field("starts", False)
    form.show()
    qtbot.waitExposed(form)
    form.activateWindow()
    name.setFocus()
    qtbot.waitUntil(lambda: QApplication.focusWidget() is name)
    qtbot.keyClick(name, Qt.Key.Key_Return)
    assert QApplication.focusWidget() is kind
    qtbot.keyClick(kind, Qt.Key.Key_Enter)
    assert QApplication.focusWidget() is teeth
    with qtbot.waitSignal(form.entered):
        qtbot.keyClick(teeth, Qt.Key.Key_Return)
    assert not hidden.isVisible()


def test_a_page_puts_its_problem_below_the_field_and_takes_it_back(qtbot):
    form = Form()
    qtbot.addWidget(form)
    form.add("kind", "Kind", ChoiceField([("b", "belt"), ("s", "screw")]))
    form.add("starts", "Starts", CountField())
    form.show()
    assert form.show_problem("kind", tr("A screw needs its {what}.", what="starts"))
    assert says_below(form) == ["A screw needs its starts."]
    assert not form.show_problem("other", "…")
    form.field("kind").setCurrentIndex(1)
    assert says_below(form) == []
    form.show_problem("starts", "1 to 12.")
    form.show_field("starts", False)
    assert says_below(form) == []
    assert form.values() == {"kind": "s"}
    assert not form.show_problem("starts", "…")
    form.show_field("starts", True)
    assert says_below(form) == ["1 to 12."]
    form.clear_problems()
    assert says_below(form) == []


def test_fields_have_names_for_assistive_tools_with_the_unit(qtbot):
    form = Form()
    qtbot.addWidget(form)
    form.add("pitch", "&Pitch", LengthField(), "mm")
    form.add("kind", "Kind", ChoiceField([("b", "belt")]))
    spoken = QAccessible.queryAccessibleInterface(form.field("pitch")).text(QAccessible.Text.Name)
    assert spoken == "Pitch, mm"
    assert form.field("kind").accessibleName() == "Kind"  # Qt itself names a list by its value on some platforms
    assert [label.buddy().objectName() for label in form.findChildren(QLabel) if label.buddy()] == ["pitch", "kind"]


def test_arrow_keys_count_within_the_limits(qtbot):
    field = CountField(low=6, high=8)
    qtbot.addWidget(field)
    field.set_value(7)
    for _ in range(3):
        qtbot.keyClick(field, Qt.Key.Key_Up)
    assert field.text() == "8"
    for _ in range(5):
        qtbot.keyClick(field, Qt.Key.Key_Down)
    assert field.value() == 6
    enter(qtbot, field, "six")
    qtbot.keyClick(field, Qt.Key.Key_Up)
    assert field.text() == "six"


def test_the_wheel_turns_a_choice_only_while_it_has_the_focus(qtbot):
    field = ChoiceField([("a", "one"), ("b", "two")])
    qtbot.addWidget(field)
    field.show()
    field.clearFocus()
    wheel = QWheelEvent(QPointF(5, 5), QPointF(5, 5), QPoint(), QPoint(0, -120), Qt.MouseButton.NoButton,
                        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False)
    QApplication.sendEvent(field, wheel)
    assert field.value() == "a"
    field.set_value("unknown")
    assert field.value() is None


def test_a_field_can_be_named_anew_with_another_unit(qtbot):
    form = Form()
    qtbot.addWidget(form)
    field = form.add("limit", "&Limit", NumberField(), "mm")
    form.set_unit("limit", "&Limit", "g")
    assert field.accessibleName() == "Limit, g"
    form.set_unit("limit", "&Limit", "")
    assert field.accessibleName() == "Limit"


def test_a_choice_too_long_for_its_field_is_told_whole(qtbot, monkeypatch):
    told = []
    monkeypatch.setattr("app.widgets.fields.QToolTip.showText", lambda at, text, widget: told.append(text))
    field = ChoiceField([("a", "a rather long name for a thing"), ("b", "b")])
    qtbot.addWidget(field)
    field.setFixedWidth(90)
    field.show()
    assert field.shown_text().endswith("…") and field.shown_text() != field.currentText()
    where = field.rect().center()
    QApplication.sendEvent(field, QHelpEvent(QEvent.Type.ToolTip, where, field.mapToGlobal(where)))
    assert told == ["a rather long name for a thing"]
    field.showPopup()
    assert field.view().width() >= field.fontMetrics().horizontalAdvance("a rather long name for a thing")
    field.hidePopup()
    field.set_value("b")
    assert field.shown_text() == "b"
    QApplication.sendEvent(field, QHelpEvent(QEvent.Type.ToolTip, where, field.mapToGlobal(where)))
    assert len(told) == 1


def test_a_choice_asks_room_for_what_it_offers_now_and_for_a_long_name_within_reason(qtbot):
    """Qt goes on with the texts it had when it was first asked."""
    field = ChoiceField([("a", "yes")])
    qtbot.addWidget(field)
    short = field.minimumSizeHint().width()
    field.set_choices([("a", "yes"), ("b", "micrometer or caliper")])
    needs = field.minimumSizeHint().width()
    assert needs > field.fontMetrics().horizontalAdvance("micrometer or caliper") > short
    field.set_choices([("a", "yes"), ("b", "a name of a machine that somebody gave it " * 3)])
    assert needs < field.minimumSizeHint().width() < field.sizeHint().width() / 1.5
    field.least_text = "yes"
    assert field.minimumSizeHint().width() == short

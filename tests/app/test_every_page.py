"""What holds on every page: no text is cut at 1000 x 700, what takes the keyboard has a name, Tab goes all round."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QAccessible, QImage, QKeySequence
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QCheckBox,
    QComboBox,
    QFrame,
    QLabel,
    QLineEdit,
    QTextEdit,
    QWidget,
)

from app.context import Context
from app.pages import PAGES
from app.pages.trialpage import TrialPage
from app.widgets.fields import ChoiceField, LineField
from app.widgets.focusring import FocusRing
from app.widgets.formscroll import FormScroll
from app.widgets.readings_table import ReadingsTable
from core.records.rows import Instrument, Lot, Machine

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
SCREW = {"kind": "screw", "pitch_mm": 2.0, "starts": 4, "full_steps": 200, "microsteps": 16}
STOPS = 120  # more than any page has
TRIES = 5  # until the page stays as it is
CHANGE, LEAST_PX = 40, 25  # of 255 and of the pixels: more than a caret


@pytest.fixture
def window(qtbot, new_window, store):
    """The window at its smallest, on a shop with one of each."""
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT, "z": SCREW}))
    lot = store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75))
    caliper = store.add_instrument(Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008))
    window, context = new_window, Context(store, new_window)
    window.show()
    window.open_shop(context, PAGES[0].key)
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    context.select_instrument(caliper.id)
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    return window


@pytest.fixture(params=[entry.key for entry in PAGES])
def page(request, window):
    window.enter_page(request.param)
    for _ in range(3):
        QApplication.processEvents()
    return window._body.currentWidget()


def seen(page: QWidget, kind: type) -> list:
    return [widget for widget in page.findChildren(kind) if widget.isVisible()]


def test_the_window_stays_as_small_as_it_was_and_the_first_row_of_a_form_in_sight(window, page):
    if isinstance(page, TrialPage):
        bar = page.findChild(FormScroll).verticalScrollBar()
        for locked in (False, True, False):
            page.form.lock(locked)
            page.take_focus()
            for _ in range(3):
                QApplication.processEvents()
            assert bar.value() == 0, "locked" if locked else "open"
    assert (window.width(), window.height()) == (1000, 700)


def test_rows_pasted_below_the_planned_ones_are_borne_in_every_mode(page):
    if not isinstance(page, TrialPage):
        return
    for field in [None, *seen(page, ChoiceField)]:
        for place in range(field.count() if field is not None else 1):
            if field is not None and field.isVisible() and field.isEnabled():
                field.setCurrentIndex(place)
            model = page.form.model
            for column in range(len(model.columns)):
                model.paste(max(model.rowCount() - 1, 0), column, "3\n4\n5")
            for button in seen(page, QAbstractButton):
                if button.isCheckable() and button.isEnabled():
                    button.click()
            page.recompute()
            model.set_rows([])
            page.begin_anew()


def test_no_text_is_cut(page):
    assert cut_texts(page) == []


def test_a_cut_text_would_be_found(window):
    page = window._body.currentWidget()
    next(button for button in seen(page, QAbstractButton) if button.text()).setFixedWidth(20)
    next(label for label in seen(page, QLabel) if label.text()).setFixedWidth(10)
    QApplication.processEvents()
    assert len(cut_texts(page)) == 2


def cut_texts(page: QWidget) -> list[str]:
    """A label or button of one line has the room for all of its text, one of several lines the height."""
    cut = []
    for label in seen(page, QLabel):
        if not label.text():
            continue
        if label.wordWrap() and label.heightForWidth(label.width()) > label.height() + 1:
            cut.append(f"“{label.text()}”: lower than its lines")
        elif not label.wordWrap() and label.sizeHint().width() > label.width() + 1:
            cut.append(f"“{label.text()}”: {label.sizeHint().width()} px in {label.width()}")
    for button in seen(page, QAbstractButton):
        if button.hasHeightForWidth():
            if button.heightForWidth(button.width()) > button.height() + 1:
                cut.append(f"“{button.text()}”: lower than its lines")
        elif button.text() and button.sizeHint().width() > button.width() + 1:
            cut.append(f"“{button.text()}”: {button.sizeHint().width()} px in {button.width()}")
    return cut


def test_what_takes_the_keyboard_has_a_name_and_a_role(page):
    """A screen reader tells what it stands on."""
    nameless = []
    for kind in (QLineEdit, QComboBox, QAbstractButton, QAbstractItemView):
        for widget in seen(page, kind):
            if not widget.focusPolicy() & Qt.FocusPolicy.TabFocus or not widget.isEnabled():
                continue
            told = QAccessible.queryAccessibleInterface(widget)
            named = told is not None and told.text(QAccessible.Text.Name).strip()
            if not named or told.role() == QAccessible.Role.NoRole:
                nameless.append(f"{type(widget).__name__} {widget.objectName()}")
    assert not nameless


def test_every_panel_has_a_name_and_is_told_as_one(page):
    wrong = []
    for panel in [panel for panel in seen(page, QFrame) if panel.objectName() == "card"]:
        told = QAccessible.queryAccessibleInterface(panel)
        if not told.text(QAccessible.Text.Name).strip() or told.role() != QAccessible.Role.Grouping:
            wrong.append(type(panel).__name__)
    assert wrong == []


def test_tab_goes_all_the_way_round(qtbot, window, page):
    """No widget keeps the keyboard, and Tab comes back to where it began."""
    begun, been = QApplication.focusWidget(), []
    assert begun is not None
    for _ in range(STOPS):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        now = QApplication.focusWidget()
        assert now is not None and now is not (been[-1] if been else begun), f"{now} keeps the keyboard"
        been.append(now)
        if now is begun:
            break
    assert been[-1] is begun, "Tab does not come back"


def test_tab_goes_down_and_to_the_right(qtbot, window, page):
    assert out_of_order(qtbot, window, page) == []


def test_a_stop_out_of_order_would_be_found(qtbot):
    page = QWidget()
    qtbot.addWidget(page)
    low, high, left, right = (QLineEdit(name, page) for name in ("low", "high", "left", "right"))
    for line, place in ((low, (0, 200)), (high, (0, 0)), (right, (300, 100)), (left, (0, 100))):
        line.move(*place)
        line.setAccessibleName(line.text())
    QWidget.setTabOrder(right, left)
    page.resize(500, 300)
    page.show()
    page.activateWindow()
    qtbot.waitUntil(page.isActiveWindow)
    low.setFocus()
    assert out_of_order(qtbot, page, page) == ["low, then high above it", "right, then left to the left of it"]


def test_what_has_the_keyboard_shows_it(qtbot, window, page):
    assert hidden_stops(qtbot, window) == []


def test_a_stop_that_does_not_show_itself_would_be_found(qtbot):
    page = QWidget()
    qtbot.addWidget(page)
    for place, kind in enumerate((QLineEdit, QTextEdit)):
        kind(page).setGeometry(20, 20 + 100 * place, 200, 80)
    page.resize(300, 300)
    page.show()
    page.activateWindow()
    qtbot.waitUntil(page.isActiveWindow)
    page.findChild(QLineEdit).setFocus()
    page.findChild(QTextEdit).setTabChangesFocus(True)
    assert hidden_stops(qtbot, page) == ["QTextEdit"]  # its caret is not enough
    ring = FocusRing(page)
    page.windowHandle().focusObjectChanged.connect(ring.follow)
    page.findChild(QLineEdit).setFocus()
    assert hidden_stops(qtbot, page) == []


def hidden_stops(qtbot, window: QWidget) -> list[str]:
    """Return at which stops of Tab the keyboard cannot be seen: hardly a pixel changes when it goes."""
    hidden = []
    for stop in stops_of_tab(qtbot):
        stop.setFocus(Qt.FocusReason.ShortcutFocusReason)
        if not in_sight(stop):
            hidden.append(f"{stop.accessibleName() or type(stop).__name__}, out of sight")
            continue
        with_it, without = looks_of_both(window, stop)
        if np.count_nonzero(np.abs(with_it - without).max(axis=2) > CHANGE) < LEAST_PX:
            hidden.append(stop.accessibleName() or type(stop).__name__)
    return hidden


def looks_of_both(window: QWidget, stop: QWidget) -> tuple[np.ndarray, np.ndarray]:
    """Return how it looks with the keyboard and without it; again where work beside the window came in between."""
    for _ in range(TRIES):
        stop.setFocus(Qt.FocusReason.ShortcutFocusReason)
        with_it = looks(window, stop)
        stop.clearFocus()
        without = looks(window, stop)
        if with_it.shape == without.shape:
            break
    return with_it, without


def in_sight(widget: QWidget) -> bool:
    """Whether what is around it has it scrolled into view."""
    part = widget.rect()
    while (around := widget.parentWidget()) is not None and not widget.isWindow():
        part, widget = part.translated(widget.pos()) & around.rect(), around
    return not part.isEmpty()


def looks(window: QWidget, part: QWidget) -> np.ndarray:
    """Return what a part of the window, and a little around it, looks like: (rows, columns, 3)."""
    QApplication.processEvents()
    around = QRect(part.mapTo(window, QPoint()), part.size()).adjusted(-4, -4, 4, 4) & window.rect()
    image = window.grab(around).toImage().convertToFormat(QImage.Format.Format_RGB32)
    return np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.width(), 4)[..., :3].astype(int)


def stops_of_tab(qtbot) -> list[QWidget]:
    """Return where Tab stops from here until it comes back."""
    stops, begun = [], QApplication.focusWidget()
    for _ in range(STOPS):
        stops.append(QApplication.focusWidget())
        qtbot.keyClick(stops[-1], Qt.Key.Key_Tab)
        if QApplication.focusWidget() is begun:
            break
    return stops


def out_of_order(qtbot, window: QWidget, page: QWidget) -> list[str]:
    """Return where Tab goes up within its column, or back within a line, on its way through a page."""
    stops = stops_of_tab(qtbot)
    on_page = [page.isAncestorOf(stop) for stop in stops]
    first = next((place for place in range(len(stops)) if on_page[place] and not on_page[place - 1]), 0)
    inside = [stop for stop in (*stops[first:], *stops[:first]) if page.isAncestorOf(stop)]
    found = []
    for before, after in pairwise(inside):
        was, now = (QRect(stop.mapTo(window, QPoint()), stop.size()) for stop in (before, after))
        beside = now.top() < was.bottom() - 2 and now.bottom() > was.top() + 2
        told = ", then ".join(stop.accessibleName() or type(stop).__name__ for stop in (before, after))
        if beside and now.right() <= was.left():
            found.append(f"{told} to the left of it")
        elif now.bottom() <= was.top() and now.left() < was.right():
            found.append(f"{told} above it")
    return found


def test_every_finished_edit_is_undone_at_its_place(qtbot, window, page):
    """One Ctrl+Z brings fields, choices and check boxes back, with all that followed from them."""
    faults = []
    for field in entries(page):
        if not field.isVisible() or not field.isEnabled():
            continue
        field.setFocus()
        before = stands(page)
        if not edit(qtbot, field) or stands(page) == before:
            continue
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
        if stands(page) != before or not field.hasFocus():
            faults.append(f"{type(field).__name__} {field.accessibleName() or field.objectName()}")
    assert not faults


def entries(page: QWidget) -> list[QWidget]:
    """What is entered on a page outside its tables; to look at another trial or to switch a band off is no entry."""
    found = [*seen(page, LineField), *seen(page, ChoiceField), *seen(page, QCheckBox)]
    return [field for field in found if getattr(field, "is_entry", field.property("entry") is not False)]


def stands(page: QWidget) -> list:
    """What stands in the fields that are in sight, and in the tables."""
    fields = [field.isChecked() if isinstance(field, QCheckBox) else field.undo_state() for field in entries(page)]
    return [*fields, *(table.readings().rows() for table in seen(page, ReadingsTable))]


def edit(qtbot, field: QWidget) -> bool:
    """Change a field as a person would, and return whether there was something to change."""
    if isinstance(field, QCheckBox):
        qtbot.keyClick(field, Qt.Key.Key_Space)
    elif isinstance(field, ChoiceField):
        key = Qt.Key.Key_Down if field.currentIndex() + 1 < field.count() else Qt.Key.Key_Up
        qtbot.keyClick(field, key)
        return field.count() > 1
    else:
        field.selectAll()
        qtbot.keyClicks(field, "7")
        qtbot.keyClick(field, Qt.Key.Key_Tab)  # Enter in the last field of a form would do what the form is for
    return True


def test_no_two_things_share_an_alt_key(window, page):
    assert shared_alt_keys(window) == {}


def shared_alt_keys(window: QWidget) -> dict[str, list[str]]:
    """Return what shares a letter: with it Alt only moves the keyboard between them, and does nothing."""
    texts = {}
    for widget in [*seen(window, QLabel), *seen(window, QAbstractButton)]:
        if isinstance(widget, QLabel) and widget.buddy() is None:
            continue
        keys = QKeySequence.mnemonic(widget.text()).toString()
        if keys:
            texts.setdefault(keys, []).append(widget.text())
    return {keys: found for keys, found in texts.items() if len(found) > 1}


def test_a_list_that_opens_shows_all_its_lines(page):
    for box in seen(page, ChoiceField):
        if not box.isEnabled():
            continue
        box.showPopup()
        QApplication.processEvents()
        view = box.view()
        assert view.viewport().height() >= sum(map(view.sizeHintForRow, range(box.count()))), box.accessibleName()
        assert not view.verticalScrollBar().maximum(), box.accessibleName()
        box.hidePopup()

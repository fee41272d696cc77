"""Where language and unit of lengths are chosen: a menu at the foot of the list, and the find box."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.language import View, apply_view
from app.rail import Rail
from app.viewmenu import ViewMenu
from core.records.rows import Machine


@pytest.fixture
def rail(qtbot, context, store):
    store.add_machine(Machine("Deutzer"))
    found = Rail()
    qtbot.addWidget(found)
    found.finder.serve(context)
    found.show()
    found.activateWindow()
    qtbot.waitUntil(found.isActiveWindow)
    return found


def choices(menu: ViewMenu) -> dict[str, bool]:
    """What can be chosen, and whether it is."""
    return {action.text(): action.isChecked() for action in menu.menu().actions() if action.isCheckable()}


def choose(menu: ViewMenu, text: str) -> None:
    next(action for action in menu.menu().actions() if action.text() == text).trigger()


def test_the_menu_shows_what_is_chosen(rail):
    assert choices(rail.view) == {
        "As the system": True, "English": False, "Deutsch": False, "Millimetres (mm)": True, "Inches (in)": False,
    }  # fmt: skip
    heads = [action.text() for action in rail.view.menu().actions() if not action.isEnabled()]
    assert [text for text in heads if text] == ["Language", "Lengths"]


def test_it_is_reached_by_keys_and_named(rail):
    assert rail.view.accessibleName() == "View: language, and unit of lengths"
    assert rail.view.focusPolicy() & Qt.FocusPolicy.TabFocus
    rail.help.setFocus()
    QTest.keyClick(rail, Qt.Key.Key_Tab)
    assert rail.focusWidget() is rail.view


def test_a_choice_is_asked_for_once(qtbot, rail):
    asked = []
    rail.view_asked.connect(lambda what, choice: asked.append((what, choice)))
    choose(rail.view, "Deutsch")
    choose(rail.view, "Inches (in)")
    choose(rail.view, "Millimetres (mm)")  # is shown already
    assert asked == [("language", "de"), ("lengths", "inch")]


def test_the_find_box_leads_there(qtbot, rail):
    rail.finder.setFocus()
    QTest.keyClicks(rail.finder, "inches")
    with qtbot.waitSignal(rail.view_asked) as asked:
        QTest.keyClick(rail.finder, Qt.Key.Key_Return)
    assert asked.args == ["lengths", "inch"]


def test_a_new_window_shows_the_new_choice(qtbot, qapp):
    apply_view(qapp, View("en", "inch"))
    try:
        menu = ViewMenu()
        qtbot.addWidget(menu)
        assert [text for text, chosen in choices(menu).items() if chosen] == ["English", "Inches (in)"]
    finally:
        apply_view(qapp, View())

"""The find box: pages, machines, lots and instruments by a part of their name, by keyboard alone."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from app.finder import Finder
from core.records.rows import Instrument, Lot, Machine


@pytest.fixture
def finder(qtbot, context):
    box = Finder()
    qtbot.addWidget(box)
    box.serve(context)
    box.show()
    box.activateWindow()
    box.setFocus()
    qtbot.waitUntil(box.hasFocus)
    return box


def find(qtbot, box, text):
    qtbot.keyClicks(box, text)
    qtbot.keyClick(box, Qt.Key.Key_Return)


def test_a_page_is_found_by_a_part_of_its_name(qtbot, finder):
    with qtbot.waitSignal(finder.page_chosen) as chosen:
        find(qtbot, finder, "squaren")
    assert chosen.args == ["squareness"]
    qtbot.waitUntil(lambda: finder.text() == "")


@pytest.mark.parametrize(("typed", "key"), [("first st", "walkthrough"), ("words", "glossary"), ("keys", "keys")])
def test_a_text_of_the_help_is_found(qtbot, finder, context, typed, key):
    with qtbot.waitSignal(context.help_topic_asked) as asked:
        find(qtbot, finder, typed)
    assert asked.args == [key]


def test_first_offers_the_first_steps_beside_the_first_layer(qtbot, finder):
    qtbot.keyClicks(finder, "first")
    offered = finder.completer().completionModel()
    texts = [offered.index(row, 0).data() for row in range(offered.rowCount())]
    assert texts == ["Machine geometry › First layer", "Help › First steps"]


@pytest.mark.parametrize("kind", ["machine", "lot", "instrument"])
def test_what_stands_in_the_shop_is_picked(qtbot, finder, context, kind):
    row = {"machine": Machine("Kestrel"), "lot": Lot("Slate 7", "PETG"), "instrument": Instrument("Caliper 2")}[kind]
    added = getattr(context.store, f"add_{kind}")(row)
    finder.clearFocus()
    finder.setFocus()
    with qtbot.waitSignal(finder.left):
        find(qtbot, finder, row.name[:5].lower())
    assert getattr(context, kind) == added


def test_what_is_not_there_goes_nowhere(qtbot, finder):
    gone = []
    finder.page_chosen.connect(gone.append)
    find(qtbot, finder, "no such thing")
    find(qtbot, finder, "  ")
    assert gone == []


def test_escape_leaves(qtbot, finder):
    qtbot.keyClicks(finder, "dri")
    finder.completer().popup().hide()
    with qtbot.waitSignal(finder.left):
        qtbot.keyClick(finder, Qt.Key.Key_Escape)
    assert finder.text() == ""

"""What a page plans is kept under one name in every language, and shown in the language of the window."""

from __future__ import annotations

import re

import pytest

from app import language
from app.pages import PAGES
from app.pages.bench.instrumentrows import rows_of
from app.rownames import shown_name, typed_name
from core.measuring.instrumentkinds import KINDS, plans_of
from core.measuring.rownames import row_words
from core.records.rows import Instrument, Lot, Machine
from core.words import Words
from tests.app.atpage import show_page
from tests.app.test_every_page import BELT, SCREW

WAYS = {"reversal": "method", "squareness": "method", "bedplane": "reading", "diameter": "view", "feed": "way",
        "speed": "method", "ladder": "ladder"}  # fmt: skip
OTHERS = {"firstlayer", "wall", "mass", "top", "ceiling", "sizeerror"}
SAME_IN_BOTH = re.compile(r"[A-Z]\d*")  # the mark on a printed piece
CHECKS = sorted({row["feature"] for kind in KINDS for plan in plans_of(kind) for row in rows_of(kind, plan)})


@pytest.fixture
def german(qapp):
    before = language.current_view()
    language.apply_view(qapp, language.View("de"))
    yield
    language.apply_view(qapp, before)


def planned(qtbot, context, key: str) -> list[list[str]]:
    """Return the names of the rows of a new trial, for each way of reading."""
    form = show_page(qtbot, next(entry for entry in PAGES if entry.key == key).build(context)).form
    if key not in WAYS:
        return [names_in(form)]
    found, field = [], getattr(form, WAYS[key])
    for place in range(field.count()):
        field.setCurrentIndex(place)
        found.append(names_in(form))
    return found


def names_in(form) -> list[str]:
    return [row["feature"] for row in form.model.rows()]


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT, "z": SCREW}))
    context.select_machine(machine.id)
    context.select_lot(store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75)).id)
    context.select_instrument(store.add_instrument(Instrument("Caliper 2")).id)
    return context


@pytest.mark.parametrize("key", [*WAYS, *sorted(OTHERS)])
def test_what_a_page_plans_has_one_name_in_both_languages(qtbot, qapp, shop, key):
    in_english = planned(qtbot, shop, key)
    language.apply_view(qapp, language.View("de"))
    try:
        assert [sorted(names) for names in planned(qtbot, shop, key)] == [sorted(names) for names in in_english]
        assert_told_in_german({name for names in in_english for name in names})
    finally:
        language.apply_view(qapp, language.View())


@pytest.mark.usefixtures("german")
def test_the_readings_of_a_check_have_names_in_german():
    assert len(CHECKS) > 15
    assert_told_in_german(set(CHECKS))


def assert_told_in_german(names: set[str]) -> None:
    """Each name is told in words of its own, from which it is found again."""
    assert names
    told = {name: shown_name(name) for name in names if not SAME_IN_BOTH.fullmatch(name)}
    assert [name for name in told if not isinstance(row_words(name), Words)] == []
    assert [name for name, says in told.items() if typed_name(says) != name] == []
    assert [name for name, says in told.items() if says == name and not re.fullmatch(r"P\d+", name)] == []


@pytest.mark.usefixtures("german")
def test_a_trial_kept_in_english_is_shown_in_german_and_what_a_person_typed_stays(qtbot, shop):
    page = next(entry for entry in PAGES if entry.key == "speed").build(shop)
    qtbot.addWidget(page)
    model = page.form.model
    model.set_rows([{"feature": name} for name in ("A, judge 1", "B, strings, judge 2", "C, warp, judge 1", "my slot")])
    shown = [model.data(model.index(row, 0)) for row in range(4)]
    assert shown == ["A, Bewerter 1", "B, Fäden, Bewerter 2", "C, warp, Bewerter 1", "my slot"]
    assert [row["feature"] for row in model.rows()] == [
        "A, judge 1", "B, strings, judge 2", "C, warp, judge 1", "my slot"]  # fmt: skip

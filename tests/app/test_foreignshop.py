"""A shop from a file of another hand, every value of the right kind and few of them sensible: each page bears it."""

from __future__ import annotations

import copy
import json
import os
import random
from importlib.resources import files
from typing import Any

import pytest
from PySide6.QtWidgets import QApplication

from app.context import Context
from app.pages import PAGES
from app.pages.trialpage import TrialPage
from core.guidance.foreignrows import foreign_faults
from core.records.cells import value_from_plain
from core.records.columns import value_from_json
from core.records.rows import TrialState
from core.records.store import open_store
from core.records.transfer import TABLES

STRANGE = [None, "abc", "", -1, 0, 1e300, 5e-324, 7.5, -5.5, 1e9, True, [], {}, [1], {"a": 1}, "12,5", "=1+1", "{x}",
           "9" * 400, "\u202e", {"$float": "nan"}, {"$float": "inf"}]  # fmt: skip
SHARE = 0.4  # of the groups of values that get some strange ones
NOT_TOUCHED = ("id", "version", "serial", "open_as", "key", "name", "content")  # what rows are found and linked by
LOOKED_AT = 3  # kept trials of each page


def strange_shop(chance: random.Random) -> dict[str, Any]:
    """Return the demo shop with strange values, as many as pass the checks of an import."""
    shop = json.loads(files("resources").joinpath("demo/shop.json").read_text("utf-8"))
    shop["rows"]["shop_value"] = []  # its mark among them
    for table in TABLES:
        for row in shop["rows"][table.name]:
            for column in row:
                if column in NOT_TOUCHED or table.columns[column].foreign_keys:
                    continue
                before = copy.deepcopy(row[column])
                if isinstance(before, dict | list):
                    if before and chance.random() < SHARE:
                        make_strange(row[column], chance)
                elif chance.random() < SHARE / 8:
                    row[column] = chance.choice(STRANGE)
                if not passes(table, row):
                    row[column] = before
    return shop


def make_strange(group: Any, chance: random.Random) -> None:
    """Put strange values into a group of values, or take some away."""
    for _ in range(chance.randint(1, 3)):
        inside, keys = group, list(group if isinstance(group, dict) else range(len(group)))
        while keys:
            key = chance.choice(keys)
            deeper = inside[key]
            if not isinstance(deeper, dict | list) or not deeper or chance.random() < 0.1:
                inside[key] = copy.deepcopy(chance.choice(STRANGE))
                break
            inside, keys = deeper, list(deeper if isinstance(deeper, dict) else range(len(deeper)))


def passes(table: Any, row: dict[str, Any]) -> bool:
    try:
        read = value_from_json(json.dumps(row))
        return not foreign_faults(table.name, {c.name: value_from_plain(c, read[c.name]) for c in table.columns})
    except ValueError:
        return False


@pytest.mark.parametrize("seed", [int(word) for word in os.environ.get("SLIPGAUGE_SEEDS", "4 11").split()])
def test_every_page_bears_a_strange_shop(new_window, tmp_path, seed):
    (tmp_path / "shop.json").write_text(json.dumps(strange_shop(random.Random(seed))), "utf-8")
    store = open_store(tmp_path / "shop.db")
    report = store.storage.import_from(str(tmp_path / "shop.json"), check=foreign_faults)
    assert not report.refused, report.lines
    window, context = new_window, Context(store, new_window)
    window.show()
    window.open_shop(context, PAGES[0].key)
    for machine in store.machines():
        context.select_machine(machine.id)
        for entry in PAGES:
            window.enter_page(entry.key)
            QApplication.processEvents()
            page = new_window._body.currentWidget()
            for trial in page.picker.kept[:LOOKED_AT] if isinstance(page, TrialPage) else ():
                page.picker.set_value(str(trial.id))
                page.picker.changed.emit()
                QApplication.processEvents()
    window.close()
    store.close()


@pytest.mark.parametrize("entry", PAGES, ids=lambda entry: entry.key)
def test_what_a_page_stores_tells_its_kind_by_name(new_window, store, entry):
    """A list in a place where a value stands is of no kind, so each name must find it at fault."""
    new_window.open_shop(Context(store, new_window), entry.key)
    page = new_window._body.currentWidget()
    if not isinstance(page, TrialPage):
        return
    trial = page.trial_of()
    named = [("conditions", name, [{}]) for name in trial.conditions]
    named += [("readings", column.key, [[]]) for column in page.form.model.columns if column.kind != "shown"]
    empty = {"subject": "", "state": TrialState.OPEN, "readings": {}, "conditions": {}, "verdict": ()}
    assert [n for group, n, value in named if not foreign_faults("trial", {**empty, group: {n: value}})] == []

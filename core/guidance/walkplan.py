"""The plan of the setup walk as data: steps in order, what proves each, and what spoils what.

Read from `resources/walk.toml`. Its table of what spoils what and its order: common practice, no source.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import Any

_CELL = re.compile(r"([Rc.])(?:\((\w+)\))?")


class Effect(StrEnum):
    """What an event does to a result."""

    REDO = "R"
    CHECK = "c"
    STAYS = "."


class Scope(StrEnum):
    """Whose a result is; both: of a machine with a filament lot."""

    MACHINE = "machine"
    LOT = "lot"
    BOTH = "both"
    SHOP = "shop"


@dataclass(frozen=True, slots=True)
class Cell:
    """One cell of the table: the effect, and how it is mended (`count`, `compare`) or what to mind at it."""

    effect: Effect
    how: str = ""


@dataclass(frozen=True, slots=True)
class ResultKind:
    """What the table speaks of.

    Attributes:
        page: the page that gives it; empty where it is looked at by hand only.
        subjects: trials that give it.
        needs: names of the estimates it takes; a name that ends in `*` stands for all that begin so.
        any: one of the names is enough.
        hand: a check by hand proves it too.
        optional: a walk is complete without it.
        not_for: motions of machines that have no such thing.
        settings: a setting for the size of parts that is put in force proves it.
        after_settings: a setting put in force later spoils it.
        of_heat: it holds near the nozzle temperature that was in force when it was found.
        missed: name of an estimate that says that it failed.
    """

    key: str
    page: str
    scope: Scope
    subjects: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    any: bool = False
    hand: bool = False
    optional: bool = False
    not_for: tuple[str, ...] = ()
    settings: bool = False
    after_settings: bool = False
    of_heat: bool = False
    missed: str = ""


@dataclass(frozen=True, slots=True)
class Step:
    """A step: its results, the steps that must stand first, those it must be younger than, and what is looked at."""

    key: str
    number: int
    results: tuple[str, ...]
    needs: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    items: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Enough:
    """When an estimate is good enough: at most `most` from `target`, or known to `u`; None: no such limit."""

    target: float = 0.0
    most: float | None = None
    u: float | None = None


@dataclass(frozen=True, slots=True)
class Plan:
    """The whole walk.

    Attributes:
        enough: for each estimate with a limit, when it is good enough.
        about: for each kind of event, whom it happens to: `machine`, `lot` or `instrument`.
        spoils: for each kind of event, what it does to each result of the table.
    """

    steps: tuple[Step, ...]
    results: Mapping[str, ResultKind]
    about: Mapping[str, str]
    spoils: Mapping[str, Mapping[str, Cell]]
    enough: Mapping[str, Enough]

    def step(self, key: str) -> Step:
        """Return the step of that key."""
        return next(step for step in self.steps if step.key == key)


@cache
def shop_plan() -> Plan:
    """Return the plan that comes with the program."""
    return plan_from_text((files("resources") / "walk.toml").read_text(encoding="utf-8"))


def plan_from_text(text: str) -> Plan:
    """Return the plan that a text in TOML describes."""
    found = tomllib.loads(text)
    rows = {kind: row.split() for kind, row in found["spoils"].items()}
    columns = rows.pop("results")
    return Plan(
        steps=tuple(Step(**_tuples(step)) for step in found["step"]),
        results={key: _result(key, entries) for key, entries in found["results"].items()},
        about=found["about"],
        spoils={kind: dict(zip(columns, map(_cell, row), strict=True)) for kind, row in rows.items()},
        enough={
            name: Enough(limits.get("from", 0.0), limits.get("most"), limits.get("u"))
            for name, limits in found.get("enough", {}).items()
        },
    )


def _result(key: str, entries: Mapping[str, Any]) -> ResultKind:
    return ResultKind(key=key, **(_tuples(entries) | {"scope": Scope(entries["scope"])}))


def _tuples(entries: Mapping[str, Any]) -> dict[str, Any]:
    return {name: tuple(value) if isinstance(value, list) else value for name, value in entries.items()}


def _cell(text: str) -> Cell:
    match = _CELL.fullmatch(text)
    if match is None:
        raise ValueError(text)
    return Cell(Effect(match[1]), match[2] or "")

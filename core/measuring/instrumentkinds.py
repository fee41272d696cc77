"""Kinds of hand instrument: what they read, their usual limit of error, and the readings of a check.

Values are in the unit of the kind: mm, of a balance g, of a thermometer degrees Celsius.

Reference: the limits and the references are catalogue tables, editable where they are used; their heads say how well
each is known. ISO 13385-1 and ISO 3611 define the characteristics of calipers and micrometers.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib.resources import files

from core.errors import InputError
from core.words import Words, tr


class Part(StrEnum):
    """What one reading of a check is about."""

    ZERO = "zero"
    LENGTH = "length"
    TIP = "tip"
    INSIDE = "inside"
    DEPTH = "depth"
    HAND = "hand"
    SECOND = "second"


class LightGap(StrEnum):
    """What was seen between the closed jaws, held against a lamp."""

    NOT_LOOKED = "not_looked"
    NONE = "none"
    SEEN = "seen"


class Plan(StrEnum):
    """Which readings a check begins with."""

    FULL = "full"
    ZERO = "zero"
    REFERENCES = "references"
    HAND = "hand"
    TWO_PEOPLE = "two_people"
    OWN = "own"


@dataclass(frozen=True, slots=True)
class InstrumentKind:
    """A kind of instrument.

    Attributes:
        name: for people.
        unit: of its readings.
        resolution: usual worth of its last digit.
        zero_range: zero readings of one check may lie so far apart; common practice, no source.
        inside: whether it has blades for inside lengths.
        depth: whether it has a depth rod.
        jaws: whether it has two faces that close on each other.
        length: whether it reads lengths.
    """

    name: Words
    unit: str
    resolution: float
    zero_range: float
    inside: bool = False
    depth: bool = False
    jaws: bool = False
    length: bool = True


KINDS: Mapping[str, InstrumentKind] = {
    "caliper": InstrumentKind(tr("caliper"), "mm", 0.01, 0.01, inside=True, depth=True, jaws=True),
    "micrometer": InstrumentKind(tr("micrometer"), "mm", 0.001, 0.002, jaws=True),
    "dial": InstrumentKind(tr("dial indicator"), "mm", 0.01, 0.01),
    "balance": InstrumentKind(tr("balance"), "g", 0.01, 0.02, length=False),
    "thermometer": InstrumentKind(tr("thermometer"), "°C", 0.1, 0.5, length=False),
    "other": InstrumentKind(tr("other length instrument"), "mm", 0.01, 0.01, inside=True),
}
_FULL_SET = {"caliper": "bearings"}  # a full check needs no gauge blocks where bearing rings will do
_ZEROS, _ZEROS_AGAIN, _REPEATS, _SEATINGS, _OWN_ROWS = 5, 2, 3, 10, 3


@dataclass(frozen=True, slots=True)
class PlannedReading:
    """One reading to be taken: the name of its row, the reference and how well that is known (None: to be typed)."""

    name: str
    part: Part
    reference: float | None = None
    half_width: float | None = None


def part_words(part: Part) -> Words:
    """Return the name of a part of a check for people."""
    return {
        Part.ZERO: tr("zero"),
        Part.LENGTH: tr("reference"),
        Part.TIP: tr("at the tips"),
        Part.INSIDE: tr("inside"),
        Part.DEPTH: tr("depth rod"),
        Part.HAND: tr("re-seated"),
        Part.SECOND: tr("second person"),
    }[part]


def light_gap_words(gap: LightGap) -> Words:
    """Return what was seen between the jaws for people."""
    return {
        LightGap.NOT_LOOKED: tr("not looked"),
        LightGap.NONE: tr("no light"),
        LightGap.SEEN: tr("light seen"),
    }[gap]


def plan_words(plan: Plan) -> Words:
    """Return the name of a plan for people."""
    return {
        Plan.FULL: tr("Full check"),
        Plan.ZERO: tr("Zero only"),
        Plan.REFERENCES: tr("Gauge blocks"),
        Plan.HAND: tr("Hand only"),
        Plan.TWO_PEOPLE: tr("Two people"),
        Plan.OWN: tr("Own readings"),
    }[plan]


def parts_of(kind: str) -> tuple[Part, ...]:
    """Return what can be checked on an instrument of a kind."""
    known = kind_of(kind)
    has = {Part.INSIDE: known.inside, Part.DEPTH: known.depth, Part.TIP: known.length}
    return tuple(part for part in Part if has.get(part, True))


def plans_of(kind: str) -> tuple[Plan, ...]:
    """Return the plans for a kind; gauge blocks only where a full check is not made with them."""
    missing = {plan for plan in Plan if not plan_check(kind, plan)}
    return tuple(plan for plan in Plan if plan not in missing and (plan is not Plan.REFERENCES or kind in _FULL_SET))


def kind_of(kind: str) -> InstrumentKind:
    """Return a kind by its key; an unknown one is a length instrument of its own."""
    return KINDS.get(kind, KINDS["other"])


def usual_limit(kind: str, value: float) -> float:
    """Return the usual limit of error of a kind at a value, plus and minus; common practice, unverified.

    Raises:
        InputError: field `limit` where there is no usual limit.
    """
    for row in _table("instrument_limits"):
        if row["kind"] == kind and abs(value) <= float(row["up_to"]):
            return float(row["limit"])
    raise InputError(
        "limit",
        tr(
            "There is no usual limit of error of a {kind} at {value} {unit}; type the one its maker states.",
            kind=kind_of(kind).name,
            value=f"{value:g}",
            unit=kind_of(kind).unit,
        ),
    )


def plan_check(kind: str, plan: Plan) -> tuple[PlannedReading, ...]:
    """Return the readings of a check in the order in which they are taken; zero comes first and last."""
    zero = PlannedReading("zero", Part.ZERO, 0.0, 0.0)
    again = PlannedReading("zero again", Part.ZERO, 0.0, 0.0)
    hand = PlannedReading("re-seated", Part.HAND)
    second = PlannedReading("2nd person", Part.SECOND)
    zeros = () if kind == "thermometer" else (zero,) * _ZEROS
    last = (again,) * _ZEROS_AGAIN if zeros else ()
    return {
        Plan.FULL: (*zeros, *_references(kind, _FULL_SET.get(kind)), *last, *(hand,) * _SEATINGS),
        Plan.ZERO: zeros,
        Plan.REFERENCES: (*zeros, *_references(kind, "blocks"), *last),
        Plan.HAND: (hand,) * _SEATINGS,
        Plan.TWO_PEOPLE: (*(hand,) * _SEATINGS, *(second,) * _SEATINGS),
        Plan.OWN: (PlannedReading("own reference", Part.LENGTH),) * _OWN_ROWS,
    }[plan]


def _references(kind: str, wanted: str | None) -> tuple[PlannedReading, ...]:
    rows = [row for row in _table("instrument_references") if row["kind"] == kind and wanted in (None, row["set"])]
    return tuple(_planned(row) for row in rows for _ in range(_REPEATS))


def _planned(row: dict[str, str]) -> PlannedReading:
    return PlannedReading(row["name"], Part(row["part"]), float(row["nominal"]), float(row["half_width"]))


@cache
def _table(name: str) -> tuple[dict[str, str], ...]:
    text = (files("resources") / "catalogue" / f"{name}.csv").read_text(encoding="utf-8")
    return tuple(csv.DictReader(line for line in text.splitlines() if not line.startswith("#")))

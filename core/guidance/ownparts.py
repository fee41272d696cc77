"""The shop's own list of parts that changes are tried on: as typed in one line, as stored, and as named to people.

    20 x; lid 64 y; 30 x window; 8 x hole; 60 z

One part after the other, a semicolon between: its length (mm, or with in), its axis where it is not x, what it is where
it is not an outside length, and a name of any words besides.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from core.errors import InputError
from core.part_size.features import AXES, FeatureKind, axis_problem, kind_from_text, kind_words
from core.part_size.whose import USUAL_PARTS, Part
from core.quantity import length_from_text
from core.words import Words, tr

PARTS_KEY = "parts"  # of the list in the store
FIELD = "parts"
_KINDS = {
    "outside": FeatureKind.OUTSIDE,
    "window": FeatureKind.CLOSED_HOLE,
    "hole": FeatureKind.BORE,
    "height": FeatureKind.HEIGHT,
}


def parts_from(value: Mapping[str, Any] | None) -> tuple[Part, ...]:
    """Return the shop's own list of parts; the usual ones where there is none.

    Args:
        value: as the store holds it: `parts`, a list of `name`, `axis`, `kind`, `nominal_mm`.

    Raises:
        InputError: field `kind` for a kind that there is not.
    """
    rows = (value or {}).get("parts", [])
    found = tuple(
        Part(str(r["name"]), str(r["axis"]), kind_from_text(str(r["kind"])), float(r["nominal_mm"])) for r in rows
    )
    return found or USUAL_PARTS


def parts_value(parts: Sequence[Part]) -> dict[str, Any]:
    """Return the list as the store holds it."""
    rows = [{"name": p.name, "axis": p.axis, "kind": str(p.kind), "nominal_mm": p.nominal_mm} for p in parts]
    return {"parts": rows}


def parts_from_text(text: str) -> tuple[Part, ...]:
    """Read a list of parts from one line; an empty line is the usual list.

    Raises:
        InputError: field `parts`, naming the part that cannot be read.
    """
    return tuple(_part(one.strip()) for one in text.split(";") if one.strip()) or USUAL_PARTS


def _part(text: str) -> Part:
    kind, axis, length_mm, name = None, None, None, []
    for word in text.split():
        plain = word.lower()
        if plain in _KINDS and kind is None:
            kind = _KINDS[plain]
        elif plain in AXES and axis is None:
            axis = plain
        elif plain[0].isdigit() and length_mm is None:
            length_mm = length_from_text(word, FIELD).mm
        else:
            name.append(word)
    if not length_mm:
        told = tr("“{text}” has no length; write for example 64 y, 30 x window, 8 x hole or 60 z.", text=text)
        raise InputError(FIELD, told)
    axis = axis or ("z" if kind is FeatureKind.HEIGHT else "x")
    kind = kind or (FeatureKind.HEIGHT if axis == "z" else FeatureKind.OUTSIDE)
    if problem := axis_problem(kind, axis):
        raise InputError(FIELD, tr("“{text}”: {problem}", text=text, problem=problem))
    return Part(" ".join(name), axis, kind, length_mm)


def parts_text(parts: Sequence[Part]) -> str:
    """Return the list as it would be typed."""
    of_kind = {kind: word for word, kind in _KINDS.items()}
    said = []
    for part in parts:
        usual = part.kind is (FeatureKind.HEIGHT if part.axis == "z" else FeatureKind.OUTSIDE)
        kind = "" if usual else of_kind.get(part.kind, "")
        said.append(" ".join(word for word in (part.name, f"{part.nominal_mm:g}", part.axis, kind) if word))
    return "; ".join(said)


def part_words(part: Part) -> Words:
    """Return a part for people, its name first where it has one."""
    said = tr("{kind} {axis} {length:g} mm", kind=kind_words(part.kind), axis=part.axis.upper(), length=part.nominal_mm)
    return tr("{name}, {what}", name=part.name, what=said) if part.name else said

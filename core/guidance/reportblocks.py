"""What a report is made of: headings, sentences, tables, pictures by name, a line to sign; and the same as CSV.

The window lays blocks out as PDF and knows nothing of what they say.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass

from core.quantity import harmless_cell
from core.words import Words


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; the first of a report is its title."""

    text: Words | str


@dataclass(frozen=True, slots=True)
class Says:
    """A sentence or more; `mind` sets a caution apart."""

    text: Words | str
    mind: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """Headings and rows of texts; the columns from `numbers_from` on are numbers."""

    name: str
    headings: tuple[Words | str, ...]
    rows: tuple[tuple[Words | str, ...], ...]
    numbers_from: int = 1


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture that whoever lays out the report gives under this name; left out where none is given."""

    name: str


@dataclass(frozen=True, slots=True)
class Signature:
    """A line to sign and date on, with what is signed."""

    text: Words | str


Block = Heading | Says | Table | Picture | Signature


@dataclass(frozen=True, slots=True)
class Report:
    """A report: its blocks and the line at the foot of every page."""

    title: Words | str
    blocks: tuple[Block, ...]
    foot: Words | str


@dataclass(frozen=True, slots=True)
class Label:
    """A label on a machine, 62 mm by 40 mm, black only: its lines, the first the largest, and the text of the code."""

    lines: tuple[Words | str, ...]
    code: str


def csv_text(blocks: Sequence[Block]) -> str:
    """Return the tables of a report as CSV, each with its headings, an empty line between; decimal points."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    tables = [block for block in blocks if isinstance(block, Table)]
    for place, table in enumerate(tables):
        if place:
            out.write("\n")
        writer.writerow(["table", *map(harmless_cell, table.headings)])
        writer.writerows([[table.name, *map(harmless_cell, row)] for row in table.rows])
    return out.getvalue()

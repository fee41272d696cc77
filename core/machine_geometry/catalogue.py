"""The tables of drive parts that ship with the program: belts, screws, racks, tooth counts, motors, gear pairs.

Each table is a CSV file in `resources/catalogue` whose last column names its source. They are read once and never
change, so the subjects of this room may treat them as constants; nothing else here opens a file.
"""

from __future__ import annotations

import csv
from functools import cache
from importlib.resources import files

Row = dict[str, str]


@cache
def table(name: str) -> tuple[Row, ...]:
    """Return the rows of one table, for example `drive_belts`, by column name; lines that start with # are remarks."""
    text = (files("resources") / "catalogue" / f"{name}.csv").read_text(encoding="utf-8")
    return tuple(csv.DictReader(line for line in text.splitlines() if not line.startswith("#")))


@cache
def numbers(name: str, column: str) -> tuple[float, ...]:
    """Return the numbers of a column in the order of the table, each once, empty cells left out."""
    return tuple(dict.fromkeys(float(row[column]) for row in table(name) if row[column]))


@cache
def counts(name: str, column: str) -> tuple[int, ...]:
    """Return the whole numbers of a column, each once."""
    return tuple(int(number) for number in numbers(name, column))


@cache
def common(name: str, column: str) -> frozenset[float]:
    """Return those numbers of a column that are marked as often met."""
    return frozenset(float(row[column]) for row in table(name) if row[column] and row["common"] == "1")


@cache
def lookup(name: str, key: str, value: str) -> dict[str, float]:
    """Return the number in column `value` for each text in column `key`."""
    return {row[key]: float(row[value]) for row in table(name)}

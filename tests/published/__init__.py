"""Published numbers: one CSV a source, which its head names; read here, compared to all digits printed."""

from __future__ import annotations

import csv
from decimal import Decimal
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

HERE = Path(__file__).parent


def table(name: str, **where: str) -> list[dict[str, str]]:
    """Return the rows of a published table as text, those with the given cells only."""
    lines = (HERE / f"{name}.csv").read_text(encoding="utf-8").splitlines()
    rows = csv.DictReader(line for line in lines if not line.startswith("#"))
    return [row for row in rows if all(row[key] == value for key, value in where.items())]


def columns(name: str, *keys: str, **where: str) -> list[NDArray[np.float64] | None]:
    """Return columns of a published table as arrays, None for an empty one."""
    rows = table(name, **where)
    return [np.array([float(row[key]) for row in rows]) if all(row[key] for row in rows) else None for key in keys]


def printed(text: str, last_digit: float = 0.5) -> object:
    """Compare equal to any number that rounds to the printed text, within so many units of its last digit."""
    step = float(Decimal(1).scaleb(Decimal(text).as_tuple().exponent))
    return pytest.approx(float(text), rel=1e-12, abs=last_digit * step)

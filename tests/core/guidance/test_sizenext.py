"""The next reading in a sentence, and the row where it goes."""

import math

import numpy as np

from core.guidance.sizenext import GaugeRow, ask_next
from core.part_size.sizeerror import fit_size_error
from core.pieces.comb import plan_comb
from core.records.rows import Instrument

GAUGES = plan_comb("x").gauges


def rows(read, times=1):
    one = [GaugeRow(g.name, g.kind, g.axis, g.nominal_mm, i in read) for i, g in enumerate(GAUGES)]
    return [row for row in one for _ in range(times)]


def fit_of(read, sd=0.015, times=1):
    rng = np.random.default_rng(3)
    taken = [GAUGES[i] for i in read for _ in range(times)]
    L = np.array([g.nominal_mm for g in taken])
    readings = L + sd * rng.standard_normal(L.size)
    return fit_size_error(L, readings, [g.kind for g in taken], feature=[g.name for g in taken])


def test_the_row_and_what_it_takes_off():
    read = [0, 1, 2, 3, 5, 6, 7]
    asked = ask_next(fit_of(read), rows(read))
    assert asked.row in (4, 8, 9) and asked.says == f"Gauge {GAUGES[asked.row].name} tells lost motion X."
    read = [1, 2, 3, 4, 5, 6, 8]
    asked = ask_next(fit_of(read), rows(read))
    assert asked.row == 9
    assert "Gauge window right x takes the standard uncertainty of lost motion X from 0.0" in asked.says
    assert asked.says.endswith(" mm.")


def test_what_is_not_told_yet():
    asked = ask_next(fit_of([0]), rows([0]))
    assert "brings" in asked.says and asked.row != 0


def test_a_repeat_goes_into_the_last_row_of_its_gauge():
    read = list(range(10))
    asked = ask_next(fit_of(read, times=2), rows(read, 2))
    assert ", once more, takes the standard uncertainty" in asked.says and asked.row % 2 == 1


def test_the_scale_is_told_in_percent():
    read = [2, 3, 4, 7, 8, 9]
    noisy = fit_of(read, sd=0.02)
    asked = ask_next(noisy, rows(read))
    assert asked is not None and (" %." in asked.says) == ("scale" in asked.says)


def test_rows_that_cannot_be_read_are_passed_over():
    fit = fit_of(list(range(10)))
    odd = [
        GaugeRow("", "", "x", 10.0, False),
        GaugeRow("", "tooth", "z", 10.0, False),
        GaugeRow("", "tooth", "x", math.nan, False),
    ]
    assert ask_next(fit, odd) is None
    assert ask_next(fit, [*rows(range(10)), *odd]) is None
    nameless = [GaugeRow("", "tooth", "x", 10.0, False)]
    asked = ask_next(fit_of([0, 1, 2, 4, 5, 6, 8]), nameless, Instrument("Caliper 2", u_outside_zero_mm=0.001))
    assert asked is None or asked.row == 0

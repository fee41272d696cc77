"""Readings needed to see a scale error: our trade notes' table, an independent package, and what is refused."""

import math

import pytest
from statsmodels.stats.power import normal_power

from core.errors import InputError
from core.part_size.power import chance_to_see, readings_needed, shortest_length_mm

SDS = (0.01, 0.02, 0.03, 0.05)
NEEDED = {  # of our trade notes: readings that see 0.1 % with power 0.90; in pairs, and long against short
    10: ((11, 43, 95, 263), (43, 169, 379, 1051)),
    20: ((3, 11, 24, 66), (11, 43, 95, 263)),
    50: ((2, 2, 4, 11), (2, 7, 16, 43)),
    80: ((2, 2, 2, 5), (2, 3, 6, 17)),
    120: ((2, 2, 2, 2), (2, 2, 3, 8)),
    150: ((2, 2, 2, 2), (2, 2, 2, 5)),
}  # fmt: skip


@pytest.mark.parametrize("length", NEEDED)
def test_the_table_of_readings_needed(length):
    paired = tuple(readings_needed(0.001, length, sd) for sd in SDS)
    apart = tuple(readings_needed(0.001, length, sd, paired=False) for sd in SDS)
    assert (paired, apart) == NEEDED[length]


@pytest.mark.parametrize(("length", "sd"), [(10, 0.01), (10, 0.05), (20, 0.03), (50, 0.05)])
def test_readings_needed_have_the_power_that_an_independent_package_computes(length, sd):
    needed = readings_needed(0.001, length, sd)
    power = [normal_power(0.001 * length / sd, n, 0.05, sigma=1.0) for n in (needed - 1, needed)]
    assert power[0] < 0.90 <= power[1] + 1e-6


def test_the_chance_to_see_an_error_of_3_24_u_is_90_percent():
    """z(0.975) + z(0.90) = 1.960 + 1.2816 (normal table)."""
    assert chance_to_see(0.001, 0.001 / 3.2415) == pytest.approx(0.90, abs=1e-4)
    assert chance_to_see(1e-12, 0.001) == pytest.approx(0.05, abs=1e-6)


@pytest.mark.parametrize(("u", "length"), [(0.015, 30), (0.02, 40), (0.03, 60)])
def test_no_repeat_shows_a_tenth_of_a_percent_on_a_shorter_length(u, length):
    assert shortest_length_mm(0.001, u) == pytest.approx(length)


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: readings_needed(0.0, 100, 0.03), "scale_ratio"),
        (lambda: readings_needed(0.001, -1, 0.03), "length_mm"),
        (lambda: readings_needed(0.001, 100, math.inf), "sd_mm"),
        (lambda: readings_needed(0.001, 100, 0.03, power_ratio=1.0), "power_ratio"),
    ],
)
def test_what_cannot_be_is_refused(call, field):
    with pytest.raises(InputError, match="type what is above zero") as refused:
        call()
    assert refused.value.field == field


def test_a_chance_needs_an_uncertainty():
    with pytest.raises(InputError, match="0 cannot be; type what is above zero"):
        chance_to_see(0.001, 0.0)
    with pytest.raises(InputError, match="0 cannot be"):
        shortest_length_mm(0.0, 0.01)

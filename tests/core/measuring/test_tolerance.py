"""Tolerance tables row by row and at their limits; the decision rule against the published examples."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.measuring.tolerance import CLASSES, Conformity, decide, tolerance_mm, tolerance_range_mm
from tests.published import printed, table

GENERAL = [(klass, row) for klass in "fmcv" for row in table("tolerance_iso2768_1")]
GRADES = [(f"IT{n}", row) for n in range(5, 17) for row in table("tolerance_iso286_1")]


def cell_name(cell):
    return cell if isinstance(cell, str) else f"to {cell['up_to_mm']}"


@pytest.mark.parametrize(("klass", "row"), GENERAL, ids=cell_name)
def test_iso_2768_1(klass, row):
    over, up_to = float(row["over_mm"]), float(row["up_to_mm"])
    inside = [np.nextafter(over, math.inf), (over + up_to) / 2, up_to]
    if row[klass]:
        assert tolerance_mm(inside, klass).tolist() == [float(row[klass])] * 3
    else:
        for length in inside:
            with pytest.raises(InputError, match="has no tolerance"):
                tolerance_mm(length, klass)


@pytest.mark.parametrize(("klass", "row"), GRADES, ids=cell_name)
def test_iso_286_1(klass, row):
    over, up_to = float(row["over_mm"]), float(row["up_to_mm"])
    half_mm = float(row[klass]) / 2000
    assert tolerance_mm([np.nextafter(over, 1e9), (over + up_to) / 2, up_to], klass) == pytest.approx(
        half_mm, rel=1e-15
    )


def test_row_limits_belong_to_the_row_below():
    assert tolerance_mm([0.5, 3, 6, 30, 30.001, 120, 120.001], "m").tolist() == [0.1, 0.1, 0.1, 0.2, 0.3, 0.3, 0.5]
    assert 2000 * tolerance_mm(np.array([[18.0, 18.5], [30.0, 30.5]]), "IT7") == pytest.approx(
        np.array([[18, 21], [21, 25]])
    )
    assert [2000 * float(tolerance_mm(25, f"IT{n}")) for n in range(6, 12)] == pytest.approx([13, 21, 33, 52, 84, 130])


def test_grades_grow_tenfold_every_five_but_for_one_rounded_cell():
    lengths = [float(row["up_to_mm"]) for row in table("tolerance_iso286_1")]
    ratio = np.array([tolerance_mm(lengths, f"IT{n + 5}") / tolerance_mm(lengths, f"IT{n}") for n in range(6, 12)])
    exceptions = [(6 + i, lengths[j]) for i, j in np.argwhere(np.abs(ratio - 10) > 1e-9)]
    assert exceptions == [(6, 6.0)]  # IT11 over 3 up to 6 mm is 75, not 80


def test_every_class_has_a_name_and_a_range():
    assert list(CLASSES) == ["f", "m", "c", "v", *(f"IT{n}" for n in range(5, 17))]
    assert CLASSES["m"] == "ISO 2768-1 m, medium" and CLASSES["IT9"] == "ISO 286-1 IT9, half to either side"
    ranges = {klass: tolerance_range_mm(klass) for klass in CLASSES}
    assert (ranges["f"], ranges["m"], ranges["v"], ranges["IT5"]) == ((0.5, 2000), (0.5, 4000), (3, 4000), (0, 500))
    for klass, (lowest, highest) in ranges.items():
        assert np.all(tolerance_mm(np.linspace(lowest + 1e-9, highest, 500), klass) > 0)


@pytest.mark.parametrize(
    ("length", "klass", "field", "row", "words"),
    [
        (
            0.4,
            "m",
            "length_mm",
            None,
            "0.4 mm has no tolerance in ISO 2768-1 m, medium, which goes from 0.5 mm up to 4000 mm",
        ),
        ([10, 3.0], "v", "length_mm", 1, "3 mm has no tolerance in ISO 2768-1 v, very coarse, which goes over 3 mm"),
        (2000.5, "f", "length_mm", None, "up to 2000 mm; choose another class"),
        ([[1, 2], [501, 3]], "IT8", "length_mm", 2, "501 mm has no tolerance"),
        (0.0, "IT8", "length_mm", None, "over 0 mm up to 500 mm"),
        (-5.0, "IT8", "length_mm", None, "-5 mm has no tolerance"),
        (math.nan, "m", "length_mm", None, "nan mm has no tolerance"),
        (10, "IT4", "tolerance", None, "“IT4” is not a tolerance class; use one of f, m, c, v, IT5"),
        (10, "", "tolerance", None, "is not a tolerance class"),
    ],
)
def test_refusals(length, klass, field, row, words):
    with pytest.raises(InputError, match=words) as refused:
        tolerance_mm(length, klass)
    assert (refused.value.field, refused.value.row) == (field, row)


def test_the_range_of_an_unknown_class_is_refused():
    with pytest.raises(InputError, match="not a tolerance class") as refused:
        tolerance_range_mm("M")
    assert refused.value.field == "tolerance"


def test_jcgm_106_conformance_probability():
    """JCGM 106:2012 clause 7, one upper limit: y = -5.47, u = 0.05, T_U = -5.40."""
    decision = decide(-5.47, 0.05, -5.40)
    assert decision.probability == printed("0.92")
    assert decision.conformity is Conformity.NOT_PROVED


@pytest.mark.parametrize("row", table("tolerance_guard_bands"), ids=lambda row: row["rule"])
def test_guard_bands_and_their_risk(row):
    u, limit = 0.05, 1.0
    on_acceptance_limit = limit - float(row["w_in_U"]) * 2 * u
    decision = decide(on_acceptance_limit, u, limit)
    assert 1 - decision.probability <= float(row["risk_at_most"]) + 1e-12
    proved = float(row["w_in_U"]) >= 0.83  # ISO 14253-1: the band that suffices for 95 %
    assert (decision.conformity is Conformity.CONFORMING) == proved


@pytest.mark.parametrize(
    ("ratio_of_u", "conformity"),
    [
        (-1.66, Conformity.CONFORMING),
        (-1.64, Conformity.NOT_PROVED),
        (0.0, Conformity.NOT_PROVED),
        (1.64, Conformity.NOT_PROVED),
        (1.66, Conformity.NOT_CONFORMING),
    ],
)
def test_iso_14253_1_zones_of_one_limit(ratio_of_u, conformity):
    u = 0.03
    decision = decide(0.2 + ratio_of_u * u, u, 0.2)
    assert decision.conformity is conformity
    assert decision.guard_band == pytest.approx(1.6448536 * u)  # given rounded up as 1.65
    mirrored = decide(-0.2 - ratio_of_u * u, u, math.inf, lower=-0.2)
    assert (mirrored.conformity, mirrored.probability) == (conformity, pytest.approx(decision.probability))


@pytest.mark.parametrize(
    ("error", "u", "conformity"),
    [
        (0.00, 0.05, Conformity.CONFORMING),
        (0.00, 0.11, Conformity.NOT_PROVED),  # the zone is too narrow for this uncertainty
        (0.04, 0.05, Conformity.CONFORMING),
        (0.20, 0.03, Conformity.NOT_PROVED),
        (0.26, 0.03, Conformity.NOT_CONFORMING),
        (-0.26, 0.03, Conformity.NOT_CONFORMING),
        (0.00, 50.0, Conformity.NOT_PROVED),  # an instrument that sees nothing proves nothing
        (0.20, 0.00, Conformity.CONFORMING),
        (0.21, 0.00, Conformity.NOT_CONFORMING),
        (-0.20, 0.00, Conformity.CONFORMING),
    ],
)
def test_an_error_between_two_limits(error, u, conformity):
    assert decide(error, u, 0.2, lower=-0.2).conformity is conformity


def test_few_degrees_of_freedom_widen_the_guard_band():
    assert decide(0.1, 0.03, 0.2, dof=4).guard_band == pytest.approx(0.03 * 2.132, abs=2e-5)  # t, one-sided 95 %
    assert decide(0.14, 0.03, 0.2).conformity is Conformity.CONFORMING
    assert decide(0.14, 0.03, 0.2, dof=4).conformity is Conformity.NOT_PROVED


@given(value=st.floats(-1, 1), u=st.floats(1e-3, 1), dof=st.sampled_from([2.0, 4.5, 30.0, math.inf]))
def test_the_guard_band_and_the_probability_agree(value, u, dof):
    decision = decide(value, u, 0.3, dof)
    inside = value < 0.3 - decision.guard_band
    beyond = value > 0.3 + decision.guard_band
    assert (decision.probability >= 0.95) == inside or math.isclose(value, 0.3 - decision.guard_band, abs_tol=1e-9)
    assert (decision.probability < 0.05) == beyond or math.isclose(value, 0.3 + decision.guard_band, abs_tol=1e-9)


@pytest.mark.parametrize(
    ("arguments", "lower", "field", "words"),
    [
        ((0.1, -0.01, 0.2), -math.inf, "u", "without it nothing is decided"),
        ((0.1, math.nan, 0.2), -math.inf, "u", "without it nothing is decided"),
        ((0.1, 0.01, 0.2), 0.3, "limit", "lower limit 0.3 is above the upper limit 0.2"),
    ],
)
def test_undecidable(arguments, lower, field, words):
    with pytest.raises(InputError, match=words) as refused:
        decide(*arguments, lower=lower)
    assert refused.value.field == field

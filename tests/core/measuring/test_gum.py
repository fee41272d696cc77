"""Combination of components against the worked examples of JCGM 100:2008 and EA-4/02."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.measuring.gum import (
    Combined,
    Component,
    Coverage,
    Distribution,
    budget,
    combine,
    distribution_words,
    mean_of,
    standard_uncertainty,
    trapezoid_factor,
    type_b_dof,
    welch_satterthwaite,
)
from core.words import tr
from tests.published import columns, printed, table

# example, u_c, nu_eff, level, U as printed
BUDGETS = [
    ("GUM G.4.1", "1.03", "19.0", 0.95, "2.15"),
    ("EA-4/02 S2", "0.0293", None, 0.9545, "0.061"),
    ("EA-4/02 S4", "0.0000000364", None, 0.9545, "0.000000073"),
    ("EA-4/02 S12", "0.00091", None, 0.9545, "0.002"),
]


@pytest.mark.parametrize(("example", "u_c", "nu_eff", "level", "U"), BUDGETS, ids=[row[0] for row in BUDGETS])
def test_published_budgets(example, u_c, nu_eff, level, U):
    combined = combine(*columns("gum_budgets", "contribution", "dof", example=example))
    assert combined.u == printed(u_c)
    assert nu_eff is None or combined.dof == printed(nu_eff)
    assert combined.expanded(level) == printed(U)


def test_gum_h1_end_gauge():
    """The GUM rounds u_c to 32 nm and truncates nu_eff to 16 before it multiplies (H.1.6); we do neither."""
    combined = combine(*columns("gum_budgets", "contribution", "dof", example="GUM H.1"))
    assert (combined.u, math.floor(combined.dof)) == (printed("32"), 16)
    assert Combined(round(combined.u), math.floor(combined.dof)).expanded(0.99) == printed("93")
    assert combined.expanded(0.99) == pytest.approx(93, rel=0.02)


@pytest.mark.parametrize(("example", "k"), [("EA-4/02 S2", "2.08"), ("EA-4/02 S12", "2.28")])
def test_published_coverage_factors(example, k):
    """EA-4/02 S2 prints k = 2; by Welch-Satterthwaite it is 2.08."""
    combined = combine(*columns("gum_budgets", "contribution", "dof", example=example))
    truncated = combine(combined.u, math.floor(combined.dof))  # EA-4/02 annex E takes the next lower integer
    assert truncated.expanded(0.9545) / truncated.u == printed(k)


@pytest.mark.parametrize(
    ("contributions", "dofs", "expected"),
    [
        ([0.3], [7], 7),
        ([0.3, -0.3], [7, 7], 14),
        ([0.3, 0.0], [7, 1], 7),
        ([0.3, 0.4], math.inf, math.inf),
        ([0.0, 0.0], [3, 3], math.inf),
        ([1e-200, 1e-200], 5, 10),
        ([1e200, 1e200], 5, 10),
        ([1.0, 1e-120], [math.inf, 3], math.inf),
    ],
)
def test_effective_degrees_of_freedom(contributions, dofs, expected):
    assert welch_satterthwaite(contributions, dofs) == pytest.approx(expected)


@given(
    u=st.lists(st.floats(1e-3, 1e3), min_size=1, max_size=6),
    nu=st.lists(st.integers(1, 100), min_size=6, max_size=6),
    unit=st.sampled_from([1e-9, 1e-3, 25.4, 1e6]),
)
def test_bounds_and_units(u, nu, unit):
    dofs = nu[: len(u)]
    combined = combine(u, dofs)
    assert combined.u == pytest.approx(math.sqrt(sum(c * c for c in u)))
    assert min(dofs) * (1 - 1e-9) <= combined.dof <= sum(dofs) * (1 + 1e-9)  # JCGM 100 G.4.1
    scaled = combine(np.array(u) * unit, dofs)
    assert (scaled.u / unit, scaled.dof) == pytest.approx((combined.u, combined.dof))


@pytest.mark.parametrize(
    ("contributions", "dofs", "field", "words"),
    [
        ([], 5, "contributions", "missing or not finite"),
        ([0.1, math.nan], 5, "contributions", "missing or not finite"),
        ([0.1, 0.2], [5], "dofs", "differ in number"),
        ([0.1, 0.2], [5, 0], "dofs", "above zero"),
        ([0.1, 0.2], math.nan, "dofs", "above zero"),
    ],
)
def test_refusals(contributions, dofs, field, words):
    with pytest.raises(InputError, match=words) as refused:
        combine(contributions, dofs)
    assert refused.value.field == field


# Budgets

EA_LEVEL = 0.9545  # k = 2 for a normal distribution
RECTANGLE, NORMAL = Distribution.RECTANGLE, Distribution.NORMAL


def components(example, exact=False):
    """Return the components of a published budget, u as printed or from the half-width."""
    found = []
    for row in table("gum_components", example=example):
        distribution = Distribution(row["distribution"])
        u = standard_uncertainty(float(row["half_width"]), distribution) if exact else float(row["u"])
        found.append(Component(tr("component"), u, float(row["sensitivity"]), distribution, float(row["dof"])))
    return found


@pytest.mark.parametrize(
    ("example", "level", "u_c", "k", "U", "coverage"),
    [
        ("S2", EA_LEVEL, "0.0293", None, "0.061", "student"),
        ("S4", EA_LEVEL, "0.0000000364", "2.00", "0.000000073", "student"),
        ("S9", 0.95, "0.030", "1.65", "0.05", "rectangle"),
        ("S10", 0.95, "33", None, "60", "trapezoid"),
        ("S12", EA_LEVEL, "0.00091", None, "0.002", "student"),
    ],
)
def test_budgets_of_ea_4_02(example, level, u_c, k, U, coverage):
    found = budget(components(example), level)
    assert found.u == printed(u_c)
    assert k is None or found.k == printed(k)
    assert printed(U, 5 if U == "60" else 0.5) == found.U  # 60 um is printed as 0.06 mm
    assert found.coverage == coverage
    assert sum(found.shares) == pytest.approx(1.0)


def test_the_vernier_caliper_of_ea_4_02_s10_is_a_trapezoid():
    """beta = 0.33 and k = 1.83 follow from the half-widths 50 and 25 um, not from their rounded u of 29 and 15."""
    found = budget(components("S10", exact=True))
    assert (found.k, found.coverage) == (printed("1.83"), Coverage.TRAPEZOID)
    assert found.k == pytest.approx(trapezoid_factor(50, 25))
    assert printed("0.06") == found.U / 1000
    assert [round(component.contribution) for component in found.components] == [0, 2, 14, 29]


@pytest.mark.parametrize(
    ("first", "second", "k"),
    [
        (1.0, 0.0, 0.95 * math.sqrt(3.0)),
        (0.0, 2.0, 0.95 * math.sqrt(3.0)),
        (1.0, 1.0, (1.0 - math.sqrt(0.05)) * math.sqrt(6.0)),  # a triangle
        (50.0, 25.0, 1.834),
    ],
)
def test_trapezoid_factors(first, second, k):
    assert trapezoid_factor(first, second) == pytest.approx(k, abs=5e-4)


@given(second=st.floats(0.0, 1.0), level=st.floats(0.5, 0.999))
def test_trapezoid_factor_encloses_the_level(second, level):
    """Against the distribution itself: the share of two added rectangles within plus and minus k u."""
    reach = trapezoid_factor(1.0, second, level) * math.hypot(1.0, second) / math.sqrt(3.0)
    x = (np.arange(20_000) + 0.5) / 10_000 - 1.0  # midpoints of the first rectangle
    low, high = np.clip([-reach - x, reach - x], -second, second)
    inside = (high - low) / (2 * second) if second > 1e-3 else np.abs(x) <= reach
    assert np.mean(inside) == pytest.approx(level, abs=2e-3)


def test_no_rectangle_dominates_where_a_normal_or_nothing_does():
    mixed = [Component(tr("a"), 1.0, 1.0, RECTANGLE), Component(tr("b"), 1.0, 1.0, RECTANGLE), Component(tr("c"), 0.9)]
    assert budget(mixed).coverage is Coverage.STUDENT
    assert budget([Component(tr("a"), 0.0, 1.0, RECTANGLE)]).coverage is Coverage.STUDENT
    assert budget([Component(tr("a"), 0.0)]).shares == (0.0,)
    assert budget([Component(tr("a"), 2.0, -3.0), *mixed[:1]]).components[0].contribution == 6.0


def test_gum_h1_with_second_order_terms():
    """Two products about zero raise u_c from 32 to 34 nm (H.1.7): lengths in nm, coefficients per degree Celsius."""
    length = 50_000_623
    u, dof = columns("gum_budgets", "contribution", "dof", example="GUM H.1")
    first_order = [Component(tr("first order"), c, 1.0, NORMAL, nu) for c, nu in zip(u, dof, strict=True)]
    second_order = [
        Component(tr("alpha_s with the difference of temperatures"), 1.2e-6 * 0.029, length),
        Component(tr("difference of alpha with the temperature"), 0.58e-6 * 0.41, length),
    ]
    assert budget(first_order).u == printed("32")
    assert [round(c.contribution, 1) for c in second_order] == [1.7, 11.9]
    assert budget([*first_order, *second_order]).u == printed("34")


def test_gum_4_4_readings_rectangle_and_triangle():
    """JCGM 100:2008 4.4.3, 4.4.5 and 4.4.6."""
    (t,) = columns("gum_temperatures", "t_c")
    mean = mean_of(t)
    assert (mean.value, mean.sd, mean.u, mean.dof) == (printed("100.145"), printed("1.489"), printed("0.333"), 19)
    assert standard_uncertainty(4.0, RECTANGLE) == printed("2.3")
    assert standard_uncertainty(4.0, Distribution.TRIANGLE) == printed("1.6")


@pytest.mark.parametrize(
    ("half_width", "distribution", "given", "u"),
    [
        (1.0, Distribution.U_SHAPED, {}, 1 / math.sqrt(2)),
        (2.0, NORMAL, {"level": EA_LEVEL}, 1.0),
        (2.45, Distribution.STUDENT, {"dof": 6}, 1.0),  # JCGM 100:2008 table G.2
        (0.0, RECTANGLE, {}, 0.0),
    ],
)
def test_half_widths(half_width, distribution, given, u):
    assert standard_uncertainty(half_width, distribution, **given) == pytest.approx(u, rel=2e-3)


@pytest.mark.parametrize(("relative_u", "dof"), [(0.25, 8), (0.5, 2), (0.0, math.inf)])
def test_type_b_degrees_of_freedom(relative_u, dof):
    """JCGM 100:2008 G.4.2: 25 % gives 8."""
    assert type_b_dof(relative_u) == dof


def test_every_distribution_has_its_name():
    assert len({distribution_words(distribution) for distribution in Distribution}) == len(Distribution)


@pytest.mark.parametrize(
    ("call", "field", "words"),
    [
        (lambda: standard_uncertainty(-1.0, RECTANGLE), "half_width", "zero or more"),
        (lambda: standard_uncertainty(math.nan, NORMAL), "half_width", "zero or more"),
        (lambda: type_b_dof(-0.1), "relative_u", "zero or more"),
        (lambda: type_b_dof(math.nan), "relative_u", "zero or more"),
        (lambda: mean_of([1.0]), "readings", "does not scatter"),
        (lambda: mean_of([1.0, math.inf]), "readings", "does not scatter"),
        (lambda: trapezoid_factor(-1.0, 2.0), "first", "above zero"),
        (lambda: trapezoid_factor(0.0, 0.0), "first", "above zero"),
        (lambda: budget([]), "contributions", "missing"),
    ],
)
def test_refusals_of_budgets(call, field, words):
    with pytest.raises(InputError, match=words) as refused:
        call()
    assert refused.value.field == field


@pytest.mark.parametrize("dof", [0.0, -1.0, math.nan])
def test_degrees_of_freedom_are_above_zero(dof):
    with pytest.raises(InputError, match="Degrees of freedom are above zero"):
        standard_uncertainty(1.0, Distribution.STUDENT, dof=dof)

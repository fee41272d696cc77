"""Combination of components against the worked examples of JCGM 100:2008 and EA-4/02."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.measuring.gum import Combined, combine, welch_satterthwaite
from tests.published import columns, printed

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

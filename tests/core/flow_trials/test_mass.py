"""Flow factor by weighing: exact identities, the product rule, planted truth, every refusal."""

import math
from dataclasses import replace

import numpy as np
import pytest

from core.errors import InputError
from core.flow_trials.bead import Bead
from core.flow_trials.conditions import PrintConditions
from core.flow_trials.mass import Commanded, commanded_by_length, measure_mass
from core.flow_trials.plastic import Density, MassPerLength
from tests.published import printed

HERE = PrintConditions(Bead(0.45, 0.20), 0.4, 210.0, 4.0, 0.97, 240.0)
PLA = Density(1.24)
PATH = Commanded(5000.0)  # mm³ with the factor in force: 6.2 g


def test_the_commanded_mass_asks_for_no_change():
    found = measure_mass([6.2, 6.2], HERE, PATH, PLA)
    assert found.expected_g == pytest.approx(6.2)
    assert found.flow.value == pytest.approx(0.97)
    assert found.flow.name == "flow_ratio_mass"
    assert found.questions == ()


def test_five_percent_too_heavy_asks_for_the_factor_over_1_05():
    found = measure_mass([6.51, 6.51], HERE, PATH, PLA)
    assert found.flow.value == pytest.approx(0.97 / 1.05)
    assert found.reading_ratio == pytest.approx([0.97 / 1.05] * 2)


def test_the_factor_in_force_is_in_the_path_or_not():
    """The same piece: counted with the factor, 0.97 of the volume at factor 1."""
    at_one = Commanded(5000.0 / 0.97, with_factor=False)
    assert measure_mass([6.3], HERE, at_one, PLA).flow.value == pytest.approx(
        measure_mass([6.3], HERE, PATH, PLA).flow.value
    )
    assert at_one.target_mm3(0.97) == pytest.approx(PATH.target_mm3(0.97))


def test_the_volume_of_a_path_is_its_filament():
    assert commanded_by_length(2000.0, 1.75).volume_mm3 == pytest.approx(2000 * math.pi * 1.75**2 / 4)
    assert commanded_by_length(2000.0, 1.70).volume_mm3 / commanded_by_length(2000.0, 1.75).volume_mm3 == printed(
        "0.9437"
    )


def test_by_mass_per_length_the_diameter_does_not_count():
    """m/lambda is the filament truly in the piece: k = k sum(e)/ (m/lambda), whatever the diameter."""
    for diameter in (1.70, 1.75):
        path = commanded_by_length(2000.0, diameter)
        found = measure_mass([6.0], HERE, path, MassPerLength(2.98, diameter))
        assert found.flow.value == pytest.approx(0.97 * 2000 / (6000 / 2.98))
    assert MassPerLength(2.98, 1.75).g_mm3 == pytest.approx(Density(1.239).g_mm3, rel=1e-3)


def test_density_and_mass_per_length_of_one_filament_agree():
    lam = 1.24 * math.pi * 1.75**2 / 4
    path = commanded_by_length(2000.0, 1.75)
    by_length = measure_mass([6.0], HERE, path, MassPerLength(lam, 1.75)).flow.value
    assert by_length == pytest.approx(measure_mass([6.0], HERE, path, PLA).flow.value)


def test_skirt_and_purge_are_weighed_along():
    found = measure_mass([6.0, 6.0], HERE, PATH, PLA, rest_g=0.2)
    assert found.flow.value == pytest.approx(0.97)
    assert found.mass_g == pytest.approx([6.2, 6.2])


def test_relative_uncertainties_add_in_squares():
    """JCGM 100:2008 5.1.6: 0.3 % of a 0.015 g balance at 5 g, 0.5 % of the density: 0.6 %."""
    found = measure_mass([5.0], HERE, Commanded(5000 / 1.24), PLA)
    assert found.flow.u / found.flow.value == pytest.approx(math.hypot(0.003, 0.005))
    assert math.isinf(found.flow.dof)
    three = [6.1, 6.2, 6.3]
    found = measure_mass(three, HERE, PATH, PLA)
    random = np.std(three, ddof=1) / math.sqrt(3) / 6.2
    assert found.flow.u / found.flow.value == pytest.approx(math.hypot(random, 0.015 / 6.2, 0.005))
    assert 2 < found.flow.dof < math.inf


def test_intervals_cover_a_planted_factor():
    rng, hits = np.random.default_rng(12), 0
    for _ in range(2000):
        right_k = rng.uniform(0.93, 1.05)
        density = 1.24 * (1 + 0.005 * rng.standard_normal())
        piece = 5000 * density / 1000 * HERE.in_force_ratio / right_k
        mass = piece * (1 + 0.006 * rng.standard_normal(3)) + rng.normal(0, 0.015)
        found = measure_mass(mass, HERE, PATH, PLA)
        hits += abs(found.flow.value - right_k) <= found.flow.U
    assert 0.93 < hits / 2000 < 0.97


def test_questions():
    asks = measure_mass([1.0], HERE, Commanded(1000 / 1.24), PLA).questions
    assert "The balance tells 1 g to 1.5 % only: print at least 2 g" in asks[0]
    assert "One piece" in asks[1]
    kitchen = measure_mass([6.2, 6.2], HERE, PATH, PLA, u_balance_g=0.15).questions
    assert "at least 15 g" in kitchen[0]


def test_by_mass_per_length_the_filament_truly_in_a_piece_is_told():
    """6.0 g of 2.98 g/m are 2.0134 m; of 2 m commanded 100.67 %, known to hypot(0.015/6, 0.3 %) by 1.96."""
    (asks,) = measure_mass([6.0, 6.0], HERE, commanded_by_length(2000.0, 1.75), MassPerLength(2.98, 1.75)).questions
    assert "2.013 ± 0.015 m of filament are in a piece, 100.67 ± 0.77 % of what the path commands" in asks
    assert "diameter set wrong stays hidden" in asks


@pytest.mark.parametrize(
    ("mass", "more", "field", "row", "says"),
    [
        ([3.224, 3.224], {}, "mass_g", None, "Mass 0.52 of expected: a hollow part or one with infill?"),
        ([12.4], {}, "mass_g", None, "Mass 2.00 of expected: several pieces"),
        ([6.2, 0.62, 6.2], {}, "mass_g", 1, "0.62 g beside 6.2 g: decimal mark"),
        ([6.2, -1.0], {}, "mass_g", 1, "cannot be"),
        ([math.nan], {}, "mass_g", 0, "cannot be"),
        ([], {}, "mass_g", None, "Weigh a piece first"),
        ([6.2], {"u_balance_g": 0.0}, "u_balance_g", None, "above 0 g"),
        ([6.2], {"rest_g": -0.1}, "rest_g", None, "Skirt and purge"),
    ],
)
def test_refusals(mass, more, field, row, says):
    with pytest.raises(InputError) as refused:
        measure_mass(mass, HERE, PATH, PLA, **more)
    assert (refused.value.field, refused.value.row) == (field, row)
    assert says in refused.value.message


@pytest.mark.parametrize(
    ("make", "field", "says"),
    [
        (lambda: Commanded(0.0), "volume_mm3", "cannot be"),
        (lambda: commanded_by_length(0.0, 1.75), "path_filament_mm", "add up the lengths"),
        (lambda: commanded_by_length(10.0, 17500.0), "filament_mm", "diameter"),
        (lambda: replace(HERE, in_force_ratio=97.0), "in_force_ratio", "type 1"),
    ],
)
def test_entries_that_cannot_be_are_refused(make, field, says):
    with pytest.raises(InputError) as refused:
        make()
    assert refused.value.field == field
    assert says in refused.value.message

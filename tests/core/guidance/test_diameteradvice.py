"""The verdict on a filament: planted strands, the way that counts, contradictions, and what is asked."""

import math

import pytest

from core.errors import InputError
from core.guidance.diameteradvice import DiameterReadings, KnownDensity, judge_diameter
from core.guidance.verdict import Setting
from core.measuring.gauge import GaugeKind
from core.quantity import Estimate
from core.records.rows import Instrument

MICROMETER, CALIPER = GaugeKind.MICROMETER, GaugeKind.CALIPER
TYPICAL = KnownDensity(Estimate("density", 1.24, 0.017, math.inf, "g/cm3"))
KEPT = KnownDensity(Estimate("density", 1.24, 0.004, math.inf, "g/cm3"), trial_id=7)
WOBBLE = (0.002, -0.001, 0.0, 0.001, -0.002, 0.0, 0.001, -0.001, 0.002, -0.002)


def pairs(d, oval=0.0, gauge=MICROMETER, in_force=1.75, **more):
    first = tuple(d + oval / 2 + w for w in WOBBLE)
    second = tuple(d - oval / 2 + w for w in WOBBLE)
    return DiameterReadings(1.75, in_force, gauge, first, second, **more)


def weighed(d, density=1.24):
    return {"mass_g": (density * math.pi * d**2 / 4,), "length_mm": (1000.0,)}


def settings(judgement):
    return [advice.setting for advice in judgement.advice]


def test_thin_filament_by_micrometer_is_set():
    judged = judge_diameter(pairs(1.70))
    assert settings(judged) == [Setting.FILAMENT_DIAMETER]
    assert judged.new_mm == pytest.approx(1.70, abs=0.0005)
    assert judged.advice[0].amount == judged.new_mm
    assert "94.37 ± 0.66 %" in judged.advice[0].because  # 1.70 for 1.75 is 0.9437 of the area
    assert [e.name for e in judged.estimates()] == ["diameter", "area_ratio", "ovality", "diameter_sd"]
    assert judged.method == "diameter 1"
    assert judged.used == ()


def test_thin_filament_by_caliper_is_not_set_from_it():
    judged = judge_diameter(pairs(1.70, gauge=CALIPER))
    assert settings(judged) == [Setting.UNDECIDED]
    assert "micrometer" in judged.advice[0].action
    assert judged.new_mm is None


@pytest.mark.parametrize("d", [1.75, 1.735, 1.768])
def test_near_the_nominal_it_is_left(d):
    judged = judge_diameter(pairs(d))
    assert settings(judged) == [Setting.LEAVE]
    assert judged.new_mm == 1.75


def test_a_coarse_gauge_leaves_what_it_cannot_tell():
    coarse = Instrument("C3", kind="caliper", u_outside_zero_mm=0.02)
    judged = judge_diameter(pairs(1.72, gauge=CALIPER), coarse)
    assert settings(judged) == [Setting.LEAVE]
    assert "not told from it" in judged.advice[0].because


def test_a_diameter_left_from_another_spool_goes_back_to_the_nominal():
    judged = judge_diameter(pairs(1.755, in_force=1.70))
    assert settings(judged) == [Setting.FILAMENT_DIAMETER]
    assert judged.new_mm == 1.75


def test_oval_filament_is_named_before_the_diameter():
    assert settings(judge_diameter(pairs(1.75, oval=0.06))) == [Setting.FILAMENT_LOT, Setting.LEAVE]
    worse = judge_diameter(pairs(1.74, oval=0.12))
    assert "Return it" in worse.advice[0].action
    assert "6.7 %" in judge_diameter(DiameterReadings(1.75, 1.75, CALIPER, (1.80,) * 2, (1.68,) * 2)).advice[0].because


def test_uneven_filament_is_not_for_tolerance_work():
    first = (1.70, 1.76, 1.80, 1.74, 1.71, 1.79)
    judged = judge_diameter(DiameterReadings(1.75, 1.75, MICROMETER, first, first))
    assert settings(judged)[0] is Setting.FILAMENT_LOT
    assert "Not for tolerance work" in judged.advice[0].action


def test_equal_readings_are_questioned():
    judged = judge_diameter(DiameterReadings(1.75, 1.75, CALIPER, (1.75,) * 5, (1.75,) * 5))
    assert settings(judged) == [Setting.UNDECIDED]
    assert "10 equal readings" in judged.advice[0].because
    assert judged.new_mm is None


def test_mass_alone_sets_the_diameter_with_a_weighed_density():
    judged = judge_diameter(DiameterReadings(1.75, 1.75, **weighed(1.70)), None, KEPT)
    assert settings(judged) == [Setting.FILAMENT_DIAMETER]
    assert judged.used == (7,)
    assert [e.name for e in judged.estimates()] == ["diameter", "area_ratio", "mass_per_length"]
    assert not judged.mind
    assert judged.pairs is None


def test_mass_with_the_usual_density_says_that_it_is_unverified():
    judged = judge_diameter(DiameterReadings(1.75, 1.75, **weighed(1.75)), None, TYPICAL)
    assert settings(judged) == [Setting.LEAVE]
    assert any("unverified" in says for says in judged.mind)
    assert judged.used == ()


def test_mass_without_a_density_tells_no_diameter():
    judged = judge_diameter(DiameterReadings(1.75, 1.75, **weighed(1.75)))
    assert settings(judged) == [Setting.UNDECIDED]
    assert any("Without the density" in says for says in judged.mind)
    assert [e.name for e in judged.estimates()] == ["mass_per_length"]
    assert judged.new_mm is None


def test_density_alone_is_kept_and_tells_no_diameter():
    judged = judge_diameter(DiameterReadings(1.75, 1.75, air_g=(6.0,), water_g=(1.17,)), None, TYPICAL)
    assert [e.name for e in judged.estimates()] == ["density"]
    assert settings(judged) == [Setting.UNDECIDED]
    assert not judged.mind


def test_density_measured_here_outranks_the_known_one():
    readings = DiameterReadings(1.75, 1.75, **weighed(1.75), air_g=(6.0,), water_g=(1.17,))
    judged = judge_diameter(readings, None, KEPT)
    assert judged.used == ()
    assert judged.density.value == pytest.approx(1.24, abs=0.001)


def test_the_way_with_the_smallest_uncertainty_counts():
    judged = judge_diameter(pairs(1.75, gauge=CALIPER, **weighed(1.745)), None, KEPT)
    assert judged.best.name == "mass"
    assert [(way.name, way.measured) for way in judged.ways] == [
        ("caliper", True), ("micrometer", False), ("mass", True)]


def test_a_strand_with_three_lobes_is_noticed():
    """It has one width all round; its area is less than that of the circle of this width."""
    judged = judge_diameter(pairs(1.75, **weighed(1.70)), None, KEPT)
    assert settings(judged) == [Setting.UNDECIDED]
    assert "three lobes" in judged.advice[0].because
    assert judged.new_mm is None


def test_checked_instrument_counts():
    checked = Instrument("C2", kind="caliper", u_outside_zero_mm=0.004, resolution_mm=0.001)
    judged = judge_diameter(pairs(1.70, gauge=CALIPER), checked)
    assert settings(judged) == [Setting.FILAMENT_DIAMETER]
    assert not any("A usual caliper" in says for says in judged.mind)
    assert any("A usual caliper" in says for says in judge_diameter(pairs(1.70, gauge=CALIPER)).mind)


def test_an_unfinished_pair_waits_beside_a_mass_and_is_refused_alone():
    single = DiameterReadings(1.75, 1.75, MICROMETER, (1.75,), (None,), **weighed(1.75))
    assert judge_diameter(single, None, KEPT).pairs is None
    with pytest.raises(InputError, match="one way only"):
        judge_diameter(DiameterReadings(1.75, 1.75, MICROMETER, (1.75,), (None,)))
    with pytest.raises(InputError, match="decimal mark"):
        judge_diameter(DiameterReadings(1.75, 1.75, MICROMETER, (17.5,), (None,), **weighed(1.75)), None, KEPT)


def test_no_reading_at_all():
    with pytest.raises(InputError) as caught:
        judge_diameter(DiameterReadings(1.75, 1.75))
    assert caught.value.field == "readings"


def test_a_density_far_from_the_known_one_is_questioned():
    """6.2 g in air and -1.18 g in water: 0.84 g/cm3, a sign typed wrong; 1.18 is 1.233 and passes."""
    wrong = DiameterReadings(1.75, 1.75, air_g=(6.2,), water_g=(-1.18,))
    assert "far from the usual 1.240" in " ".join(judge_diameter(wrong, None, TYPICAL).mind)
    assert "of trial 7: bubbles" in " ".join(judge_diameter(wrong, None, KEPT).mind)
    right = DiameterReadings(1.75, 1.75, air_g=(6.2,), water_g=(1.18,))
    assert judge_diameter(right, None, TYPICAL).mind == ()

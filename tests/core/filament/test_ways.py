"""Which way to the cross-section is good enough: computed from the uncertainties."""

import math

import pytest

from core.filament.ways import WayName, plan_by_gauge, plan_by_mass, way_of, way_words, ways_words
from core.measuring.gauge import GaugeKind, gauge_of
from core.quantity import Estimate

WEIGHED = Estimate("density", 1.24, 0.0062, math.inf, "g/cm3")  # half a percent


def test_a_usual_caliper_is_not_good_enough_and_a_micrometer_is():
    caliper = plan_by_gauge(gauge_of(GaugeKind.CALIPER), 1.75)
    micrometer = plan_by_gauge(gauge_of(GaugeKind.MICROMETER), 1.75)
    assert caliper.area.u == pytest.approx(0.0137, abs=5e-5)  # 2 * 0.012 / 1.75
    assert micrometer.area.u == pytest.approx(0.0034, abs=5e-5)
    assert (caliper.enough, micrometer.enough) == (False, True)
    assert not caliper.measured


def test_a_balance_is_good_enough_with_a_density_that_was_weighed():
    by_mass = plan_by_mass(WEIGHED, 1.75, 0.01, 0.5)
    assert by_mass.area.u == pytest.approx(math.hypot(0.005, 0.01 / 2.98, 0.0005), abs=2e-5)
    assert by_mass.enough
    assert not plan_by_mass(WEIGHED, 1.75, 0.1, 0.5).enough  # a kitchen balance


def test_names():
    assert [way_words(name) for name in WayName] == ["by caliper", "by micrometer", "by balance"]


def test_words_name_the_way_that_was_used_and_what_it_takes():
    caliper = plan_by_gauge(gauge_of(GaugeKind.CALIPER), 1.75)
    micrometer = plan_by_gauge(gauge_of(GaugeKind.MICROMETER), 1.75)
    used = way_of(WayName.MASS, Estimate("diameter", 1.75, 0.005, math.inf, "mm"), 1.75, measured=True)
    says = ways_words((caliper, micrometer, used), 1.75)
    assert "by caliper to ± 2.7 %, by micrometer to ± 0.67 %, by balance to ± 1.1 % (used)" in says
    assert "it takes ± 2.3 %" in says

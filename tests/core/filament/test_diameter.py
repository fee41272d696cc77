"""Pairs of diameters: exact areas, the product rule of the GUM, planted ellipses, and every refusal."""

import math

import numpy as np
import pytest
from shapely import affinity
from shapely.geometry import Point

from core.errors import InputError
from core.filament.diameter import area_ratio, check_sort, equal_readings, measure_diameter
from core.measuring.gauge import GaugeKind, gauge_of, gauge_words
from core.quantity import Estimate
from core.records.rows import Instrument

CALIPER, MICROMETER = gauge_of(GaugeKind.CALIPER), gauge_of(GaugeKind.MICROMETER)


def measured(first, second, nominal=1.75, gauge=MICROMETER):
    return measure_diameter(first, second, nominal, gauge)


def refused(first, second, nominal=1.75):
    with pytest.raises(InputError) as caught:
        measured(first, second, nominal)
    return caught.value


def test_thinner_filament_has_less_area():
    """1.70 for 1.75 mm: an exact identity, (34/35)^2 = 0.94367."""
    found = measured([1.70, 1.70], [1.70, 1.70])
    assert found.area.value == pytest.approx((34 / 35) ** 2, rel=1e-12)
    assert f"{found.area.value:.4f}" == "0.9437"


def test_oval_filament_keeps_its_area_but_one_way_readings_miss_it():
    """1.80 by 1.68 mm: the mean of the widths gives the area to 0.1 %, the larger width alone 6.7 % too little flow."""
    found = measured([1.80] * 5, [1.68] * 5)
    mean_area = ((1.80 + 1.68) / 2 / 1.75) ** 2
    assert found.area.value / mean_area == pytest.approx(1.0, abs=0.0013)
    assert found.one_way_ratio == pytest.approx(1.68 / 1.80, rel=1e-12)
    assert 100 * (1 - found.one_way_ratio) == pytest.approx(6.7, abs=0.05)
    assert found.ovality.value == pytest.approx(0.12)
    assert list(found.oval_mm) == pytest.approx([0.12] * 5)


@pytest.mark.parametrize(("first", "second"), [(1.80, 1.68), (1.75, 1.75), (2.9, 2.8), (1.9, 1.6)])
def test_area_is_that_of_the_ellipse(first, second):
    """An independent referee for plane areas: a circle of many corners, stretched to the two widths."""
    nominal = 1.75 if first < 2 else 2.85
    ellipse = affinity.scale(Point(0, 0).buffer(1.0, quad_segs=4096), first / 2, second / 2)
    found = measured([first, first], [second, second], nominal)
    assert math.pi / 4 * found.diameter.value**2 == pytest.approx(ellipse.area, rel=1e-6)


def test_relative_uncertainty_of_the_area_is_twice_that_of_the_diameter():
    """JCGM 100:2008 5.1.6 for d to the power of 2: u(A)/A = 2 u(d)/d."""
    ratio = area_ratio(Estimate("diameter", 1.70, 0.006, 9.0, "mm"), 1.75)
    assert ratio.u / ratio.value == pytest.approx(2 * 0.006 / 1.70, rel=1e-12)
    assert ratio.dof == 9.0


def test_product_rule_for_the_independent_part():
    """JCGM 100:2008 5.1.6: of a product of two independent readings the relative variances add, so d gets half."""
    rng = np.random.default_rng(5)
    d1, d2 = 1.80 + 0.01 * rng.standard_normal(200_000), 1.68 + 0.01 * rng.standard_normal(200_000)
    relative = math.hypot(0.01 / 1.80, 0.01 / 1.68)
    assert np.std(d1 * d2) / (1.80 * 1.68) == pytest.approx(relative, rel=0.01)
    found = measured(d1, d2)
    assert found.spread.value / found.diameter.value == pytest.approx(relative / 2, rel=0.01)


def test_area_by_caliper_and_by_micrometer():
    """u(d) 0.012 mm is 1.4 % of the area, 0.003 mm is 0.35 %: why a caliper does not do."""
    rough = measured([1.75] * 3, [1.75] * 3, gauge=CALIPER)
    fine = measured([1.75] * 3, [1.75] * 3)
    assert rough.area.u == pytest.approx(2 * math.hypot(0.012, 0.01 / math.sqrt(12)) / 1.75)
    assert fine.area.u == pytest.approx(0.0035, abs=2e-4)


def test_interval_covers_the_planted_diameter():
    rng = np.random.default_rng(20)
    hits = 0
    for _ in range(2000):
        zero = 0.003 * rng.standard_normal()
        along = 1.742 + 0.012 * rng.standard_normal(10)
        first = along + 0.03 + zero + 0.002 * rng.standard_normal(10)
        second = along - 0.03 + zero + 0.002 * rng.standard_normal(10)
        found = measured(np.round(first, 3).tolist(), np.round(second, 3).tolist())
        hits += abs(found.diameter.value - math.sqrt(1.742**2 - 0.03**2)) <= found.diameter.U
    assert 0.93 <= hits / 2000 <= 0.97


def test_equal_readings_do_not_pass_as_certain():
    found = measured([1.75] * 5, [1.75] * 5, gauge=CALIPER)
    assert found.rests_on == "digit"
    assert found.spread.value == 0.0 and found.spread.u > 0
    assert found.diameter.u > 0.012 and math.isinf(found.diameter.dof)
    assert any("not the label" in says for says in found.questions)
    assert equal_readings([1.75, 1.75, 1.75], [1.75, 1.75, 1.75])
    assert not equal_readings([1.75, 1.75, 1.75], [1.75, 1.75, 1.74])
    assert not equal_readings([1.75, 1.75], [1.75, None])


def test_scattering_places_rest_on_the_scatter():
    found = measured([1.70, 1.74, 1.78, 1.72], [1.71, 1.73, 1.77, 1.73], gauge=CALIPER)
    assert found.rests_on == "scatter"
    assert found.diameter.dof > 3
    assert math.isinf(found.ovality.dof)  # 0.01 each: the digit sets it
    assert measured([1.80, 1.74, 1.78], [1.70, 1.72, 1.74], gauge=CALIPER).ovality.dof == 2.0
    s = float(np.std(found.place_mm, ddof=1))
    assert found.diameter.u == pytest.approx(math.hypot(0.012, s / 2))
    assert found.spread.u == pytest.approx(s / math.sqrt(6))
    assert [e.name for e in found.estimates()] == ["diameter", "area_ratio", "ovality", "diameter_sd"]


def test_instrument_of_the_same_kind_counts():
    checked = Instrument("M1", kind="micrometer", u_outside_zero_mm=0.002, u_scale_ratio=1e-4, resolution_mm=0.001,
                         sd_hand_mm=0.004)
    gauge = gauge_of(GaugeKind.MICROMETER, checked)
    assert gauge.on_record and gauge.u_zero_mm == 0.002
    assert not gauge_of(GaugeKind.CALIPER, checked).on_record
    found = measured([1.75, 1.74], [1.75, 1.74], gauge=gauge)
    assert any("0.005" in says for says in found.questions)  # 2/sqrt(pi) of 0.004: E|x1 - x2|
    assert gauge_words(GaugeKind.CALIPER) == "caliper"


def test_places_read_one_way_do_not_count():
    found = measured([1.75, 1.75, 1.60], [1.74, 1.74, None])
    assert found.place_mm.size == 2
    assert any("Place 3" in says for says in found.questions)
    assert not measured([1.75, 1.74] * 5, [1.74, 1.74] * 5).questions


@pytest.mark.parametrize(
    ("first", "second", "nominal", "field", "row", "says"),
    [
        ([17.5, 1.75], [1.75, 1.75], 1.75, "first_mm", 0, "decimal mark moved it would be 1.75"),
        ([1.75, 1.75], [1.75, 0.175], 1.75, "second_mm", 1, "decimal mark"),
        ([175.0, 1.75], [1.75, 1.75], 1.75, "first_mm", 0, "decimal mark"),
        ([2.85, 1.75], [1.75, 1.75], 1.75, "nominal_mm", None, "Place 1: 2.85 mm read for a filament set to 1.75"),
        ([1.76, 1.75], [1.75, 1.75], 2.85, "nominal_mm", None, "is it filament of 1.75"),
        ([12.0, 1.75], [1.75, 1.75], 1.75, "first_mm", 0, "no diameter of a filament"),
        ([2.3, 1.75], [1.75, 1.75], 1.75, "first_mm", 0, "more than 0.3 mm from the nominal"),
        ([1.75], [None], 1.75, "second_mm", None, "one way only"),
        ([1.75, None], [1.75, None], 1.75, "second_mm", None, "One pair tells nothing"),
        ([1.75, 1.75], [1.75, 1.75], 0.4, "nominal_mm", None, "not between 1 and 5"),
        ([1.75, 1.75], [1.75, 1.75], math.nan, "nominal_mm", None, "not between 1 and 5"),
        ([math.nan, 1.75], [1.75, 1.75], 1.75, "first_mm", 0, "no diameter"),
    ],
)
def test_refusals(first, second, nominal, field, row, says):
    error = refused(first, second, nominal)
    assert (error.field, error.row) == (field, row)
    assert says in error.message


def test_a_reading_near_the_nominal_is_of_its_sort():
    assert check_sort(1.76, 1.75) is None

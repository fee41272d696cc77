"""Bead geometry: printed areas, an independent referee for the shapes, and the identities between them."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point, box

from core.errors import InputError
from core.flow_trials.bead import (
    FLAT_SHARE,
    Bead,
    BeadModel,
    area_mm2,
    bead_questions,
    bead_words,
    convert_flow_ratio,
    model_words,
    strand_area_mm2,
    width_from_area_mm,
)
from tests.published import printed

OBROUND, RECTANGLE = BeadModel.OBROUND, BeadModel.RECTANGLE


def test_a_usual_bead():
    """Worked by hand: (0.45 - 0.20) 0.20 + pi 0.20^2/4."""
    bead = Bead(0.45, 0.20)
    assert bead.area_mm2 == printed("0.0814159")
    assert bead.spacing_mm == printed("0.4071")
    assert bead.filament_ratio(1.75) == printed("0.03385")
    assert bead.filament_ratio(1.75, 0.9) == pytest.approx(0.9 * bead.filament_ratio(1.75))
    assert Bead(0.60, 0.30).area_mm2 == printed("0.16069")
    assert printed("0.2146") == FLAT_SHARE


@pytest.mark.parametrize(
    ("width_mm", "height_mm", "ratio"), [(0.45, 0.20, "1.1054"), (0.45, 0.10, "1.05"), (0.40, 0.20, "1.12")]
)
def test_rectangles_ask_for_more_plastic(width_mm, height_mm, ratio):
    share = area_mm2(width_mm, height_mm, RECTANGLE) / area_mm2(width_mm, height_mm, OBROUND)
    assert share == printed(ratio)


beads = st.tuples(st.floats(0.05, 0.6), st.floats(1.0, 4.0)).map(lambda hw: (hw[0] * hw[1], hw[0]))


@given(beads)
def test_the_area_is_that_of_the_drawn_shape(bead):
    """A path thickened to half the height has half-round ends: the obround; the polygon's arcs lack 1e-5 of a disc."""
    width, height = bead
    sides = LineString([(0, 0), (width - height, 0)]) if width > height else Point(0, 0)
    drawn = sides.buffer(height / 2, quad_segs=512).area
    assert area_mm2(width, height, OBROUND) == pytest.approx(drawn, rel=3e-6)
    assert area_mm2(width, height, RECTANGLE) == pytest.approx(box(0, 0, width, height).area, rel=1e-12)


@given(beads, st.sampled_from(BeadModel))
def test_width_and_area_are_inverse(bead, model):
    width, height = bead
    assert width_from_area_mm(area_mm2(width, height, model), height, model) == pytest.approx(width, rel=1e-12)


@given(beads)
def test_neighbours_at_the_gap_free_spacing_fill_the_layer(bead):
    width, height = bead
    assert Bead(width, height).spacing_mm * height == pytest.approx(Bead(width, height).area_mm2)
    assert Bead(width, height).spacing_mm == pytest.approx(width - FLAT_SHARE * height)
    assert Bead(width, height, RECTANGLE).spacing_mm == pytest.approx(width)


def test_a_strand_is_a_disc():
    assert strand_area_mm2(1.75) == pytest.approx(Point(0, 0).buffer(0.875, quad_segs=512).area, rel=3e-6)
    assert strand_area_mm2(1.70) / strand_area_mm2(1.75) == printed("0.9437")
    assert area_mm2(0.2, 0.2, OBROUND) == pytest.approx(strand_area_mm2(0.2))


@given(beads, st.floats(0.8, 1.2))
def test_a_converted_factor_lays_the_same_plastic(bead, factor):
    rectangle = Bead(*bead, RECTANGLE)
    converted = convert_flow_ratio(factor, rectangle, OBROUND)
    assert converted * Bead(*bead).area_mm2 == pytest.approx(factor * rectangle.area_mm2)
    assert convert_flow_ratio(converted, Bead(*bead), RECTANGLE) == pytest.approx(factor)


def test_a_factor_of_rectangles_is_too_low_for_obrounds():
    """0.95 with rectangles of 0.45 x 0.20 is 1.05 with obrounds; left at 0.95 it lays 9.5 % less."""
    converted = convert_flow_ratio(0.95, Bead(0.45, 0.20, RECTANGLE), OBROUND)
    assert converted == printed("1.050")
    assert 1 - 0.95 / converted == printed("0.095")


def test_a_bead_says_what_it_is():
    """Worked by hand: 0.0814 mm2, 0.407 mm, 0.03385 mm of 1.75 mm filament; 4/0.0814 = 49 mm/s."""
    says = bead_words(Bead(0.45, 0.20), 4.0, 1.75)
    assert says == "Bead 0.0814 mm², spacing 0.407 mm, 0.03385 mm fed a mm, speed 49 mm/s."
    assert "fed" not in bead_words(Bead(0.45, 0.20), 4.0)


def test_models_have_names():
    assert [str(model_words(model)) for model in BeadModel] == ["obround", "rectangle"]


@pytest.mark.parametrize(
    ("width_mm", "height_mm", "field", "says"),
    [
        (0.15, 0.20, "width_mm", "0.15 mm wide and 0.2 mm high is not pressed flat"),
        (0.0, 0.20, "width_mm", "cannot be"),
        (0.45, -0.1, "height_mm", "cannot be"),
        (0.45, math.nan, "height_mm", "cannot be"),
        (45.0, 0.2, "width_mm", "at most 20 mm"),
    ],
)
@pytest.mark.parametrize("model", BeadModel)
def test_beads_that_cannot_be_are_refused(width_mm, height_mm, field, says, model):
    with pytest.raises(InputError) as refused:
        Bead(width_mm, height_mm, model)
    assert refused.value.field == field
    assert says in refused.value.message


def test_other_refusals():
    for call, field in (
        (lambda: width_from_area_mm(0.01, 0.2), "bead_area_mm2"),
        (lambda: width_from_area_mm(0.03, 0.2, RECTANGLE), "bead_area_mm2"),
        (lambda: width_from_area_mm(0.08, 0.0), "height_mm"),
        (lambda: strand_area_mm2(0.0), "diameter_mm"),
        (lambda: Bead(0.45, 0.2).filament_ratio(-1.75), "filament_mm"),
        (lambda: bead_questions(Bead(0.45, 0.2), 0.0), "nozzle_mm"),
    ):
        with pytest.raises(InputError) as refused:
            call()
        assert refused.value.field == field


@pytest.mark.parametrize(
    ("width_mm", "height_mm", "asks"),
    [
        (0.45, 0.20, []),
        (0.80, 0.30, []),
        (0.81, 0.30, ["wider than twice the bore of 0.4 mm"]),
        (0.45, 0.31, ["above three quarters of the bore of 0.4 mm"]),
        (0.90, 0.40, ["wider than twice", "above three quarters"]),
    ],
)
def test_a_bead_that_a_nozzle_hardly_lays_is_questioned(width_mm, height_mm, asks):
    found = bead_questions(Bead(width_mm, height_mm), 0.4)
    assert len(found) == len(asks)
    assert all(part in says for part, says in zip(asks, found, strict=True))

"""Which reading would tell: the least trouble first, nothing that cannot be read. That it tells: `test_sizeerror`."""

import numpy as np
import pytest

from core.measuring.linefit import fit_linear
from core.part_size.features import FeatureKind, design_terms, parameter_names, travel_centres
from core.part_size.missing import Candidate, reading_list, telling_readings
from core.part_size.scatter import RANK_RATIO


def readings_for(name, *read):
    kinds, axes = [FeatureKind(kind) for kind, _, _ in read], [axis for _, axis, _ in read]
    lengths = np.array([L for _, _, L in read])
    terms = design_terms(parameter_names(kinds, axes), kinds, axes, lengths, travel_centres(kinds, axes, lengths))
    fit = fit_linear(terms.design, np.zeros(lengths.size), None, RANK_RATIO)
    return [
        (str(c.kind), c.axis, c.nominal_mm)
        for c in telling_readings(terms, fit.null_space, terms.coefficients(name), kinds, axes, lengths)
    ]


OUTSIDE = [("outside", "x", L) for L in (10.0, 60.0, 140.0)]


@pytest.mark.parametrize(
    ("name", "read", "asked"),
    [
        ("wall_outset", OUTSIDE, [("notch", "x", 70.0)]),
        ("lost_motion_x", OUTSIDE, [("notch", "x", 70.0)]),
        ("wall_outset", [("closed_hole", "x", L) for L in (10.0, 140.0)], [("notch", "x", 70.0)]),
        ("lost_motion_y", [("tooth", "y", L) for L in (100.0, 120.0)], [("closed_hole", "y", 10.0)]),
        ("wall_outset", [("ring_mean", "x", L) for L in (10.0, 30.0)], [("notch", "x", 120.0)]),
        ("scale_x", OUTSIDE[:1], [("outside", "x", 120.0)]),
        ("scale_x", OUTSIDE[2:], [("outside", "x", 10.0)]),
        ("scale_z", [("height", "z", 20.0)], [("height", "z", 120.0)]),
        ("squash_z", [("height", "z", 20.0)], [("height", "z", 120.0)]),
        ("scale_y", [("bore", "y", 8.0)], [("bore", "y", 120.0)]),
        ("bore_constant", [("bore", "x", 8.0), *OUTSIDE[:1]], [("bore", "x", 120.0)]),
        ("origin_z", [("travel", "z", 0.0)], [("travel", "z", 120.0)]),
        ("wall_outset", OUTSIDE[:1], [("outside", "x", 120.0), ("notch", "x", 120.0)]),
        ("lost_motion_x", [("same_facing", "x", 10.0)], [("ring_mean", "x", 120.0)]),
    ],
)
def test_what_would_tell(name, read, asked):
    assert readings_for(name, *read) == asked


def test_each_axis_has_a_length_of_its_own():
    """50 mm is far from the lengths along x, and the one position along y: there it would tell nothing."""
    read = [("tooth", "x", 100.0), ("tooth", "x", 30.0), ("travel", "y", 50.0)]
    assert readings_for("scale_y", *read) == [("travel", "y", 120.0)]
    assert readings_for("origin_y", *read) == [("travel", "y", 120.0)]


def test_bores_are_not_asked_for_along_z():
    read = [("bore", "x", 10.0), ("bore", "x", 60.0), ("height", "z", 20.0)]
    assert readings_for("scale_z", *read) == [("height", "z", 120.0)]


def test_a_travelled_axis_is_not_asked_for_parts():
    read = [("same_facing", "x", 60.0), ("travel", "z", 20.0)]
    assert readings_for("scale_z", *read) == [("travel", "z", 120.0)]


def test_nothing_tells_what_no_reading_responds_to():
    kinds, axes, lengths = [FeatureKind.TOOTH] * 2, ["x", "x"], np.array([10.0, 100.0])
    terms = design_terms((*parameter_names(kinds, axes), "humidity"), kinds, axes, lengths)
    null_space = fit_linear(terms.design, np.zeros(2)).null_space
    assert telling_readings(terms, null_space, terms.coefficients("humidity"), kinds, axes, lengths) == ()


def test_readings_in_words_each_once():
    notch, hole = Candidate(FeatureKind.NOTCH, "x", 70.0), Candidate(FeatureKind.CLOSED_HOLE, "y", 10.0)
    assert notch.words() == "one length of about 70 mm along x (comb notch)"
    assert reading_list([notch, hole, notch]) == f"{notch.words()}, {hole.words()}"

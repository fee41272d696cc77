"""The direct trials: what is drawn has the lengths and volumes that were drawn, told by other means."""

import math

import numpy as np
import pytest
from shapely.geometry import LineString
from shapely.ops import unary_union

from core.errors import InputError
from core.pieces.toolpath import PURGE, PathBead
from core.pieces.toolpathdraw import Setup
from core.pieces.toolpathsolids import layer_heights_mm
from core.pieces.toolpathtrials import TRIALS, TrialKind, draw_trial

AREA = 0.2 * (0.45 - (1 - math.pi / 4) * 0.2)
FILAMENT = math.pi * 1.75**2 / 4
BEAD = PathBead(0.45, 0.2, AREA / 0.2, AREA / FILAMENT)
LADDER = (0.015, -0.045, 0.06, -0.015, 0.03, -0.06, 0.0, 0.045, -0.03)


def setup(**changed) -> Setup:
    usual = {"bead": BEAD, "filament_mm": 1.75, "speed_mm_s": 40.0, "first_mm_s": 20.0, "middle_mm": (110.0, 100.0)}
    return Setup(**(usual | {"ladder_ratio": LADDER} | changed))


def drawn(kind: TrialKind, bead: PathBead = BEAD, **changed):
    """The strokes of a trial without the purge."""
    values = {entry.key: entry.usual for entry in TRIALS[kind].entries} | changed
    made = draw_trial(kind, values, setup(bead=bead))
    return [stroke for stroke in made.strokes if stroke.part != PURGE], made


def volume_mm3(strokes) -> float:
    return float(sum(stroke.filament_mm.sum() for stroke in strokes)) * FILAMENT


def bounds(strokes, z_mm):
    """The outline of a layer by a general-purpose geometry library, beads as wide as drawn."""
    beads = [LineString(s.points_mm).buffer(s.width_mm / 2, join_style="mitre", cap_style="flat")
             for s in strokes if abs(s.z_mm - z_mm) < 1e-9]  # fmt: skip
    return unary_union(beads)


@pytest.mark.parametrize("kind", list(TrialKind))
def test_usual_values_lie_within_their_limits_and_draw_something(kind):
    for entry in TRIALS[kind].entries:
        assert entry.low <= entry.usual <= entry.high, entry.key
        assert not entry.whole or entry.usual == int(entry.usual)
    strokes, made = drawn(kind)
    assert strokes
    assert sorted({stroke.part for stroke in strokes}) == list(range(1, len(made.parts) + 1))
    assert TRIALS[kind].title
    assert TRIALS[kind].purpose


@pytest.mark.parametrize("beads", [1, 2])
def test_a_wall_box_is_as_large_as_drawn(beads):
    strokes, _ = drawn(TrialKind.WALL_BOX, beads=float(beads))
    layer = bounds(strokes, 0.2)
    assert layer.bounds == pytest.approx((90, 80, 130, 120))
    inside = 40 - 2 * (0.45 + (beads - 1) * BEAD.spacing_mm)
    assert layer.area == pytest.approx(40**2 - inside**2, rel=1e-3)
    assert len({stroke.z_mm for stroke in strokes}) == 75


def test_the_volume_of_a_box_is_that_of_its_centre_lines():
    strokes, _ = drawn(TrialKind.MASS_BOX)
    around = sum(4 * (40 - 0.45 - 2 * ring * BEAD.spacing_mm) for ring in range(4))
    assert volume_mm3(strokes) == pytest.approx(125 * around * AREA)
    # Four beads without a gap fill the wall between their outer flanks but for the round of the outermost two sides.
    wall = 40**2 - (40 - 2 * (0.45 + 3 * BEAD.spacing_mm)) ** 2
    assert volume_mm3(strokes) == pytest.approx(25 * wall, rel=0.03)
    assert volume_mm3(strokes) * 1.24e-3 > 5  # g: enough for a balance of 0.01 g


def test_the_innermost_ring_is_laid_first():
    strokes, _ = drawn(TrialKind.WALL_BOX, beads=2.0)
    assert np.ptp(strokes[0].points_mm[:, 0]) < np.ptp(strokes[1].points_mm[:, 0])


def test_a_first_layer_is_slow():
    strokes, _ = drawn(TrialKind.WALL_BOX)
    assert {float(s.speed_mm_s[0]) for s in strokes if s.z_mm == 0.2} == {20.0}
    assert {float(s.speed_mm_s[0]) for s in strokes if s.z_mm > 0.3} == {40.0}


def test_rings_that_do_not_fit_are_refused():
    with pytest.raises(InputError, match="do not fit") as refused:
        drawn(TrialKind.MASS_BOX, PathBead(1.0, 0.2, 1.0, 0.1), side_mm=15.0, beads=12.0)
    assert refused.value.field == "side_mm"


def test_heights_come_to_whole_layers():
    assert layer_heights_mm(15.0, BEAD) == pytest.approx(0.2 * np.arange(1, 76))
    assert layer_heights_mm(0.05, BEAD).tolist() == [0.2]


def test_pads_are_solid_and_their_flow_is_the_ladder():
    strokes, made = drawn(TrialKind.TOP_PADS)
    assert [str(part.name) for part in made.parts] == [f"Pad {letter}" for letter in "ABCDEFGHI"]
    rows = {part.at_mm[1]: 0 for part in made.parts}
    assert [sum(part.at_mm[1] == y for part in made.parts) for y in rows] == [5, 4]
    plain = volume_mm3(s for s in strokes if s.part == 7)
    for number, change in enumerate(LADDER, start=1):
        assert volume_mm3(s for s in strokes if s.part == number) == pytest.approx((1 + change) * plain)
    one = bounds([s for s in strokes if s.part == 7], 0.2)
    assert one.area == pytest.approx(25**2, rel=0.03)
    # Solid: what is fed fills the pad; of its rim half a bead is round.
    assert plain == pytest.approx(one.area * 1.0, rel=0.02)


def test_lines_of_a_pad_are_crossed_from_layer_to_layer_and_exactly_apart():
    strokes, _ = drawn(TrialKind.TOP_PADS)
    fills = [s.points_mm for s in strokes if s.part == 1 and len(s.points_mm) > 5]
    across = [np.unique(fill[:, 1 - layer % 2].round(9)) for layer, fill in enumerate(fills)]
    for places in across:
        assert np.diff(places) == pytest.approx(BEAD.spacing_mm)
    outline = next(s.points_mm for s in strokes if s.part == 1)
    assert across[0].min() - outline[:, 1].min() == pytest.approx(BEAD.spacing_mm)


def test_pads_are_counted_by_ticks_that_do_not_count():
    made = draw_trial(TrialKind.TOP_PADS, {"size_mm": 25.0, "layers": 2.0}, setup())
    ticks = [s for s in made.strokes if s.part == PURGE and len(s.points_mm) == 2 and np.ptp(s.points_mm[:, 0]) == 0]
    assert len(ticks) == sum(range(1, 10))


def test_a_pad_without_room_is_refused():
    with pytest.raises(InputError, match="no room") as refused:
        drawn(TrialKind.TOP_PADS, PathBead(2.0, 0.2, 2.0, 0.2), size_mm=5.0)
    assert refused.value.field == "size_mm"


def test_a_ladder_rises_evenly_about_the_factor_in_force():
    strokes, made = drawn(TrialKind.FLOW_LADDER)
    ratios = [float(s.filament_mm.sum()) / (100.0 * BEAD.filament_ratio) for s in strokes]
    assert ratios == pytest.approx(np.linspace(0.88, 1.12, 9))
    assert str(made.parts[0].name) == "line 1: -12.0 %"
    assert all(part.beside for part in made.parts)


def test_lag_lines_feed_ahead_and_take_it_back():
    strokes, made = drawn(TrialKind.LAG_LINES)
    ramp = (70**2 - 25**2) / (2 * 500)
    plain, last = strokes[0], strokes[-1]
    assert np.diff(plain.points_mm[:, 0]) == pytest.approx([48, ramp, 42 - 2 * ramp, ramp, 30])
    assert plain.filament_mm == pytest.approx(BEAD.filament_ratio * np.diff(plain.points_mm[:, 0]))
    ahead = last.filament_mm - plain.filament_mm
    assert ahead == pytest.approx(0.1 * BEAD.filament_ratio * 45 * np.array([0, 1, 0, -1, 0]))
    assert last.filament_mm.sum() == pytest.approx(plain.filament_mm.sum())
    assert last.speed_mm_s.tolist() == [25, 70, 70, 70, 25]
    assert str(made.parts[-1].name) == "line 11: 0.100 s"


@pytest.mark.parametrize(
    ("changed", "field", "says"),
    [
        ({"fast_mm_s": 25.0}, "fast_mm_s", "faster than 25"),
        ({"acceleration_mm_s2": 20.0}, "length_mm", "over 106.9 mm"),
    ],
)
def test_lag_lines_that_cannot_be_are_refused(changed, field, says):
    with pytest.raises(InputError, match=says) as refused:
        drawn(TrialKind.LAG_LINES, **changed)
    assert refused.value.field == field


def test_ringing_goes_faster_from_band_to_band():
    strokes, made = drawn(TrialKind.RINGING)
    speeds = {part: {round(float(s.speed_mm_s[0]), 3) for s in strokes if s.part == part and s.z_mm > 0.3}
              for part in (1, 2, 3, 4)}  # fmt: skip
    assert [len(found) for found in speeds.values()] == [1, 1, 1, 1]
    values = [found.pop() for found in speeds.values()]
    assert np.diff(np.log(values)) == pytest.approx(np.log(2.5) / 3 * np.ones(3), abs=1e-4)
    assert strokes[0].speed_mm_s[0] == 20.0
    assert str(made.parts[3].name) == "band 4: 100 mm/s"


def test_strands_feed_the_same_length_at_rising_rates_far_apart():
    made = draw_trial(TrialKind.STRANDS, {e.key: e.usual for e in TRIALS[TrialKind.STRANDS].entries}, setup())
    purge, *strands = made.strokes
    assert purge.part == PURGE
    assert {float(s.filament_mm[0]) for s in strands} == {200.0}
    assert [float(s.speed_mm_s[0]) * FILAMENT for s in strands] == pytest.approx([2, 4, 6, 8, 10, 12])
    places = [s.points_mm[0] for s in made.strokes]
    steps = [math.dist(a, b) for a, b in zip(places, places[1:], strict=False)]
    assert steps == pytest.approx([40.0] * 6)
    assert {s.approach_mm_s for s in strands} == {40.0 / 30.0}  # the way takes the pause


def test_the_feed_is_one_slow_move():
    (stroke,), _ = drawn(TrialKind.FEED)
    assert stroke.filament_mm.tolist() == [100.0]
    assert stroke.speed_mm_s.tolist() == [1.5]


def test_pen_lines_cross_at_the_corners_and_are_drawn_towards_plus():
    strokes, _ = drawn(TrialKind.PEN_LINES, side_x_mm=200.0, side_y_mm=150.0)
    front, back, left, right = (LineString(s.points_mm) for s in strokes)
    corners = [front.intersection(left), front.intersection(right), back.intersection(right), back.intersection(left)]
    assert [(p.x, p.y) for p in corners] == [(10, 25), (210, 25), (210, 175), (10, 175)]
    for stroke in strokes:
        assert (np.diff(stroke.points_mm, axis=0) >= 0).all()
        assert not stroke.filament_mm.any()


def test_what_lies_on_the_bed_begins_with_a_line_in_front_of_it():
    made = draw_trial(TrialKind.WALL_BOX, {"side_mm": 40.0, "high_mm": 1.0, "beads": 1.0}, setup())
    first, second = made.strokes[:2]
    assert first.part == PURGE
    assert first.points_mm[:, 1].max() < second.points_mm[:, 1].min() - 5

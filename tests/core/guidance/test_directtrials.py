"""A direct trial from what the page asks: bead, ladder, limits of the machine, check."""

import math
from dataclasses import replace

import pytest

from core.errors import InputError
from core.flow_trials.top import LADDER_RATIO
from core.guidance.directtrials import PathRequest, limits_of, plan_path
from core.pieces.toolpathcheck import Limits
from core.pieces.toolpathtext import END_TEXT, START_TEXT
from core.pieces.toolpathtrials import TRIALS, TrialKind
from core.records.rows import Machine, Motion

LIMITS = Limits()


def request(kind: TrialKind = TrialKind.WALL_BOX, values=(), **changed) -> PathRequest:
    usual = PathRequest(
        kind=kind,
        values={entry.key: entry.usual for entry in TRIALS[kind].entries} | dict(values),
        width_mm=0.45,
        height_mm=0.2,
        model="obround",
        filament_mm=1.75,
        flow_ratio=1.0,
        nozzle_c=210.0,
        bed_c=60.0,
        fan_percent=0.0,
        speed_mm_s=40.0,
        retract_mm=1.0,
        relative=True,
        start_text=START_TEXT,
        end_text=END_TEXT,
    )
    return replace(usual, **changed)


@pytest.mark.parametrize("relative", [True, False])
@pytest.mark.parametrize("kind", list(TrialKind))
def test_every_usual_trial_passes_the_check(kind, relative):
    planned = plan_path(request(kind, relative=relative), LIMITS)
    assert [fault.says for fault in planned.checked.faults] == []
    assert planned.toolpath.title == TRIALS[kind].title
    moves = planned.toolpath.moves
    assert planned.checked.filament_mm == pytest.approx(moves.filament_mm.sum(), abs=1e-3)
    assert planned.checked.low_mm[0] == pytest.approx(moves.x_mm.min(), abs=1e-3)


def test_the_volume_is_that_of_the_bead_model_and_the_factor_in_force():
    """One bead of 39.55 mm square and 75 layers; areas by plane geometry."""
    obround = plan_path(request(flow_ratio=0.95), LIMITS).toolpath.commanded_mm3()
    area = 0.2 * (0.45 - (1 - math.pi / 4) * 0.2)
    assert obround == pytest.approx(0.95 * 75 * 4 * 39.55 * area)
    rectangle = plan_path(request(model="rectangle"), LIMITS).toolpath.commanded_mm3()
    assert rectangle == pytest.approx(75 * 4 * 39.55 * 0.09)


def test_pads_have_the_ladder_of_the_page_that_scores_them():
    path = plan_path(request(TrialKind.TOP_PADS), LIMITS).toolpath
    plain = path.commanded_mm(1 + LADDER_RATIO.index(0.0))
    found = [path.commanded_mm(number) / plain - 1 for number in range(1, 10)]
    assert found == pytest.approx(LADDER_RATIO)


@pytest.mark.parametrize(
    ("changed", "field", "says"),
    [
        ({"nozzle_c": 241.0}, "nozzle_c", "241 °C is beyond the limit of the hot end, 240 °C"),
        ({"bed_c": 101.0}, "bed_c", "limit of the bed, 100 °C"),
        ({"speed_mm_s": 151.0}, "speed_mm_s", "limit of the nozzle, 150 mm/s"),
        ({"values": {"side_mm": 10.0, "high_mm": 15.0, "beads": 1.0}}, "side_mm", "from 15 to 200 mm"),
        ({"values": {"beads": 3.0}}, "beads", "Beads: from 1 to 2 can be laid"),
        ({"width_mm": 0.1}, "width_mm", "not pressed flat"),
        ({"filament_mm": 0.0}, "filament_mm", "cannot be"),
        ({"start_text": "{bed}"}, "template", "known are"),
    ],
)
def test_what_cannot_be_is_refused_at_its_field(changed, field, says):
    with pytest.raises(InputError, match=says) as refused:
        plan_path(request(**changed), LIMITS)
    assert refused.value.field == field


def test_an_entry_that_is_not_told_is_asked_for():
    with pytest.raises(InputError, match="Side: from 15 to 200 mm can be laid") as refused:
        plan_path(replace(request(), values={"high_mm": 15.0, "beads": 1.0}), LIMITS)
    assert refused.value.field == "side_mm"


@pytest.mark.parametrize(
    ("kind", "values", "limits", "says"),
    [
        (TrialKind.WALL_BOX, {"side_mm": 200.0}, Limits(high_mm=(180, 180, 180)), "outside the travel"),
        (TrialKind.STRANDS, {"fast_mm3_s": 20.0}, LIMITS, "The plastic would run"),
        (TrialKind.RINGING, {"fast_mm_s": 200.0}, LIMITS, "The nozzle would run"),
        (TrialKind.PEN_LINES, {"side_x_mm": 240.0}, LIMITS, "outside the travel"),
        (TrialKind.WALL_BOX, {"high_mm": 50.0}, Limits(high_mm=(220, 220, 40)), "Z 40.2 mm is outside"),
    ],
)
def test_what_the_machine_cannot_bear_is_found_by_the_check(kind, values, limits, says):
    faults = plan_path(request(kind, values), limits).checked.faults
    assert any(says in fault.says for fault in faults), faults


def test_the_machines_own_text_is_checked_too():
    faults = plan_path(request(start_text="G28\nM302 S0"), LIMITS).checked.faults
    assert "M302 is not among the words" in faults[0].says
    assert "hot end is not switched off" in plan_path(request(end_text="M104 S50"), LIMITS).checked.faults[0].says


def test_limits_come_from_the_machine_as_far_as_they_are_known():
    assert limits_of(Machine("plain")) == LIMITS
    known = Machine(
        "known", travel_x_mm=300.0, travel_y_mm=250.0, travel_z_mm=280.0,
        limits={"hot_end_limit_c": 280.0, "bed_limit_c": 110.0, "max_flow_mm3_s": 18.0,
                "max_speed_mm_s": {"x": 300.0, "y": 200.0, "z": 12.0, "e": 40.0}},
    )  # fmt: skip
    found = limits_of(known)
    assert found.high_mm == (300.0, 250.0, 280.0)
    assert (found.hot_end_c, found.bed_c, found.rate_mm3_s) == (280.0, 110.0, 18.0)
    assert (found.speed_mm_s, found.z_mm_s, found.feed_mm_s) == (200.0, 12.0, 40.0)


def test_a_delta_has_a_round_bed_about_its_zero():
    limits = limits_of(Machine("delta", motion=Motion.DELTA, travel_x_mm=180.0, travel_y_mm=180.0))
    assert limits.round_bed
    assert (limits.low_mm, limits.high_mm) == ((-90.0, -90.0, 0.0), (90.0, 90.0, 220.0))
    assert not plan_path(request(), limits).checked.faults
    assert plan_path(request(values={"side_mm": 140.0}), limits).checked.faults


def test_a_bead_that_the_nozzle_hardly_lays_is_questioned():
    assert plan_path(request(nozzle_mm=0.4), LIMITS).minds == ()
    (mind,) = plan_path(request(nozzle_mm=0.2), LIMITS).minds[:1]
    assert "wider than twice the bore of 0.2 mm" in mind
    assert plan_path(request(TrialKind.PEN_LINES, nozzle_mm=0.2), LIMITS).minds == ()


def test_a_bed_that_stays_cold_is_minded_where_something_is_laid():
    assert [mind[:19] for mind in plan_path(request(bed_c=0.0), LIMITS).minds] == ["The bed stays cold,"]
    assert plan_path(request(TrialKind.PEN_LINES, bed_c=0.0), LIMITS).minds == ()


def test_a_start_text_that_heats_is_minded():
    planned = plan_path(request(start_text="G28\nM190 S{bed_c}"), LIMITS)
    assert not planned.checked.faults
    assert "The start text heats" in planned.minds[0]

"""What a workshop reads, for calls that refuse nearly everything else: readings that belong together.

Where anything goes these are left aside now and then, and every argument is drawn by itself.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np

from core.filament.slip import HotFeed
from core.flow_trials.mass import Commanded, Density
from core.flow_trials.wall import WallBox, right_wall_mm
from core.guidance.ceilingadvice import Strands
from core.guidance.diameteradvice import DiameterReadings
from core.guidance.feedadvice import ByMarks, ByMass, FeedReadings
from core.guidance.firstlayeradvice import PadReadings
from core.guidance.pieceplan import PieceWishes
from core.guidance.reversaladvice import ReversalReadings, Way
from core.guidance.ringingadvice import Use
from core.guidance.squareadvice import SquareReadings
from core.machine_geometry.firstlayer import Printed
from core.machine_geometry.squareness import Plane
from core.machine_geometry.stiffness import Push
from core.measuring.gauge import GaugeKind
from core.measuring.instrumentkinds import KINDS
from core.motion_trials.halfspeed import Run as HalfSpeedRun
from core.motion_trials.ringing import Ripple
from core.part_size.features import FeatureKind
from core.part_size.planner import Place
from core.part_size.sizeerror import fit_size_error
from core.pieces.catalogue import set_names
from core.quantity import Estimate
from tests.properties.kinds import Hand

Given = dict[str, Any]


def near(hand: Hand, middle: float, apart: float, count: int | None = None) -> list[float]:
    """Return readings about a value: some alike, and where anything goes one that is anything."""
    count = hand.many() if count is None else count
    return hand.alike(hand.number("", middle - apart, middle + apart) for _ in range(count))


def density(hand: Hand) -> Given:
    air = near(hand, 6.0, 2.0)
    water = [air_g * hand.number("", 0.1, 0.3) for air_g in air]
    return {"air_g": air, "water_g": hand.short(water), "water_c": hand.number("", 15.0, 30.0)} | balance(hand)


def balance(hand: Hand) -> Given:
    return {"u_balance_g": hand.number("", 0.005, 0.02), "u_bubbles_g": hand.number("", 0.0, 0.03)}


def pairs_mm(hand: Hand, nominal_mm: float) -> tuple[list[Any], list[Any]]:
    """Return readings of a filament two ways; some places were read one way only."""
    first, second = (near(hand, nominal_mm, 0.05) for _ in range(2))
    return [hand.pick(one, one, one, None) for one in first], hand.short(list(second))


def diameter(hand: Hand) -> Given:
    nominal = hand.pick(1.75, 2.85, 3.0)
    first, second = pairs_mm(hand, nominal)
    return {"first_mm": first, "second_mm": second, "nominal_mm": nominal}


def diameter_readings(hand: Hand) -> DiameterReadings:
    nominal = hand.pick(1.75, 2.85)
    first, second = pairs_mm(hand, nominal)
    pieces, samples = by_length(hand), density(hand)
    return DiameterReadings(
        nominal,
        hand.number("", 1.7, 1.8),
        hand.pick(*GaugeKind),
        *(tuple(column) for column in (first, second, pieces["mass_g"], pieces["length_mm"])),
        *(tuple(samples[name]) for name in ("air_g", "water_g")),
        samples["water_c"],
        pieces["u_balance_g"],
        pieces["u_length_mm"],
    )


def by_length(hand: Hand) -> Given:
    length = near(hand, 1000.0, 20.0)
    mass = [one * hand.number("", 0.0029, 0.0031) for one in length]
    shared = {"u_balance_g": hand.number("", 0.005, 0.02), "u_length_mm": hand.number("", 0.2, 1.0)}
    return {"mass_g": mass, "length_mm": hand.short(length), "nominal_mm": 1.75, **shared}


def ceiling(hand: Hand) -> Given:
    rates = [2.0, 4.0, 6.0, 8.0, 10.0, 12.0]
    rate = [hand.number("mm3_s") if hand.chance(hand.wild) else one for one in rates]
    share = [hand.number("", 0.97, 1.0) - 0.03 * max(one - 7.0, 0.0) for one in rates]
    at = hand.pick([210.0] * 6, [hand.number("", 205.0, 215.0)] * 6, near(hand, 210.0, 1.0, 6))
    return {"rate_mm3_s": rate, "share_ratio": hand.short(share), "temperature_c": at, "hot_end_limit_c": 240.0}


def strands(hand: Hand) -> Strands:
    given = ceiling(hand)
    mass = [one * 0.3 for one in given["share_ratio"]]
    return Strands(given["rate_mm3_s"], mass, given["temperature_c"], 100.0, hand.number("", 2.99, 3.01), 240.0)


def mass(hand: Hand) -> Given:
    volume = hand.number("", 2000.0, 4000.0)
    plastic = Density(hand.number("", 1.2, 1.3), 0.005)
    weighed = [volume * 0.00124 * one for one in near(hand, 1.0, 0.02)]
    given = {"commanded": Commanded(volume, False), "plastic": plastic, "mass_g": weighed}
    return given | {"u_balance_g": hand.number("", 0.01, 0.1), "rest_g": hand.number("", 0.0, 0.05)}


def wall(hand: Hand) -> Given:
    from core.flow_trials.conditions import PrintConditions

    conditions, box = hand.of(PrintConditions), WallBox(hand.pick(1, 2), hand.between(20, 60))
    right = right_wall_mm(conditions, box)
    return {"conditions": conditions, "box": box, "wall_mm": near(hand, right, 0.02)}


def top(hand: Hand) -> Given:
    rows = [(change, who) for change in (-0.06, -0.03, 0.0, 0.03, 0.06) for who in "AB"]
    score = [hand.number("", -0.5, 0.5) + 50.0 * change for change, _ in rows]
    change = [hand.number("_ratio") if hand.chance(hand.wild) else one for one, _ in rows]
    return {"change_ratio": change, "score": hand.short(score), "judge": [hand.word(who) for _, who in rows]}


def feed_readings(hand: Hand) -> FeedReadings:
    count = max(hand.many(), 2)
    fed = near(hand, 100.0, 1.0, count)
    marks = ByMarks([20.0 + one for one in fed], hand.short([20.0] * count), hand.number("", 0.2, 0.5))
    weighed = ByMass([0.003 * one for one in fed], Estimate("mass_per_length", 3.0, 0.01, np.inf, "g/m"), 0.01)
    rate = [hand.pick(None, None, hand.number("", 2.0, 12.0)) for _ in range(count)]
    hot = HotFeed(0.4, hand.number("", 200.0, 230.0), 280.0)
    steps = hand.number("", 90.0, 800.0)
    return FeedReadings(near(hand, 100.0, 0.0, count), hand.pick(marks, weighed), rate, steps, hot)


def printed(hand: Hand) -> Printed:
    return Printed(hand.number("", 0.2, 0.3), hand.number("", -0.5, 0.5), 0.4)


def first_layer(hand: Hand) -> Given:
    how = printed(hand)
    x, y = ([hand.number("", 10.0, 200.0) for _ in range(hand.length)] for _ in range(2))
    places = hand.pick({"x_mm": x, "y_mm": hand.short(y)}, {"x_mm": [], "y_mm": []})
    return {"printed": how, "thickness_mm": near(hand, 0.25, 0.03), "u_flow_ratio": hand.number("", 0.0, 0.05)} | places


def pads(hand: Hand) -> PadReadings:
    given = first_layer(hand)
    return PadReadings(
        given["thickness_mm"],
        given["printed"],
        given["x_mm"],
        given["y_mm"],
        5.0,
        hand.pick(*GaugeKind),
        hand.chance(0.5),
    )


def half_speed(hand: Hand) -> Given:
    rows = [(run, who) for run in HalfSpeedRun for who in "AB"]
    score = [float(hand.between(0, 4)) if not hand.chance(hand.wild) else hand.number("score") for _ in rows]
    return {"run": [run for run, _ in rows], "score": score, "judge": [hand.word(who) for _, who in rows]}


def diagnosis(hand: Hand) -> Given:
    given = half_speed(hand)
    return given | {"run": [hand.word(str(run)) for run in given["run"]]}


def wishes(hand: Hand) -> PieceWishes:
    return PieceWishes(
        hand.word(*set_names()),
        sd_reading_mm=hand.number("", 0.005, 0.05),
        sd_face_mm=hand.number("", 0.0, 0.1),
        rounds=hand.count(),
        scale_ratio=hand.number("", 0.0005, 0.01),
    )


def reversal_readings(hand: Hand) -> ReversalReadings:
    way = hand.pick(*Way)
    if way is Way.PUSH:
        rows = [(side, hold, 0.0) for side in ("along", "sideways") for hold in ("rest", "pushed") * 3]
    else:
        rows = [(f"at {at:g}", to, at) for at in (10.0, 60.0, 110.0) for to in ("up", "down") * 3]
    off = [0.05 * (hold in ("down", "pushed")) + at + hand.number("", 0.0, 0.01) for _, hold, at in rows]
    steps = [at for _, _, at in rows]
    if way not in (Way.PUSH, *list(Way)[:2]):  # the curve: it follows once the play is used up
        steps = [0.05 * step for step in range(18)]
        off = [max(step - 0.2, 0.0) + hand.number("", 0.0, 0.002) for step in steps]
    return ReversalReadings(
        hand.word("x", "y"),
        way,
        hand.number("", 0.002, 0.01),
        [hand.word(place) for place, _, _ in rows],
        [hand.word(to) for _, to, _ in rows],
        hand.short(steps),
        off,
        Push(hand.number("", 8.0, 20.0), 0.5),
    )


def lost_motion(hand: Hand) -> Given:
    commanded = [0.05 * step for step in range(16)]
    moved = [max(step - 0.2, 0.0) + hand.number("", 0.0, 0.002) for step in commanded]
    return {"commanded_mm": commanded, "travel_mm": hand.short(moved), "axis": "x", "resolution_mm": 0.01}


def ripple(hand: Hand) -> Ripple:
    speed = hand.pick(40.0, 60.0, 80.0)
    crests = hand.pick(3, 4, 5) if not hand.chance(hand.wild / 4) else hand.count()
    distance = crests * speed / (hand.number("", 38.0, 42.0) or 40.0)
    return Ripple(speed, crests, distance, hand.pick(None, 40.0), hand.pick(None, 15.0))


def ringing(hand: Hand) -> Given:
    some = [ripple(hand) for _ in range(hand.between(1, 3))]
    u = {"u_distance_mm": hand.number("", 0.02, 0.1), "u_speed_ratio": hand.number("", 0.001, 0.02)}
    return {"axis": hand.word("x", "y"), "ripples": some, "use": use(hand), **u} | {"bearing_mm": None, "drive": None}


def use(hand: Hand) -> Use:
    return Use(hand.word("x", "y"), hand.number("_g"), hand.number("", 40.0, 90.0), hand.number("", 0.01, 0.03), 3000.0)


def log(hand: Hand) -> Given:
    count = hand.pick(512, 1024)
    time = np.arange(count) / 400.0
    with np.errstate(over="ignore", invalid="ignore"):  # a wild hand's wave is no wave at all
        wave = hand.number("", 100.0, 900.0) * np.sin(2 * np.pi * hand.number("", 30.0, 60.0) * time)
    noise = np.random.default_rng(hand.between(0, 9)).normal(size=count)
    return {"time_s": time, "acceleration_mm_s2": wave + noise, "use": use(hand), "name": "x"}


def square_readings(hand: Hand) -> SquareReadings:
    if hand.chance(0.5):
        rows = [("1", part, 141.42 + off) for part, off in (("outer", 10.0), ("inner", -10.0)) for _ in range(2)]
        rows += [("2", part, at) for _, part, at in rows]
    else:
        rows = [(way, "square", 0.0) for way in ("normal", "flipped") for _ in range(2)]
    reading = [at + hand.number("", -0.05, 0.05) for _, _, at in rows]
    tried = {"span_mm": hand.number("", 150.0, 250.0), "longest_mm": 200.0, "tolerance_mm": hand.number("", 0.1, 0.3)}
    return hand.build(
        SquareReadings,
        plane=hand.pick(*Plane),
        side_a_mm=100.0,
        side_b_mm=hand.number("", 99.9, 100.1),
        reading_mm=hand.short(reading),
        diagonal=[hand.word(way) for way, _, _ in rows],
        part=[hand.word(part) for _, part, _ in rows],
        term_ratio=hand.number("", -0.01, 0.01),
        **tried,
    )


def flips(hand: Hand) -> Given:
    placing = [hand.word("normal", "flipped") for _ in range(hand.length)]
    given = {
        "length_mm": hand.number("", 100.0, 200.0),
        "placing": placing,
        "resolution_mm": hand.number("", 0.002, 0.01),
    }
    return given | {"change_mm": hand.short(near(hand, 0.05, 0.02, hand.length))}


def rods(hand: Hand) -> Given:
    rod = hand.number("", 200.0, 300.0)
    return {"rod_mm": rod, "measured_mm": rod + hand.number("", -0.5, 0.5), "radius_mm": hand.number("", 90.0, 150.0)}


def lengths_of_ratio(hand: Hand) -> Given:
    found = {"commanded_mm": hand.number("", 50.0, 150.0), "measured_mm": hand.number("", 50.0, 150.0)}
    return found | {"U_measured_mm": hand.number("", 0.01, 0.5), "shrink_ratio": hand.number("", 0.0, 0.05)}


def parts(hand: Hand) -> Given:
    belt = {"kind": "belt", "pitch_mm": hand.number("", 2.0, 3.0), "teeth": hand.count() + 10, "full_steps": 200}
    return {"parts": belt | {"microsteps": hand.pick(16, 32), "gears": hand.pick("", "3/1", "44/14 60/20")}}


def template(hand: Hand) -> Given:
    text = "steps_x: M92 X{value}\n# a remark\nsteps_y: M92 Y{value:2}\n"
    return {"text": hand.pick(text, text * 2, text[:-3], "x: M1 Y{value}")}


def listing(hand: Hand) -> Given:
    from core.guidance.settinglines import lines_of_template

    text = hand.pick("M92 X80.1 Y80\n", "echo: M92 X80 Y1e999", "M92 X", "M92 X80.00 ; Y80")
    return {"template": lines_of_template("steps_x: M92 X{value}\nsteps_y: M92 Y{value:2}\n"), "listing": text}


def scores(hand: Hand) -> Given:
    step = [200.0, 205.0, 210.0, 215.0] * 2
    score = [float(hand.between(0, 4)) if not hand.chance(hand.wild) else hand.number("score") for _ in step]
    return {"step": step, "score": hand.short(score), "judge": ["A"] * 4 + [hand.word("B")] * 4}


def successes(hand: Hand) -> Given:
    step = [200.0 + 5.0 * place for place in range(8)]
    good = [place >= hand.between(2, 6) for place in range(8)]
    return {"step": step, "success": hand.short(good), "share": hand.number("", 0.5, 0.95)}


def design(hand: Hand) -> Given:
    count = max(hand.length, 1)
    columns = np.column_stack([np.ones(count), hand.numbers("_mm", count)])
    weights = hand.pick(None, np.array([hand.number("", 0.5, 2.0) for _ in range(count)]))
    return {"design": columns, "y": hand.short(hand.numbers("_mm", count)), "weights": weights, "rank_ratio": 1e-10}


def arcs(hand: Hand) -> Given:
    count = hand.length
    x, y = (np.array([hand.number("", 1.0, 20.0) for _ in range(count)]) for _ in range(2))
    none, far = np.full(count, np.nan), np.array([hand.number("", 15.0, 90.0) for _ in range(count)])
    centre = hand.pick([none, none, far], [x / 2, y / 2, none])
    places = {"x_mm": x, "y_mm": y, "z_mm": np.zeros(count), "centre_mm": centre}
    return places | {"clockwise": np.arange(count) % 2 == 0, "line": np.arange(count)}


def widths(hand: Hand) -> Given:
    lead = [0.0, 0.02, 0.04, 0.06, 0.08, 0.1]
    wide = [near(hand, 0.45, 0.1 * abs(one - 0.05) + 0.005, 5) for one in lead]
    return {"lead_s": [hand.number("_s") if hand.chance(hand.wild / 4) else one for one in lead], "widths_mm": wide}


def places(hand: Hand) -> list[Place]:
    kinds = (FeatureKind.OUTSIDE, FeatureKind.TOOTH, FeatureKind.NOTCH)
    return [Place(hand.pick(*kinds), hand.pick("x", "y"), hand.number("", 10.0, 120.0)) for _ in range(hand.length)]


def planned(hand: Hand) -> Given:
    all_ = places(hand)
    return {"places": all_, "times": hand.short([hand.between(0, 3) for _ in all_])}


def next_one(hand: Hand) -> Given:
    kind = ["outside"] * 4 + ["notch"] * 2
    nominal = [10.0, 40.0, 70.0, 100.0, 20.0, 60.0]
    measured = [one + hand.number("", -0.1, 0.1) for one in nominal]
    fit = fit_size_error(nominal, measured, kind, axis=[hand.pick("x", "y") for _ in kind])
    return planned(hand) | {"fit": fit, "wanted": hand.word("", "scale_x", "wall_outset")}


def program(hand: Hand) -> Given:
    lines = ["G90", "M82", "G21", "G28", "M109 S210", "G1 X10 Y10 E1 F1800", hand.word("G1 X20", "G92 E0", "M999")]
    text = "\n".join(lines).encode()
    return {"pieces": [text[:20], text[20:], hand.pick(b"", b"\xff\x00")], "filament_mm": hand.number("", 1.7, 2.9)}


def mostly(recipe: Callable[[Hand], Given]) -> Callable[[Hand], Given]:
    """Return the recipe; where anything goes it is left aside now and then, and each argument drawn by itself."""
    return lambda hand: {} if hand.chance(hand.wild / 3) else recipe(hand)


ARGUMENTS = {
    f"core.{name}": mostly(recipe)
    for name, recipe in {
        "filament.density.measure_density": density,
        "filament.diameter.measure_diameter": diameter,
        "filament.massperlength.measure_mass_per_length": by_length,
        "flow_trials.ceiling.fit_ceiling": ceiling,
        "flow_trials.mass.measure_mass": mass,
        "flow_trials.top.measure_top": top,
        "flow_trials.wall.measure_wall": wall,
        "guidance.flowadvice.judge_wall": wall,
        "guidance.flowadvice.judge_mass": mass,
        "guidance.flowadvice.judge_top": top,
        "guidance.halfspeedadvice.judge_diagnosis": diagnosis,
        "motion_trials.halfspeed.judge_half_speed": half_speed,
        "guidance.ringingadvice.judge_ringing": ringing,
        "motion_trials.ringing.read_ringing": ringing,
        "guidance.ringingadvice.judge_log": log,
        "guidance.settinglines.lines_of_template": template,
        "guidance.settinglines.compare_listing": listing,
        "machine_geometry.delta.scale_from_rods": rods,
        "machine_geometry.firstlayer.measure_first_layer": first_layer,
        "machine_geometry.lostmotion.fit_lost_motion": lost_motion,
        "machine_geometry.mixup.ratio_from_lengths": lengths_of_ratio,
        "machine_geometry.parts.drive_from_parts": parts,
        "machine_geometry.parts.gears_from_text": lambda hand: {"text": hand.word("43/12", "3/1 20/60", "", "2.5")},
        "machine_geometry.reversal.check_resolution": lambda hand: {"resolution_mm": hand.number("", 0.001, 0.1)},
        "machine_geometry.reversal.refuse_gross": lambda hand: {"reversal_mm": hand.number("", 0.0, 2.0)},
        "machine_geometry.squareness.squareness_from_flips": flips,
        "measuring.instrumentkinds.usual_limit": lambda hand: {
            "kind": hand.word(*KINDS),
            "value": hand.number("", -20.0, 150.0),
        },
        "measuring.linefit.fit_linear": design,
        "measuring.scores.checked_scores": scores,
        "measuring.scores.check_score": lambda hand: {"value": hand.pick(0.0, 3.0, 2.5, hand.number("score"))},
        "measuring.success.fit_success": successes,
        "motion_trials.arcs.arcs_of": arcs,
        "motion_trials.lag.width_scatter_mm2": widths,
        "motion_trials.lag.fit_lag": widths,
        "part_size.features.kind_from_text": lambda hand: {"text": hand.word(*FeatureKind, " Outside ")},
        "part_size.nextreading.next_reading": next_one,
        "part_size.planner.expected_uncertainties": planned,
        "pieces.toolpathcheck.check_program": program,
        "pieces.toolpathwords.command_from_line": lambda hand: {
            "line": hand.word("G1 X1 Y2 E3 F60", "; x", "M109 S210")
        },
        "part_size.promise.Promise.finest_class": lambda hand: {"classes": ["f", "m", hand.word("c", "IT7")]},
    }.items()
}
# The list of choices is the program's own, whatever the words are.
ARGUMENTS |= {
    "core.measuring.choices.one_of": lambda hand: {"choices": FeatureKind, "word": hand.word(*FeatureKind)},
    "core.measuring.choices.each_of": lambda hand: {
        "choices": FeatureKind,
        "words": [hand.word(*FeatureKind) for _ in range(hand.many())],
    },
}

RECIPES: dict[Any, Callable[[Hand], Any]] = {
    DiameterReadings: diameter_readings,
    FeedReadings: feed_readings,
    PadReadings: pads,
    PieceWishes: wishes,
    ReversalReadings: reversal_readings,
    Ripple: ripple,
    SquareReadings: square_readings,
    Strands: strands,
    Use: use,
}

"""Arguments that must fit one another: columns of documented shapes, names from the program's own lists.

What a calculation hands on to another has the shapes that it promises. Where a person's readings come in, `Hand.many`
lets the columns differ in length, so that the refusal is asked for too.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from core.guidance.decisions import SETTABLE
from core.machine_geometry.squareness import Plane
from core.measuring.brokenstick import fit_broken_stick
from core.measuring.checkreadings import CheckReadings
from core.measuring.criteria import Aim, Scores
from core.measuring.instrumentkinds import KINDS, LightGap, parts_of
from core.measuring.linefit import LinearFit, fit_linear
from core.measuring.ordinal import Ordinal, fit_proportional_odds
from core.motion_trials.halfspeed import Run as HalfSpeedRun
from core.motion_trials.ladders import LadderReadings, ladders
from core.part_size.features import AXES, FEATURES, FeatureKind, design_terms, parameter_names, travel_centres
from core.part_size.lengths import LONGEST_MM, SHORTEST_MM
from core.part_size.scatter import feature_means, fit_with_scatter
from core.pieces.catalogue import set_names
from core.pieces.toolpath import PathBead
from core.pieces.toolpathdigits import Column
from core.pieces.toolpathdraw import Setup
from core.pieces.toolpathtrials import TRIALS, TrialKind
from core.records.rows import SeriesPoint
from tests.properties.kinds import Hand

NAMES = ("scale_x", "wall_outset", "flow_ceiling_220c", "diameter", "reversal_y", "ladder_lag", "promise_outside")
Given = dict[str, Any]


def column(hand: Hand, name: str, count: int) -> Any:
    """Return an array of so many numbers."""
    return np.array(hand.numbers(name, count), dtype=float)


def size_columns(hand: Hand) -> Given:
    """Return lengths of a part with their readings, as a person reads them, and sometimes as nobody does."""
    count = hand.length
    axis = [hand.word("x", "x", "y", "z") for _ in range(hand.many())]
    on_xy = tuple(kind for kind in FEATURES if kind is not FeatureKind.HEIGHT)
    kind = [str(hand.word(*((FeatureKind.HEIGHT, FeatureKind.TRAVEL) if along == "z" else on_xy))) for along in axis]
    nominal = hand.alike(hand.number("", 5.0, 200.0) for _ in range(count))
    error = hand.alike(hand.number("", -0.4, 0.4) for _ in nominal)
    measured = [n + e for n, e in zip(nominal, error, strict=True)]
    return {"nominal_mm": nominal, "measured_mm": measured, "kind": kind, "axis": axis}


def fit_size_error(hand: Hand) -> Given:
    feature = hand.pick(None, [hand.pick("a", "b", "") for _ in range(hand.many())])
    return {**size_columns(hand), "feature": feature}


def lengths(hand: Hand) -> Given:
    """Return what follows from checked lengths."""
    count = max(hand.length, 1)
    axes = [hand.pick(*AXES) for _ in range(count)]
    kinds = [hand.pick(FeatureKind.HEIGHT if a == "z" else hand.pick(*FEATURES), FeatureKind.TRAVEL) for a in axes]
    kinds = [
        k if (k is FeatureKind.HEIGHT) <= (a == "z") else FeatureKind.OUTSIDE for k, a in zip(kinds, axes, strict=True)
    ]
    nominal = np.clip(column(hand, "_mm", count), -LONGEST_MM, LONGEST_MM)
    nominal = np.where([k is FeatureKind.TRAVEL for k in kinds], nominal, np.maximum(nominal, SHORTEST_MM))
    error = np.array([hand.number("", -0.5, 0.5) for _ in range(count)])
    names = parameter_names(kinds, axes)
    terms = design_terms(names, kinds, axes, nominal, travel_centres(kinds, axes, nominal))
    means = feature_means(error, [(str(i),) for i in range(count)])
    return {
        "kinds": kinds,
        "axes": axes,
        "nominal_mm": nominal,
        "error_mm": error,
        "names": names,
        "terms": terms,
        "means": means,
        "centre_mm": None,
        "labels": [(str(i // 2),) for i in range(count)],
    }


def run_checks(hand: Hand) -> Given:
    given = lengths(hand)
    return {**given, "scattered": fit_with_scatter(given["terms"].design, given["means"], 0.01, None)}


def with_scatter(hand: Hand) -> Given:
    given = lengths(hand)
    return {
        "design": given["terms"].design,
        "means": given["means"],
        "sd_hand": hand.pick(None, (0.02, 9)),
        "resolution_mm": hand.pick(0.01, 0.001),
    }


def reported(hand: Hand) -> Given:
    given = lengths(hand)
    return {"terms": given["terms"], "fit": fit_linear(given["terms"].design, given["error_mm"])}


def telling(hand: Hand) -> Given:
    given = reported(hand) | lengths(hand)
    fit = fit_linear(given["terms"].design, given["error_mm"])
    rows = np.eye(len(given["terms"].names))
    if not fit.null_space.size or not given["axes"]:
        hand.reject()
    return {
        "terms": given["terms"],
        "null_space": fit.null_space,
        "combination": rows[0],
        "kinds": given["kinds"],
        "axes": given["axes"],
        "lengths_mm": given["nominal_mm"],
    }


def terms_of(hand: Hand) -> Given:
    given = lengths(hand)
    return {
        "self": given["terms"],
        "kind": given["kinds"][0],
        "axis": given["axes"][0],
        "name": given["names"][0],
        "combination": np.ones(len(given["names"])),
    }


def stick(hand: Hand) -> Given:
    count = max(hand.length, 5)
    x, y = np.arange(count) * 1.0, column(hand, "share_ratio", count)
    return {"x": x, "y": y, "places": hand.numbers("", 3), "stick": fit_broken_stick(x, y, 0.05)}


def readings_of_check(hand: Hand, *, even: bool = False) -> CheckReadings:
    """Return one check of an instrument; sometimes a column is short, unless it has to be even."""
    hand.ragged = hand.ragged and not even
    kind = hand.pick(*KINDS)
    part = [hand.word(*parts_of(kind)) for _ in range(hand.many())]
    reference = [hand.pick(None, hand.number("", 5.0, 150.0)) for _ in range(hand.many())]
    half = [hand.pick(None, hand.number("", 0.0001, 0.002)) for _ in range(hand.many())]
    measured = [(r or 0.0) + hand.number("", -0.02, 0.02) for r in reference]
    step = hand.number("", 0.001, 0.02)
    limit, land = hand.pick(None, hand.number("u_")), hand.pick(None, hand.number("", 0.0, 0.5))
    return CheckReadings(
        kind, part, reference, half, measured, step, limit, hand.number("", 0.0, 3.0), land, hand.pick(*LightGap)
    )


def shaped_fit(hand: Hand) -> tuple[LinearFit, int]:
    """Return a fit and the number of its parameters."""
    rows, terms = max(hand.length, 1), hand.between(1, 4)
    design = column(hand, "x", rows * terms).reshape(rows, terms)
    return fit_linear(design, column(hand, "y", rows)), terms


def determines(hand: Hand) -> Given:
    fit, terms = shaped_fit(hand)
    return {"self": fit, "combination": column(hand, "c", terms)}


def scored(hand: Hand) -> Given:
    """Return scores of specimens by two judges."""
    count = 2 * hand.between(3, 6)
    score = np.array([float(hand.between(0, 4)) for _ in range(count)])
    place = np.repeat(np.arange(count // 2), 2)
    who = np.tile([0, 1], count // 2)
    return {
        "score": score,
        "y": score,
        "place": place,
        "who": who,
        "specimen": place,
        "judge": who,
        "design": (place[:, None] == np.arange(count // 2)).astype(float),
        "piece": None,
        "draws": 50,
        "prior_sd": 3.0,
        "scale": (0.0, 1.0, 2.0, 3.0, 4.0),
        "weight": None,
    }


def ordinal_fit(hand: Hand) -> Ordinal:
    """Return a fit of scores."""
    given = scored(hand)
    return fit_proportional_odds(given["score"], given["design"], scale=given["scale"])


def scores_of_steps(hand: Hand) -> Given:
    """Return steps, each scored by two judges."""
    count = hand.between(0, 6) if hand.wild else hand.between(3, 6)
    step = [hand.number("speed") if hand.chance(hand.wild) else float(190 + 5 * (row // 2)) for row in range(2 * count)]
    score = [float(hand.between(0, 4)) if not hand.chance(hand.wild) else hand.number("score") for _ in step]
    return {
        "step": step,
        "score": score,
        "judge": [hand.word(who) for who in "AB" * count],
        "value": score,
        "speed_mm_s": step,
        "level": step,
        "piece": None,
        "time_s": {one: hand.number("_s") for one in step},
        "u_ratio": None,
    }


def criteria(hand: Hand) -> Given:
    kind = hand.pick(*[one for one in ladders().values() if one.criteria])
    given = scores_of_steps(hand)
    one = Scores(given["step"], given["score"], given["judge"], [str(place) for place in range(len(given["step"]))])
    return {"criteria": kind.criteria, "scores": {criterion.key: one for criterion in kind.criteria}}


def ladder_readings(hand: Hand, *, criteria: bool) -> LadderReadings:
    """Return a ladder that was read: every step by two judges, by every criterion where it has some."""
    kind = hand.pick(*[one for one in ladders().values() if bool(one.criteria) == criteria])
    keys = [one.key for one in kind.criteria] or [""]
    rows = [
        (step, judge, key) for step in np.linspace(kind.low, kind.high, 4).tolist() for judge in "AB" for key in keys
    ]
    value = [
        hand.number("score") if hand.chance(hand.wild) else float((hand.between(0, 4) + row // 2) % 5)
        for row in range(len(rows))
    ]
    judge = [hand.word(who) for _, who, _ in rows]
    step, names = [at for at, _, _ in rows], [key for _, _, key in rows]
    return LadderReadings(
        kind,
        kind.read,
        step,
        value,
        judge,
        None,
        [f"{at} {who}" for at, who, _ in rows] if criteria else (),
        names if criteria else (),
        hand.pick(*Aim),
    )


def of_criteria(hand: Hand) -> Given:
    return {"kind": hand.pick(*[one for one in ladders().values() if one.criteria])}


def pieces(hand: Hand) -> Given:
    """Return errors of a few pieces; sometimes one column is short."""
    piece = [number for number in range(hand.between(0 if hand.wild else 1, 4)) for _ in range(3)]
    error = hand.alike(hand.number("", -0.1, 0.1) for _ in piece)[: len(piece) - hand.ragged]
    nominal = [
        hand.number("_mm") if hand.chance(hand.wild) else (20.0, 50.0, 90.0)[row % 3] for row in range(len(piece))
    ]
    return {"piece": piece, "nominal_mm": nominal, "error_mm": error}


def values_of_steps(hand: Hand) -> Given:
    """Return values of a ladder that is measured."""
    count = hand.length if hand.wild else max(hand.length, 3)
    return {
        "step": hand.numbers("_c", count),
        "value": hand.numbers("_mm", hand.pick(count, count, hand.many())),
        "u_ratio": hand.pick(None, hand.numbers("u_", hand.pick(count, count, hand.many()))),
    }


def lines(hand: Hand) -> Given:
    """Return the readings of several lines, put together."""
    each, many = hand.between(2, 4), hand.between(1, 3)
    x = np.tile(np.arange(each) * 1.5, many)
    return {
        "of_line": np.repeat(np.arange(many), each),
        "first": np.arange(many) * each,
        "count": np.full(many, each),
        "x": x,
        "y": column(hand, "_mm", each * many),
        "w": np.full(each * many, 2.0),
        "u_y": hand.pick(None, np.full(each * many, 0.1)) if each > 2 else np.full(each * many, 0.1),
    }


def line(hand: Hand) -> Given:
    """Return the readings of one line, with and without uncertainties."""
    count = hand.length if hand.wild else max(hand.length, 3)
    u_y = hand.pick(None, [hand.number("u_") for _ in range(count)])
    return {
        "x": hand.numbers("_mm", count),
        "y": hand.numbers("_mm", hand.pick(count, count, hand.many())),
        "u_y": u_y,
        "u_x": hand.pick(None, None if u_y is None else [hand.number("u_") for _ in range(count)]),
    }


def text_columns(hand: Hand) -> Given:
    """Return columns of one length, and runs of them."""
    count = hand.between(1, 6)
    columns = [Column(letter, column(hand, "_mm", count), 3) for letter in "XYE"]
    return {"columns": columns, "runs": [slice(0, count)]}


def on_bed(hand: Hand) -> Given:
    """Return an axis that a piece lies along."""
    return {"axis": hand.pick("x", "y")}


def junctions(hand: Hand) -> Given:
    """Return moves as they are driven; what they come from is checked when the path is read."""
    count = hand.length
    lay = {
        name: np.array([hand.number("", low, high + low) for _ in range(count)])
        for name, low, high in (
            ("length_mm", 0.1, 100.0),
            ("acceleration_mm_s2", 100.0, 2e4),
            ("cap_mm_s", 1.0, 300.0),
            ("speed_mm_s", 100.0, 300.0),
            ("start_mm_s", 0.1, 0.9),
            ("end_mm_s", 0.1, 0.9),
        )
    }
    lay["cap_mm_s"] = np.append(lay["cap_mm_s"], 0.0)
    lay["cosine_ratio"] = np.array([hand.number("", -1.0, 1.0) for _ in range(count)])
    return {**lay, "deviation_mm": hand.number("", 0.0, 0.1)}


def half_speed(hand: Hand) -> Given:
    """Return scores of the runs of a speed diagnosis."""
    count = hand.length
    return {
        "run": [hand.pick(*HalfSpeedRun) for _ in range(count)],
        "score": hand.numbers("score", hand.pick(count, count, hand.many())),
        "judge": [hand.pick("A", "B") for _ in range(hand.pick(count, count, hand.many()))],
    }


def of_trial(hand: Hand, kind: TrialKind) -> Given:
    """Return what a direct trial draws."""
    setup = Setup(
        PathBead(hand.number("", 0.4, 0.5), hand.number("", 0.1, 0.3), 0.4, hand.number("", 0.02, 0.05)),
        hand.number("", 1.7, 1.8),
        hand.number("", 20.0, 60.0),
        hand.number("", 10.0, 30.0),
        (110.0, hand.number("", 100.0, 120.0)),
        tuple(hand.numbers("_ratio", 5)),
    )
    return {"kind": kind, "values": values_of_trial(hand, kind), "setup": setup}


def cycle(hand: Hand) -> Given:
    """Return readings of a dial at places approached from both sides; sometimes one column is short."""
    targets = [10.0, 60.0, 110.0][: hand.between(1, 3)]
    rows = [(target, way) for target in targets for way in ("up", "down") for _ in range(hand.between(2, 3))]
    count = len(rows) if not hand.ragged else hand.between(0, len(rows))
    target = [t for t, _ in rows][:count]
    off = hand.alike(hand.number("", 0.0, 0.05) for _ in rows)
    return {
        "target_mm": [hand.number("_mm") if hand.chance(hand.wild / 4) else t for t in target],
        "place": [f"at {t:g}" for t in target],
        "approach": [hand.word(way) for _, way in rows],
        "reading_mm": [t + more for (t, _), more in zip(rows, off, strict=True)],
        "axis": hand.word("x"),
        "resolution_mm": hand.number("", 0.002, 0.01),
    }


def pushes(hand: Hand) -> Given:
    """Return readings of a dial at rest and pushed; sometimes one column is short."""
    rows = [
        (side, hold) for side in ("along", "sideways") for _ in range(hand.between(1, 3)) for hold in ("rest", "pushed")
    ]
    count = len(rows) if not hand.ragged else hand.between(0, len(rows))
    reading = [hand.number("", 0.0, 0.02) + (0.1 if hold == "pushed" else 0.0) for _, hold in rows]
    return {
        "side": [hand.word(side) for side, _ in rows][:count],
        "hold": [hand.word(hold) for _, hold in rows],
        "reading_mm": hand.alike(reading),
        "axis": hand.word("x"),
        "resolution_mm": hand.number("", 0.002, 0.01),
    }


def diagonals(hand: Hand) -> Given:
    """Return readings of two diagonals; sometimes one column is short."""
    part = hand.pick(("outer", "inner"), ("drawn",), ("outer",))
    rows = [(d, p) for d in "12" for p in part for _ in range(hand.between(1, 3))]
    count = len(rows) if not hand.ragged else hand.between(0, len(rows))
    off = {"outer": 10.0, "inner": -10.0, "drawn": 0.0}
    reading = [141.42 + off[p] + hand.number("", -0.2, 0.2) for _, p in rows]
    return {
        "plane": hand.word(Plane.XY),
        "side_a_mm": hand.number("", 99.0, 101.0),
        "side_b_mm": hand.number("", 99.0, 101.0),
        "reading_mm": reading,
        "diagonal": [hand.word(d) for d, _ in rows][:count],
        "part": [hand.word(p) for _, p in rows],
    }


def arcs(hand: Hand) -> Given:
    """Return chords and centres."""
    count = hand.length
    lay = {name: column(hand, "_mm", count) for name in ("x_mm", "y_mm", "z_mm")}
    centre = tuple(np.array([hand.pick(np.nan, hand.number("", -90.0, 90.0)) for _ in range(count)]) for _ in "IJR")
    return {**lay, "centre_mm": centre, "clockwise": np.arange(count) % 2 == 0, "line": np.arange(count)}


def log(hand: Hand) -> Given:
    """Return a record of an accelerometer."""
    count = hand.pick(256, 300, 3)
    wave = hand.number("", 100.0, 1000.0) * np.sin(np.arange(count) * hand.between(1, 20) / 10.0)
    wave[0] = hand.number("", -100.0, 100.0)
    step = hand.pick(0.0025, max(min(hand.number("_s"), 1e300), -1e300))
    return {"time_s": np.arange(count) * step, "acceleration_mm_s2": wave, "name": "x"}


def shop_cells(hand: Hand) -> Given:
    count = hand.length
    return {
        "machine": np.array([hand.pick(0, 1, 2) for _ in range(count)], dtype=int),
        "difference_ratio": np.array([hand.number("", -0.01, 0.01) for _ in range(count)]),
        "u_ratio": np.array([hand.number("", 1e-4, 1e-3) for _ in range(count)]),
    }


def values_of_trial(hand: Hand, kind: TrialKind, *, checked: bool = True) -> dict[str, float]:
    """Return what a direct trial asks; inside its limits where they were checked."""
    entries = TRIALS[kind].entries
    chosen = {entry.key: float(hand.pick(entry.usual, entry.low, entry.high)) for entry in entries}
    return chosen if checked else {entry.key: hand.number("", entry.low, entry.high) for entry in entries}


def series(hand: Hand) -> Any:
    """Return a store's answer to a name: a series of results."""
    points = [hand.of(SeriesPoint) for _ in range(hand.between(0, 4))]
    return lambda _name: points


def set_of_pieces(hand: Hand) -> str:
    """Return the key of a set."""
    return str(hand.pick(*set_names()))


SETTABLE_NAMES = tuple(kind.name for kind in SETTABLE)

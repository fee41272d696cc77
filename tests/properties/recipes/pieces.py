"""Pieces to print, and paths laid for them."""

from __future__ import annotations

from typing import Any

import numpy as np

from core.pieces.bounds import Bounds
from core.pieces.catalogue import plan_set
from core.pieces.comb import plan_comb
from core.pieces.piece import Piece, PrintSet
from core.pieces.solid import Solid, solids_of
from core.pieces.toolpath import Laying, Moves, PathBead, Stroke, bead_stroke, lay
from core.pieces.toolpathtrials import TrialKind
from core.pieces.view import view_of
from tests.properties import shapes
from tests.properties.kinds import Hand, Recipe


def bounds(hand: Hand) -> Bounds:
    """Return bounds of a machine."""
    return Bounds(
        hand.number("", 120.0, 310.0),
        hand.pick(120.0, 3000.0, hand.number("", 120.0, 310.0)),
        hand.number("", 30.0, 220.0),
        hand.pick(100.0, 150.0, 300.0, hand.number("", 100.0, 300.0)),
        hand.number("", 9.0, 15.0),
        hand.pick(40.0, 0.0, hand.number("", 10.0, 50.0)),
        hand.pick(1000.0, hand.number("", 30.0, 50.0)),
        hand.number("", 0.1, 0.3),
        hand.number("", 0.1, 0.3),
        hand.pick(0.25, 0.4, 0.8, hand.number("", 0.2, 0.8)),
    )


def solid_pieces(hand: Hand) -> PrintSet:
    """Return a set of pieces."""
    return plan_set(shapes.set_of_pieces(hand), bounds(hand))


def stroke(hand: Hand) -> Stroke:
    """Return a bead in space."""
    corners = [[hand.number("", 0.0, 200.0), hand.number("", 0.0, 200.0)] for _ in range(hand.between(2, 5))]
    return bead_stroke(corners, hand.pick(0.2, 0.4), path_bead(hand), hand.number("", 10.0, 80.0), 0)


def path_bead(hand: Hand) -> PathBead:
    """Return a bead as a path needs it."""
    return PathBead(hand.number("", 0.4, 0.5), hand.number("", 0.1, 0.3), 0.4, hand.number("", 0.02, 0.05))


def laying(hand: Hand) -> Laying:
    """Return how a path is laid."""
    return Laying(
        hand.number("_mm_s"), hand.number("", 1.0, 20.0), hand.number("", 0.0, 1.0), 30.0, hand.pick(0.0, 0.4)
    )


def moves(hand: Hand) -> Moves:
    """Return the moves of a few strokes."""
    return lay([stroke(hand) for _ in range(hand.between(1, 3))], laying(hand), 10.0)


RECIPES: dict[Any, Recipe] = {
    Bounds: bounds,
    Stroke: stroke,
    PathBead: path_bead,
    Laying: laying,
    Moves: moves,
    PrintSet: solid_pieces,
    Piece: lambda hand: hand.pick(*solid_pieces(hand).pieces),
    Solid: lambda hand: hand.pick(*solids_of(solid_pieces(hand))),
}


ARGUMENTS: dict[str, Recipe] = {
    "pieces.toolpathlines.ladder_strokes": lambda hand: {"factor_ratio": hand.numbers("_ratio", 5)},
    "pieces.toolpathlines.lag_strokes": lambda hand: {"lag_s": hand.numbers("_s", 5)},
    "pieces.toolpathlines.strand_strokes": lambda hand: {"rate_mm3_s": [2.0, 4.0], "filament_mm": 1.75},
    "pieces.toolpathmoves.plain_places": lambda hand: {"place_mm": shapes.column(hand, "_mm", 5)},
    "pieces.toolpathdigits.move_text": shapes.text_columns,
    "pieces.toolpathdigits.scaled_whole": lambda hand: {
        "value": np.abs(hand.numbers("_mm", 4)),
        "decimals": hand.between(0, 5),
    },
    "pieces.toolpathdigits.word_text": lambda hand: {"letter": "X", "decimals": hand.between(0, 5)},
    "pieces.toolpath.lay": lambda hand: {"strokes": [stroke(hand) for _ in range(hand.between(1, 3))]},
    "pieces.comb.plan_comb": shapes.on_bed,
    "pieces.comb.plan_half_combs": shapes.on_bed,
    "pieces.comb.comb_minds": lambda hand: {**shapes.on_bed(hand), "piece": plan_comb("x", bounds(hand))},
    "pieces.catalogue.plan_set": lambda hand: {"key": shapes.set_of_pieces(hand)},
    "pieces.view.View.at_px": lambda hand: {
        "self": view_of(solids_of(solid_pieces(hand))[:1], 80, 60, 5),
        "points_mm": np.array([[1.0, 2.0, 3.0]]),
    },
    "pieces.toolpathsolids.layer_heights_mm": lambda hand: {"bead": path_bead(hand)},
    "pieces.toolpathdraw.draw_box": lambda hand: shapes.of_trial(hand, TrialKind.WALL_BOX),
    "pieces.toolpathdraw.draw_ringing": lambda hand: shapes.of_trial(hand, TrialKind.RINGING),
    "pieces.toolpathdraw.draw_pads": lambda hand: shapes.of_trial(hand, TrialKind.TOP_PADS),
    "pieces.toolpathdraw.draw_ladder": lambda hand: shapes.of_trial(hand, TrialKind.FLOW_LADDER),
    "pieces.toolpathdraw.draw_lag": lambda hand: shapes.of_trial(hand, TrialKind.LAG_LINES),
    "pieces.toolpathdraw.draw_strands": lambda hand: shapes.of_trial(hand, TrialKind.STRANDS),
    "pieces.toolpathdraw.draw_feed": lambda hand: shapes.of_trial(hand, TrialKind.FEED),
    "pieces.toolpathdraw.draw_pen": lambda hand: shapes.of_trial(hand, TrialKind.PEN_LINES),
    "pieces.toolpathtrials.draw_trial": lambda hand: shapes.of_trial(hand, hand.pick(*TrialKind)),
    "pieces.toolpath.bead_stroke": lambda hand: {
        "points_mm": [[hand.number("_mm"), hand.number("_mm")] for _ in range(hand.between(2, 4))],
        "speed_mm_s": hand.number("_mm_s"),
    },
    "pieces.toolpathsolids.box_strokes": lambda hand: {"speed_mm_s": hand.numbers("_mm_s", hand.between(1, 3))},
    "pieces.toolpathsolids.pad_strokes": lambda hand: {"speed_mm_s": hand.numbers("_mm_s", hand.between(1, 3))},
    "pieces.holes.sides_of": lambda hand: {"diameter_mm": hand.number("", 0.5, 300.0)},
    "pieces.view.view_of": lambda hand: {
        "solids": solids_of(solid_pieces(hand))[:2],
        "width_px": hand.pick(80, 60, -1, 0, 5, 2_000_000),
        "height_px": hand.pick(60, 80, 0, 10, 2_000_000),
        "margin_px": hand.pick(5, 0, -3, 40),
    },
    "pieces.view.png_of": lambda hand: {"view": view_of(solids_of(solid_pieces(hand))[:1], 80, 60, 5)},
}

"""Beads, conditions of a print, flow factors."""

from __future__ import annotations

import typing
from typing import Any

import numpy as np

from core.flow_trials.bead import Bead
from core.flow_trials.combine import KnownFlow, combine_flow
from core.flow_trials.conditions import PrintConditions
from core.quantity import Estimate
from tests.properties.kinds import Hand, Recipe


def laid_bead(hand: Hand) -> Bead:
    """Return a bead that a nozzle lays."""
    height = hand.number("", 0.1, 0.3)
    return Bead(hand.number("", 0.35, 0.6), height, hand.of(typing.get_type_hints(Bead)["model"]))


def print_conditions(hand: Hand) -> PrintConditions:
    """Return conditions that a hot end bears."""
    return PrintConditions(
        laid_bead(hand),
        hand.pick(0.4, 0.5),
        hand.number("", 180.0, 260.0),
        hand.number("", 1.0, 15.0),
        hand.number("", 0.8, 1.2),
        280.0,
    )


def flows(hand: Hand) -> list[Estimate]:
    """Return flow factors by one to three ways."""
    names = ("flow_ratio_wall", "flow_ratio_mass", "flow_ratio_top")
    return [
        Estimate(name, hand.number("", 0.8, 1.2), abs(hand.number("u_")), np.inf, "1")
        for name in names[: hand.between(1, 3)]
    ]


RECIPES: dict[Any, Recipe] = {
    KnownFlow: lambda hand: KnownFlow(flows(hand)[0], hand.of(PrintConditions), hand.count()),  # asked for by its name
    Bead: laid_bead,
    PrintConditions: print_conditions,
}


ARGUMENTS: dict[str, Recipe] = {
    "flow_trials.combine.combine_flow": lambda hand: {"estimates": flows(hand)},
    "flow_trials.combine.conflict_words": lambda hand: {
        "flow": combine_flow(flows(hand), 1.0),
        "in_force_ratio": 1.0,
        "bead": laid_bead(hand),
    },
}

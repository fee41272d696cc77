"""Drives, ratios and readings of axes."""

from __future__ import annotations

from typing import Any

from core.machine_geometry.firstlayer import Printed
from core.machine_geometry.mixup import RatioInterval, ratio_from_lengths
from core.machine_geometry.parts import Drive, DriveKind, Reeving
from tests.properties import shapes
from tests.properties.kinds import Hand, Recipe


def drive(hand: Hand) -> Drive:
    """Return a drive of any kind."""
    kind = hand.pick(*DriveKind)
    own: dict[str, Any] = {
        DriveKind.BELT: {"pitch_mm": hand.pick(2.0, 3.0, 2.032), "teeth": hand.pick(16, 20, 17)},
        DriveKind.SCREW: {"pitch_mm": hand.pick(1.0, 2.0, 1.5), "starts": hand.pick(1, 4)},
        DriveKind.RACK: {"module_mm": 1.0, "teeth": hand.pick(20, 25), "helix_deg": hand.number("", 0.0, 30.0)},
        DriveKind.WHEEL: {"diameter_mm": hand.number("", 5.0, 40.0)},
        DriveKind.ROTARY: {},
    }[kind]
    reeving = Reeving.DIRECT if kind is DriveKind.ROTARY else hand.pick(*Reeving)
    gears = hand.pick((), ((3, 1),), ((44, 14), (20, 60)))
    return Drive(kind, hand.pick(200, 400), hand.pick(1, 16, 256), gears, reeving, u_ratio=hand.pick(None, 1e-3), **own)


def interval(hand: Hand) -> RatioInterval:
    """Return a ratio of lengths."""
    return ratio_from_lengths(hand.number("", 50.0, 150.0), hand.number("", 50.0, 150.0), hand.number("u_"))


RECIPES: dict[Any, Recipe] = {
    Drive: drive,
    RatioInterval: interval,
    Printed: lambda hand: Printed(hand.number("_mm", 0.05, 0.4), hand.number("_mm", -2.0, 2.0), 0.4),
}


ARGUMENTS: dict[str, Recipe] = {
    "machine_geometry.drive.exact_mm": lambda hand: {"number": hand.number("_mm")},
    "machine_geometry.quickcycle.refuse_moving_base": lambda hand: {
        "difference_mm": shapes.column(hand, "u_", max(hand.length, 1))
    },
    "machine_geometry.reversal.refuse_stray": lambda hand: {
        "readings_mm": shapes.column(hand, "_mm", 4),
        "rows": [0, 2, 3],
    },
    "machine_geometry.reversal.Reversal.estimate": lambda hand: {
        "stem": hand.pick("reversal", "accuracy", "systematic_up")
    },
    "machine_geometry.reversal.reversal_from_cycle": shapes.cycle,
    "machine_geometry.quickcycle.reversal_from_pairs": shapes.cycle,
    "machine_geometry.stiffness.stiffness_from_pushes": shapes.pushes,
    "machine_geometry.squareness.squareness_from_diagonals": shapes.diagonals,
    "machine_geometry.diagonals.read_diagonals": shapes.diagonals,
}

"""What is planted in the demo shop, in one place: the truth about every machine, lot and instrument, all invented.

The last table says which page must find which cause; `tests/demo/test_demo.py` holds the program to it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from core.guidance.verdict import Setting
from core.records.rows import Instrument, Lot, Machine, Motion

_MOTOR = {"full_steps": 200, "microsteps": 16}
BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, **_MOTOR}
SCREW = {"kind": "screw", "pitch_mm": 2.0, "starts": 4, **_MOTOR}
RACK = {"kind": "rack", "module_mm": 1.0, "teeth": 16, **_MOTOR}
WHEEL = {"kind": "wheel", "diameter_mm": 11.0, "gears": [[3, 1]], **_MOTOR}
LIMITS = {"nozzle_mm": 0.4, "hot_end_limit_c": 280.0, "bed_limit_c": 110.0, "max_flow_mm3_s": 24.0}


@dataclass(frozen=True, slots=True)
class Truth:
    """What is wrong with a machine; a sound one has little of everything.

    Attributes:
        scale: of X and Y, as a ratio.
        play_mm: lost motion of X and Y.
        outset_mm: how far every wall stands proud, a side.
        square_rad: angle between X and Y less 90 degrees.
        feed: fed of commanded.
        ringing_hz: of X and Y.
        gap_mm: how much wider than commanded the gap below the nozzle is, at a height offset of 0.
        good_to_mm_s: speed up to which corners stay clean.
    """

    scale: tuple[float, float] = (0.0002, -0.0001)
    play_mm: tuple[float, float] = (0.010, 0.012)
    outset_mm: float = 0.012
    square_rad: float = 0.0002
    feed: float = 0.999
    ringing_hz: tuple[float, float] = (41.0, 36.0)
    gap_mm: float = 0.04
    good_to_mm_s: float = 120.0


@dataclass(frozen=True, slots=True)
class LotTruth:
    """What a lot is really like: shrinkage (ratio), flow factor it needs, size, density, temperature, water (ratio)."""

    shrink: float
    flow: float = 1.0
    diameter_mm: float = 1.75
    ovality_mm: float = 0.012
    density_g_cm3: float = 1.24
    temperature_c: float = 215.0
    wet_ratio: float = 0.0001


def _machine(
    name: str, travel_mm: tuple[float, float, float], note: str, motion: Motion = Motion.CARTESIAN, **drives: Any
) -> Machine:
    parts = {"x": BELT, "y": BELT, "z": SCREW, "e": WHEEL} | drives
    return Machine(name, motion, *travel_mm, drives=parts, limits=LIMITS, note=note)


MACHINES: dict[str, tuple[Machine, Truth]] = {
    "Amsel": (_machine("Amsel", (240, 200, 180), "By the window. Set up from the first step to the last."), Truth()),
    # Y: the belt hangs loose.
    "Birch": (
        _machine("Birch", (400, 300, 300), "Long parts, two shifts."),
        Truth(play_mm=(0.012, 0.16), outset_mm=0.015),
    ),
    # Every wall stands proud by the same amount, whatever the length. The nozzle stands too near the bed. Corners blur
    # early.
    "Cobble": (
        _machine("Cobble", (250, 250, 230), "Enclosed.", Motion.CROSSED_BELT),
        Truth((0.0003, 0.0002), outset_mm=0.085, gap_mm=-0.06, good_to_mm_s=90.0),
    ),
    # X: the record says 20 teeth; a pulley of 16 is fitted.
    "Dune": (
        _machine("Dune", (200, 180, 160), "Bought used; the drive parts are from its papers."),
        Truth(scale=(-0.2, 0.0)),
    ),
    # X: the nut of the screw wears; see `ELM_WEAR_MM`.
    "Elm": (
        _machine("Elm", (300, 220, 150), "Screws and a rack, for stiff parts.", x=SCREW, y=RACK),
        Truth(outset_mm=0.02),
    ),
    "Fern": (_machine("Fern", (260, 260, 320), "New; not set up yet.", Motion.DELTA, z=BELT), Truth()),
}  # fmt: skip

# Reversal error of X on Elm, week by week: quiet for 14 weeks, then the nut wears.
ELM_WEAR_MM = (0.020,) * 14 + (0.026, 0.031, 0.037, 0.042)

LOTS: dict[str, tuple[Lot, LotTruth]] = {
    "Chalk 12": (
        Lot("Chalk 12", "PLA", "white", "dry box 1", "Alder Works", "A 2107", 1.75, 0.03, 212.0),
        LotTruth(0.0022),
    ),
    "Moss 5": (
        Lot("Moss 5", "PLA", "green", "dry box 1", "Alder Works", "A 2119", 1.75, 0.03, 212.0),
        LotTruth(0.0026),
    ),
    # Needs less flow than 1, and was wet.
    "Slate 7": (
        Lot("Slate 7", "PETG", "slate grey", "dry box 3", "Alder Works", "B 0713", 1.75, 0.03, 212.0),
        LotTruth(0.0040, 0.94, density_g_cm3=1.27, temperature_c=240.0, wet_ratio=0.004),
    ),
    # Shrinks for real, on every machine.
    "Rust 3": (
        Lot("Rust 3", "ABS", "red", "dry box 2", "Tern Mill", "T 33", 1.75, 0.05, 240.0),
        LotTruth(0.0085, density_g_cm3=1.04, temperature_c=245.0),
    ),
}


@dataclass(frozen=True, slots=True)
class GaugeTruth:
    """An instrument as it reads: `bias` on every reading, `sd` of a re-seated one; `later`: the bias in the end."""

    bias: float = 0.0
    sd: float = 0.006
    later: float | None = None


GAUGES: dict[str, tuple[Instrument, GaugeTruth]] = {
    "Caliper 1": (Instrument("Caliper 1", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008), GaugeTruth()),
    # Was dropped between two checks.
    "Caliper 2": (
        Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008),
        GaugeTruth(later=0.07),
    ),
    "Dial 1": (Instrument("Dial 1", "dial"), GaugeTruth(sd=0.003)),
    "Balance 1": (Instrument("Balance 1", "balance"), GaugeTruth(sd=0.003)),
}

PERSONS = ("Kim", "Noor", "Tove")


SUBJECT_OF: Mapping[str, str] = {"instruments": "instrument", "lots": "drying"}  # of a page, where not its key


@dataclass(frozen=True, slots=True)
class Cause:
    """A planted cause and where it must be found.

    Attributes:
        what: the cause.
        subject: key of the page that must find it.
        setting: where its verdict must put the remedy; None where no verdict names it but a chart.
        truth: estimates with what was planted.
        not_settings: what the verdict must not blame.
        page_subject: subject of the page's trials, where it is not the key of the page.
    """

    what: str
    subject: str
    setting: Setting | None
    machine: str = ""
    lot: str = ""
    instrument: str = ""
    axis: str | None = None
    truth: Mapping[str, float] = field(default_factory=dict)
    not_settings: tuple[Setting, ...] = (Setting.AXIS_SCALE,)

    @property
    def page_subject(self) -> str:
        """The subject of the trials of its page."""
        return SUBJECT_OF.get(self.subject, self.subject)


CAUSES: tuple[Cause, ...] = (
    Cause("loose belt of Y", "reversal", Setting.MEND_MECHANICS, "Birch", axis="y", truth={"reversal_y": 0.16}),
    Cause("20 teeth on record, 16 fitted", "sizeerror", Setting.WRONG_PART, "Dune", "Moss 5",
          truth={"scale_x": 0.8 * (1 - 0.0026) - 1}),
    Cause("a steady wall outset", "sizeerror", Setting.CONTOUR_OFFSET, "Cobble", "Chalk 12",
          truth={"wall_outset": 0.085}),
    Cause("a lot that needs less flow", "wall", Setting.FLOW_FACTOR, "Elm", "Slate 7",
          truth={"flow_ratio_wall": 0.94}),
    Cause("the same lot, by the tops of its pads", "top", Setting.FLOW_FACTOR, "Cobble", "Slate 7",
          truth={"flow_ratio_top": 0.94}),
    Cause("the same lot, wet", "lots", Setting.FILAMENT_LOT, lot="Slate 7", truth={"drying_loss": 0.004}),
    Cause("a nozzle too near the bed", "firstlayer", Setting.HEIGHT_OFFSET, "Cobble", "Rust 3",
          truth={"first_layer_error": -0.06, "height_offset": 0.06}),
    Cause("a frame that rings at 36 Hz along Y", "ringing", Setting.ACCELERATION, "Cobble", "Rust 3", axis="y",
          truth={"frequency_y": 36.0}),
    Cause("corners that blur above a speed", "speed", Setting.PRINT_SPEED, "Cobble", "Rust 3",
          truth={"trial_speed": 90.0}),
    Cause("a lot that shrinks", "shop_split", Setting.SHRINK_ALLOWANCE, "Cobble", "Rust 3"),
    Cause("a caliper that was dropped", "instruments", Setting.INSTRUMENT_OUT, instrument="Caliper 2"),
    Cause("a nut that wears", "charts", None, "Elm"),
)  # fmt: skip

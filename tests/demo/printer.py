"""The simulated printer and gauges: planted causes in, readings out, as the texts a person would type."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from core.flow_trials.top import LADDER_RATIO
from core.measuring.instrumentkinds import Part, Plan, plan_check
from core.part_size.features import FeatureKind
from core.pieces.piece import PrintSet
from tests.core.part_size.printed import Printer, gauge_sizes
from tests.demo.causes import GaugeTruth, LotTruth, Truth

Rows = tuple[dict[str, str], ...]
KINDS = set(FeatureKind)
_WALL_SD_MM = 0.004  # how printed walls scatter
_PIECE_SD = 0.0001  # how pieces scatter in size
_SCREW_PLACES = (0.42, 0.51, 0.40)
_PAIRS = 5


def measured(values: Iterable[float], places: int = 2) -> Rows:
    """Return readings as rows of one typed cell."""
    return tuple({"measured_mm": f"{value:.{places}f}"} for value in values)


def size_comb(
    piece: PrintSet, truth: Truth, lot: LotTruth, gauge: GaugeTruth, rng: np.random.Generator, *, factor: float = 1.0,
    offset_mm: float = 0.0, bias_mm: float | None = None,
) -> Rows:  # fmt: skip
    """Print a piece and read its gauges; the path follower of the tests is the printer.

    Args:
        piece: the set, planned for the machine.
        truth: of the machine.
        lot: of the filament.
        gauge: of the caliper.
        rng: for scatter.
        factor: the parts are drawn larger by it.
        offset_mm: contour offset in force, a side.
        bias_mm: of the caliper at that time; None for the usual one.
    """
    stretch = [(1 + s) * (1 - lot.shrink) * factor * (1 + _PIECE_SD * rng.standard_normal()) - 1 for s in truth.scale]
    printer = Printer((stretch[0], stretch[1]), truth.play_mm, truth.outset_mm + offset_mm)
    sizes, inside = [], []
    for body in piece.pieces:
        sizes += gauge_sizes(printer, body)
        inside += [g.inside for g in body.gauges if g.kind in KINDS]
    jaws = (gauge.bias if bias_mm is None else bias_mm) * np.where(inside, -1.0, 1.0)
    scatter = np.hypot(_WALL_SD_MM, gauge.sd) * rng.standard_normal(len(sizes))
    return measured(np.array(sizes) + jaws + scatter)


def quick_cycle(play_mm: float, gauge: GaugeTruth, rng: np.random.Generator) -> Rows:
    """Come to three places from either side, five times each, and read the dial."""
    readings = []
    for place in _SCREW_PLACES:
        for _ in range(_PAIRS):
            above, below = place + gauge.sd * rng.standard_normal(2)
            readings += [above, below - play_mm]
    return measured(readings)


def pillars(truth: Truth, gauge: GaugeTruth, rng: np.random.Generator, side_mm: float = 80.0) -> Rows:
    """Read both diagonals of four pillars of 10 mm, outside and inside, twice."""
    half = side_mm * np.sqrt(2.0) * truth.square_rad / 2
    readings = []
    for _ in range(2):
        for sign in (+1.0, -1.0):
            diagonal = side_mm * np.sqrt(2.0) + sign * half
            readings += [diagonal + 10.0, diagonal - 10.0]
    return measured(np.array(readings) + gauge.sd * rng.standard_normal(len(readings)))


def bed(rng: np.random.Generator) -> Rows:
    """Probe nine places of a bed that is a little hollow."""
    x, y = np.meshgrid((-1.0, 0.0, 1.0), (-1.0, 0.0, 1.0))
    heights = 0.015 * x - 0.01 * y + 0.03 * (x * x + y * y) - 0.03
    return measured((heights + 0.004 * rng.standard_normal(x.shape)).ravel(), 3)


def feed(truth: Truth, rng: np.random.Generator) -> Rows:
    """Ask for 100 mm from a mark at 120 mm, three times, unloaded, and read the rest."""
    return measured(120.0 - 100.0 * truth.feed + 0.2 * rng.standard_normal(3), 1)


def diameters(lot: LotTruth, rng: np.random.Generator) -> Rows:
    """Read ten places with a micrometer, largest and at 90 degrees."""
    pairs = []
    for _ in range(10):
        middle = lot.diameter_mm + 0.002 * rng.standard_normal()
        pairs += [middle + lot.ovality_mm / 2, middle - lot.ovality_mm / 2]
    return measured(pairs, 3)


def walls(lot: LotTruth, rng: np.random.Generator, in_force: float = 1.0, width_mm: float = 0.45) -> Rows:
    """Read eight places of a wall of one bead; it grows with the flow delivered.

    The section of an obround bead of height h is (w - h) h + pi h^2 / 4, so dw = dA / h.
    """
    h = 0.2
    area = (width_mm - h) * h + np.pi * h * h / 4
    width = width_mm + area * (in_force / lot.flow - 1) / h
    return measured(width + 0.003 * rng.standard_normal(8), 3)


def masses(lot: LotTruth, rng: np.random.Generator, in_force: float = 1.0) -> Rows:
    """Weigh three boxes whose path takes 2000 mm of filament of 1.75 mm."""
    grams = np.pi / 4 * 1.75**2 * 2000.0 / 1000.0 * lot.density_g_cm3 * in_force / lot.flow
    return measured(grams + 0.006 * rng.standard_normal(3), 3)


def strands(lot: LotTruth, rng: np.random.Generator, knee_mm3_s: float) -> Rows:
    """Weigh 200 mm of filament pushed at ten rates and three temperatures; delivery falls behind a knee."""
    per_length = np.pi / 4 * 1.75**2 * lot.density_g_cm3 / 1000.0
    rows = []
    for step, celsius in enumerate((-10, 0, 10)):
        for rate in range(2, 22, 2):
            late = max(rate - knee_mm3_s - 1.5 * step, 0.0)
            grams = 200.0 * per_length * (1 - 0.012 * late) + 0.001 * rng.standard_normal()
            celsius_text = f"{lot.temperature_c + celsius:g}"
            rows.append({"temperature_c": celsius_text, "rate_mm3_s": f"{rate}", "measured_mm": f"{grams:.3f}"})
    return tuple(rows)


def ripples(hertz: float, rng: np.random.Generator) -> Rows:
    """Count crests after a corner at three speeds, the one begun at as 0, and read their length."""
    rows = []
    for speed, crests in ((60, 8), (90, 7), (130, 6)):
        length = speed / hertz * crests + 0.05 * rng.standard_normal()
        rows.append({"speed_mm_s": f"{speed}", "crests": f"{crests}", "measured_mm": f"{length:.1f}"})
    return tuple(rows)


def temperatures(steps: Iterable[float], best_c: float, rng: np.random.Generator) -> Rows:
    """Score the steps of a ladder of temperatures, two judges: colder ones do not bond, hotter ones draw strings."""
    rows = []
    for step in steps:
        for judge in "12":
            cleanness = 4.0 - (step - best_c - 5.0) / 2.0 + 0.2 * rng.standard_normal()
            bond = 4.0 + (step - best_c + 5.0) / 2.0 + 0.2 * rng.standard_normal()
            for criterion, score in (("clean", cleanness), ("bond", bond)):
                typed = f"{min(max(round(score), 0), 4)}"
                rows.append({"step": f"{step:.4g}", "judge": judge, "criterion": criterion, "measured_mm": typed})
    return tuple(rows)


def check(kind: str, gauge: GaugeTruth, rng: np.random.Generator, bias: float | None = None) -> Rows:
    """Read every reference of a full check."""
    places = {"micrometer": 3}.get(kind, 2)
    off = gauge.bias if bias is None else bias
    readings = []
    for reading in plan_check(kind, Plan.FULL):
        true = 19.95 if reading.reference is None else reading.reference
        bend = 0.0 if reading.part is Part.ZERO else off
        blades = 0.16 / (2 * true) if reading.part is Part.INSIDE and true else 0.0
        sd = gauge.sd if reading.part in (Part.HAND, Part.SECOND) else gauge.sd / 3
        readings.append(true + bend - blades + sd * rng.standard_normal())
    return measured(readings, places)


def pads(gap_mm: float, rng: np.random.Generator, layer_mm: float = 0.2) -> Rows:
    """Read pads of one layer in the middle and the corners of the bed: the plastic just fills the gap."""
    return measured(layer_mm + gap_mm + 0.004 * rng.standard_normal(5), 3)


def tops(lot: LotTruth, rng: np.random.Generator, in_force: float = 1.0) -> Rows:
    """Score the tops of the pads, two judges: gaps where too little is laid, ridges where too much is."""
    closes = lot.flow / in_force - 1
    return tuple(
        {"measured_mm": f"{min(max(round(70 * (change - closes) + 0.3 * rng.standard_normal()), -5), 5)}"}
        for _judge in "12"
        for change in LADDER_RATIO
    )


def levels(steps: Iterable[float], good_to: float, rng: np.random.Generator, sets: int = 4) -> Rows:
    """Score pieces of every level, two judges: clean up to a level, then corners blur with the square of it."""
    steps, rows = tuple(steps), []
    for _ in range(sets):
        for step in steps:
            blur = 4.0 * max((step / good_to) ** 2 - 1.0, 0.0)
            for judge in "12":
                score = min(max(round(4.0 - blur + 0.25 * rng.standard_normal()), 0), 4)
                rows.append({"step": f"{step:.3g}", "judge": judge, "measured_mm": f"{score}"})
    return tuple(rows)


def spool(left_g: float, empty_g: float, wet_ratio: float) -> Rows:
    """Weigh a spool before and after drying; the last number is what the balance is good for."""
    gross = left_g + empty_g
    return measured((gross + left_g * wet_ratio, gross, 0.1), 1)

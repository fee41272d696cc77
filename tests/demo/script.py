"""What happens in the demo shop, day by day: who does what with which machine, lot and instrument, and what is read.

Days count back from the last one (0). Every reading is drawn here, from one seed, before anything is typed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from core.guidance.pieceplan import bounds_of
from core.measuring.ladder import plan_steps
from core.motion_trials.ladders import ladders
from core.motion_trials.speed import LEVELS
from core.pieces.catalogue import plan_set
from tests.demo import printer
from tests.demo.causes import ELM_WEAR_MM, GAUGES, LOTS, MACHINES
from tests.demo.printer import Rows

SEED = 1
CALIPER, SECOND, DIAL, BALANCE = "Caliper 1", "Caliper 2", "Dial 1", "Balance 1"


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing done in the shop.

    Attributes:
        day: days before the last one.
        does: key of the page that is used, or `add` (the named rows), `event`, `decide`.
        settings: what is set on the page; of an event its kind and detail.
        rows: what is typed, row by row.
    """

    day: float
    does: str
    machine: str = ""
    lot: str = ""
    instrument: str = ""
    person: str = "Kim"
    settings: Mapping[str, Any] = field(default_factory=dict)
    rows: Rows = ()
    note: str = ""


class Shop:
    """The entries so far, and the chance they are drawn with."""

    def __init__(self) -> None:
        self.rng = np.random.default_rng(SEED)
        self.entries: list[Entry] = []

    def add(self, day: float, does: str, machine: str = "", lot: str = "", instrument: str = "", **more: Any) -> None:
        """Note what is done."""
        self.entries.append(Entry(day, does, machine, lot, instrument, **more))

    def event(self, day: float, kind: str, machine: str = "", lot: str = "", **more: Any) -> None:
        """Note what happened."""
        self.add(day, "event", machine, lot, settings={"kind": kind}, **more)

    def by_hand(self, day: float, step: str, machine: str, lot: str = "", **more: Any) -> None:
        """Note a step of the walk that is looked at by hand."""
        detail = {"step": step}
        self.add(day, "event", machine, lot, settings={"kind": "checked", "detail": detail}, **more)

    def check(self, day: float, instrument: str, person: str = "Kim", bias: float | None = None) -> None:
        """Check an instrument."""
        row, gauge = GAUGES[instrument]
        settings = {"light_gap": "none"} if row.kind == "caliper" else {}
        rows = printer.check(row.kind, gauge, self.rng, bias)
        self.add(day, "instruments", instrument=instrument, person=person, settings=settings, rows=rows)

    def size(self, day: float, machine: str, lot: str, instrument: str = CALIPER, **more: Any) -> None:
        """Print and read a size comb."""
        row, truth = MACHINES[machine]
        truth = replace(truth, **more.pop("instead", {}))
        piece = more.pop("piece", "comb_xy")
        how = {key: more.pop(key) for key in ("factor", "offset_mm", "bias_mm") if key in more}
        planned = plan_set(piece, bounds_of(row))
        settings = {"piece": piece, "part_temperature_c": 22.0}
        rows = printer.size_comb(planned, truth, LOTS[lot][1], GAUGES[instrument][1], self.rng, **how)
        self.add(day, "sizeerror", machine, lot, instrument, settings=settings, rows=rows, **more)

    def reversal(self, day: float, machine: str, axis: str, play_mm: float | None = None, **more: Any) -> None:
        """Read the quick cycle of an axis."""
        truth = MACHINES[machine][1]
        play = truth.play_mm["xy".index(axis)] if play_mm is None else play_mm
        rows = printer.quick_cycle(play, GAUGES[DIAL][1], self.rng)
        self.add(day, "reversal", machine, instrument=DIAL, settings={"axis": axis}, rows=rows, **more)


def shop() -> tuple[Entry, ...]:
    """Return everything that happens, oldest first."""
    made = Shop()
    _bench(made)
    _amsel(made)
    _birch(made)
    _cobble(made)
    _dune(made)
    _elm(made)
    _fern(made)
    return tuple(sorted(made.entries, key=lambda entry: -entry.day))


def _bench(shop: Shop) -> None:
    """Instruments and lots; the second caliper was dropped between two checks."""
    shop.add(150, "add", instrument=",".join(GAUGES))
    shop.add(149.9, "add", lot="Chalk 12,Slate 7,Rust 3")
    for number, name in enumerate((CALIPER, SECOND, DIAL, BALANCE)):
        shop.check(149 - number / 8, name)
    shop.add(60, "add", lot="Moss 5")
    for number, (lot, (_, truth)) in enumerate(LOTS.items()):
        day = 59.5 if lot == "Moss 5" else 148 - number / 8
        gauge = {"gauge": "micrometer"}
        shop.add(day, "diameter", "Amsel", lot, person="Noor", settings=gauge, rows=printer.diameters(truth, shop.rng))
    shop.check(75, CALIPER, "Noor")
    shop.check(3, SECOND, "Noor", bias=GAUGES[SECOND][1].later)
    shop.check(2, CALIPER, "Noor")


def _flow(shop: Shop, day: float, machine: str, lot: str, person: str = "Tove", in_force: float = 1.0) -> None:
    """Print and read the three trials of the flow factor."""
    truth = LOTS[lot][1]
    printed = {"temperature_c": truth.temperature_c, "hot_end_limit_c": 280.0, "rate_mm3_s": 5.0,
               "in_force_ratio": in_force}  # fmt: skip
    weighed = printed | {"density_g_cm3": truth.density_g_cm3, "path_filament_mm": 2000.0}
    shop.add(day, "mass", machine, lot, BALANCE, person=person, settings=weighed,
             rows=printer.masses(truth, shop.rng, in_force))  # fmt: skip
    shop.add(day - 0.1, "wall", machine, lot, CALIPER, person=person, settings=printed,
             rows=printer.walls(truth, shop.rng, in_force))  # fmt: skip


def _ceiling(shop: Shop, day: float, machine: str, lot: str, knee_mm3_s: float) -> None:
    truth = LOTS[lot][1]
    per_length = np.pi / 4 * 1.75**2 * truth.density_g_cm3
    settings = {"mass_per_length_g_m": round(per_length, 3), "hot_end_limit_c": 280.0}
    rows = printer.strands(truth, shop.rng, knee_mm3_s)
    shop.add(day, "ceiling", machine, lot, BALANCE, person="Tove", settings=settings, rows=rows)


def _temperature(shop: Shop, day: float, machine: str, lot: str) -> None:
    """Score a ladder of temperatures about the best one."""
    best, kind = LOTS[lot][1].temperature_c, ladders()["temperature"]
    low, high = best - 15, best + 15
    steps = [float(f"{step:.4g}") for step in plan_steps(low, high, kind.steps, geometric=kind.geometric)]
    settings = {"ladder": "temperature", "low": low, "high": high, "limit": 280.0}
    rows = printer.temperatures(steps, best, shop.rng)
    shop.add(day, "ladder", machine, lot, person="Noor", settings=settings, rows=rows)


def _first_layer(shop: Shop, day: float, machine: str, lot: str, *, again: bool = False) -> None:
    """Print and read pads of one layer, `again` with the height offset that followed."""
    gap_mm = 0.0 if again else MACHINES[machine][1].gap_mm
    settings = {"gauge": "micrometer"} if again else {"gauge": "micrometer", "offset_mm": 0.0}
    shop.add(day, "firstlayer", machine, lot, person="Tove", settings=settings, rows=printer.pads(gap_mm, _apart(day)))


def _tops(shop: Shop, day: float, machine: str, lot: str, in_force: float = 1.0) -> None:
    """Score the tops of pads."""
    truth = LOTS[lot][1]
    settings = {"temperature_c": truth.temperature_c, "hot_end_limit_c": 280.0, "rate_mm3_s": 5.0,
                "in_force_ratio": in_force}  # fmt: skip
    rows = printer.tops(truth, _apart(day), in_force)
    shop.add(day, "top", machine, lot, person="Noor", settings=settings, rows=rows)


def _speed(shop: Shop, day: float, machine: str, lot: str) -> None:
    """Score five levels of speed on the usual straights."""
    low, high = 40.0, 160.0
    steps = [float(f"{step:.3g}") for step in plan_steps(low, high, LEVELS, geometric=True)]
    rows = printer.levels(steps, MACHINES[machine][1].good_to_mm_s, _apart(day))
    shop.add(day, "speed", machine, lot, person="Tove", settings={"method": "speed", "limit": 200.0}, rows=rows)


def _ringing(shop: Shop, day: float, machine: str, lot: str) -> None:
    """Count the ripples after a corner, along X and Y."""
    for number, axis in enumerate("xy"):
        at = day - number / 10
        rows = printer.ripples(MACHINES[machine][1].ringing_hz[number], _apart(at))
        shop.add(at, "ringing", machine, lot, settings={"axis": axis}, rows=rows, person="Tove")


def _weighed(shop: Shop, day: float, lot: str, left_g: float, wet_ratio: float) -> None:
    """Weigh a spool before and after drying."""
    rows = printer.spool(left_g, LOTS[lot][0].spool_mass_g or 0.0, wet_ratio)
    shop.add(day, "lots", lot=lot, instrument=BALANCE, person="Noor", rows=rows)


def _apart(day: float) -> np.random.Generator:
    """Return a chance of the day's own: what is read on it changes no other reading."""
    return np.random.default_rng((SEED, round(100 * day)))


def _geometry(shop: Shop, day: float, machine: str, person: str) -> None:
    """The steps of the walk before the filament."""
    truth = MACHINES[machine][1]
    shop.add(day, "add", machine, person=person)
    for number, step in enumerate(("mechanics", "steps")):
        shop.by_hand(day - 0.1 - number / 20, step, machine, person=person)
    shop.reversal(day - 1, machine, "x", person=person)
    shop.reversal(day - 1.05, machine, "y", person=person)
    shop.add(day - 1.2, "squareness", machine, instrument=CALIPER, person=person,
             rows=printer.pillars(truth, GAUGES[CALIPER][1], shop.rng))  # fmt: skip
    shop.add(day - 1.3, "bedplane", machine, person=person, settings={"bed_c": 60.0}, rows=printer.bed(shop.rng))
    shop.add(day - 2, "feed", machine, person=person, settings={"in_force_steps_mm": 277.8},
             rows=printer.feed(truth, shop.rng))  # fmt: skip


def _amsel(shop: Shop) -> None:
    """The machine that is set up from the first step to the last, and watched since."""
    name, lot = "Amsel", "Chalk 12"
    _geometry(shop, 148.5, name, "Kim")
    _temperature(shop, 145, name, lot)
    _ceiling(shop, 144, name, lot, 11.0)
    _flow(shop, 143, name, lot)
    shop.by_hand(142, "lag", name, lot, person="Tove")
    _ringing(shop, 141, name, lot)
    _first_layer(shop, 142.6, name, lot)
    _first_layer(shop, 142.5, name, lot, again=True)
    _tops(shop, 142.3, name, lot)
    _speed(shop, 140, name, lot)
    shop.size(139, name, lot)
    drawn = 1.0022
    for number, axis in enumerate("xy"):
        setting = {"setting": f"shrink_allowance_{axis}", "new": f"{drawn}"}
        shop.add(138 - number / 20, "decide", name, lot, settings=setting, note="By the size comb of the day before.")
    shop.add(137.5, "prediction", name, lot, CALIPER)
    shop.size(136, name, lot, factor=drawn)
    shop.add(135.5, "prediction", name, lot, CALIPER, settings={"verify": True})
    for number in range(9):
        shop.size(120 - 13 * number, name, lot, person="Noor", factor=drawn)
    shop.size(40, name, "Slate 7")
    shop.size(38, name, "Rust 3")
    shop.size(30, name, "Rust 3")
    shop.size(10, name, lot, person="Noor", factor=drawn)
    shop.by_hand(9.9, "decision", name, lot, note="Nothing to change.")
    shop.add(9.85, "prediction", name, lot, CALIPER)
    shop.size(9.8, name, lot, factor=drawn)
    shop.add(9.75, "prediction", name, lot, CALIPER, settings={"verify": True})
    shop.add(9.7, "promise", name, lot, CALIPER)
    shop.by_hand(9.6, "watch", name, lot)
    shop.by_hand(9.5, "yearly", name, lot)


def _birch(shop: Shop) -> None:
    """Quiet at first; then the belt of Y comes loose."""
    name, lot, tight = "Birch", "Chalk 12", {"play_mm": (0.012, 0.012)}
    _geometry_sound(shop, 120, name)
    shop.size(112, name, lot, SECOND, person="Noor", instead=tight)
    shop.size(111.9, name, lot, SECOND, person="Noor", instead=tight, bias_mm=0.2)
    shop.add(111.8, "withdraw", name, lot, person="Noor", note="Read while the part was still warm.")
    shop.size(50, name, "Rust 3", SECOND, person="Noor", instead=tight)
    shop.size(33, name, "Moss 5", SECOND, person="Noor", instead=tight, bias_mm=0.03)
    shop.reversal(6, name, "x", person="Tove")
    shop.reversal(5.9, name, "y", person="Tove")
    shop.size(5, name, lot, SECOND, person="Tove", bias_mm=GAUGES[SECOND][1].later)


def _geometry_sound(shop: Shop, day: float, machine: str) -> None:
    """Set a machine up while its belts are still tight."""
    truth = replace(MACHINES[machine][1], play_mm=(0.012, 0.012))
    shop.add(day, "add", machine, person="Noor")
    for number, step in enumerate(("mechanics", "steps")):
        shop.by_hand(day - 0.1 - number / 20, step, machine, person="Noor")
    for number, axis in enumerate("xy"):
        shop.reversal(day - 1 - number / 20, machine, axis, truth.play_mm[number], person="Noor")
    shop.add(day - 1.2, "squareness", machine, instrument=CALIPER, person="Noor",
             rows=printer.pillars(truth, GAUGES[CALIPER][1], shop.rng))  # fmt: skip
    shop.add(day - 1.3, "bedplane", machine, person="Noor", settings={"bed_c": 60.0}, rows=printer.bed(shop.rng))
    shop.event(day - 20, "nozzle_same", machine, person="Noor", note="Worn; the same size again.")


def _cobble(shop: Shop) -> None:
    """Crossed belts; every wall stands proud."""
    name = "Cobble"
    _geometry(shop, 100, name, "Tove")
    _temperature(shop, 97, name, "Rust 3")
    _ceiling(shop, 96, name, "Rust 3", 13.0)
    shop.add(98.4, "diameter", name, "Rust 3", person="Noor", settings={"gauge": "micrometer"},
             rows=printer.diameters(LOTS["Rust 3"][1], _apart(98.4)))  # fmt: skip
    _weighed(shop, 98, "Rust 3", 741.0, LOTS["Rust 3"][1].wet_ratio)
    _flow(shop, 95, name, "Rust 3")
    _tops(shop, 94.8, name, "Rust 3")
    _first_layer(shop, 94.6, name, "Rust 3")
    shop.by_hand(94.4, "lag", name, "Rust 3", person="Tove")
    _speed(shop, 94, name, "Rust 3")
    _ringing(shop, 93, name, "Rust 3")
    _tops(shop, 47, name, "Slate 7", 0.97)
    for day, lot in ((60, "Chalk 12"), (48, "Slate 7"), (35, "Rust 3"), (21, "Rust 3"), (20, "Chalk 12"),
                     (0.3, "Rust 3")):  # fmt: skip
        shop.size(day, name, lot, person="Tove")


def _dune(shop: Shop) -> None:
    """Bought used; one pulley is not what the papers say."""
    name = "Dune"
    shop.add(25, "add", name, person="Kim")
    shop.by_hand(24.9, "mechanics", name)
    shop.reversal(23, name, "x")
    shop.reversal(22.9, name, "y")
    shop.event(22, "moved", name, note="From the yard to the back room.")
    shop.size(18, name, "Moss 5", piece="comb_x", person="Noor")


def _elm(shop: Shop) -> None:
    """A nut that wears, read week by week; and a lot that needs less flow."""
    name = "Elm"
    _geometry(shop, 135, name, "Tove")
    for week, play_mm in enumerate(ELM_WEAR_MM):
        shop.reversal(130 - 7 * week, name, "x", play_mm, person="Tove")
    _weighed(shop, 45, "Slate 7", 803.0, LOTS["Slate 7"][1].wet_ratio)
    _temperature(shop, 44, name, "Slate 7")
    _ceiling(shop, 43, name, "Slate 7", 12.0)
    _flow(shop, 42, name, "Slate 7")
    shop.event(57, "crash", name, person="Tove", note="A clip on the bed; nothing bent that we can see.")
    shop.reversal(56, name, "y", person="Tove")
    shop.add(55.9, "squareness", name, instrument=CALIPER, person="Tove",
             rows=printer.pillars(MACHINES[name][1], GAUGES[CALIPER][1], shop.rng))  # fmt: skip
    shop.add(55.8, "bedplane", name, person="Tove", settings={"bed_c": 60.0}, rows=printer.bed(shop.rng))
    for day, lot in ((128, "Chalk 12"), (54, "Slate 7"), (28, "Slate 7"), (14, "Moss 5")):
        shop.size(day, name, lot, person="Tove")
    shop.event(13, "new_spool", name, "Moss 5", person="Tove")


def _fern(shop: Shop) -> None:
    """New: only its record is written."""
    shop.add(1, "add", "Fern", person="Noor")

"""The test pieces there are: what each is for, and how it is planned for one machine and one caliper."""

from __future__ import annotations

from dataclasses import replace

from core.errors import InputError
from core.pieces.bounds import BED_EDGE_MM, Bounds
from core.pieces.boxes import (
    PAD_LETTERS,
    PAD_STEPS_PERCENT,
    plan_flare_blocks,
    plan_mass_box,
    plan_top_pads,
    plan_wall_box,
)
from core.pieces.comb import DEPTH_MM, TOOTH_MM, comb_minds, plan_comb, plan_half_combs
from core.pieces.holes import plan_holes
from core.pieces.piece import Point, PrintSet
from core.pieces.pillars import plan_pillars
from core.pieces.ring import plan_rings
from core.pieces.stair import plan_stair
from core.words import Words, tr

_APART_MM = 10.0


def set_names() -> dict[str, Words]:
    """Return the keys of all sets with their names, in the order in which they are offered."""
    return {
        "comb_x": tr("Size comb along X"),
        "comb_y": tr("Size comb along Y"),
        "comb_xy": tr("Size combs X and Y"),
        "half_combs_x": tr("Half-combs along X"),
        "half_combs_y": tr("Half-combs along Y"),
        "pillars": tr("Pillar plate"),
        "rings": tr("Two rings"),
        "stair": tr("Height stair"),
        "holes": tr("Hole and peg ladder"),
        "flare_block": tr("Flare blocks"),
        "wall_box_1": tr("Wall box, one bead"),
        "wall_box_2": tr("Wall box, two beads"),
        "mass_box": tr("Mass box"),
        "top_pads": tr("Top pads"),
    }


SIZE_SETS = ("comb_x", "comb_y", "comb_xy", "half_combs_x", "half_combs_y", "pillars", "rings", "stair", "holes",
             "flare_block")  # fmt: skip


def plan_set(key: str, bounds: Bounds | None = None) -> PrintSet:
    """Return the pieces of one name, planned for these bounds.

    Raises:
        InputError: field `piece` for an unknown key; the field of the bounds that leaves no room.
    """
    bounds = bounds or Bounds()
    if key not in set_names():
        raise InputError("piece", tr("There is no test piece called {key}.", key=key))
    planned = _at_corner(_planned(key, bounds))
    _check_room(planned, bounds)
    return planned


def _planned(key: str, bounds: Bounds) -> PrintSet:
    name = set_names()[key]
    if key.startswith(("comb", "half_combs")):
        return _combs(key, name, bounds)
    if key == "pillars":
        purpose = tr("Scale of X and Y, and their squareness, of one print; wall outset and lost motion only together.")
        return PrintSet(key, name, purpose, (plan_pillars(bounds),), "sizeerror")
    if key == "rings":
        purpose = tr("Scale, wall outset and lost motion of X and Y, of two closed rings.")
        return PrintSet(key, name, purpose, plan_rings(bounds), "sizeerror")
    if key == "stair":
        return PrintSet(key, name, tr("Scale of Z and first-layer squash."), (plan_stair(bounds),), "sizeerror")
    if key == "holes":
        purpose = tr("How much round holes come out too small and round pegs too large.")
        return PrintSet(key, name, purpose, (plan_holes(bounds),), "sizeerror")
    return _flow_set(key, name, bounds)


def _flow_set(key: str, name: Words, bounds: Bounds) -> PrintSet:
    if key == "flare_block":
        purpose = tr("First-layer flare per side: half of what the low readings exceed the high ones by.")
        return PrintSet(key, name, purpose, plan_flare_blocks(bounds), "sizeerror")
    if key == "mass_box":
        purpose = tr("Flow factor by mass: print it solid, without skirt, and weigh it against its path.")
        return PrintSet(key, name, purpose, (plan_mass_box(bounds),), "mass")
    if key == "top_pads":
        purpose = tr(
            "Flow factor by eye: print each pad with its change of the flow, and let others who do not know it judge "
            "the tops: {list}.",
            list=", ".join(f"{pad} {step:+g} %" for pad, step in zip(PAD_LETTERS, PAD_STEPS_PERCENT, strict=True)),
        )
        return PrintSet(key, name, purpose, plan_top_pads(bounds), "top")
    purpose = tr("Flow factor by wall: print without floor and top, and read the wall near its upper edge.")
    return PrintSet(key, name, purpose, (plan_wall_box(int(key[-1]), bounds),), "wall")


def _combs(key: str, name: Words, bounds: Bounds) -> PrintSet:
    if key == "comb_xy":
        beside = DEPTH_MM + TOOTH_MM + _APART_MM  # the comb along y stands left of the one along x
        x_bounds = replace(bounds, bed_x_mm=max(bounds.bed_x_mm - beside, 60.0))
        combs = [plan_comb("x", x_bounds), replace(plan_comb("y", bounds), place_mm=(-_APART_MM, 0.0))]
        purpose = tr("Scale and lost motion of X and Y, and the wall outset, in one print.")
    else:
        plan = plan_half_combs if key.startswith("half") else plan_comb
        combs = [plan(key[-1], bounds)]
        purpose = tr("Scale, wall outset and lost motion along {axis}, told apart.", axis=key[-1].upper())
    minds = tuple(says for comb in combs for says in comb_minds(comb.axis, bounds, comb))
    return PrintSet(key, name, purpose, tuple(combs), "sizeerror", minds)


def extent_mm(planned: PrintSet) -> tuple[float, float, float]:
    """Return the room that a set takes along x, y and z."""
    corners = _corners(planned)
    sizes = [max(c[i] for c in corners) - min(c[i] for c in corners) for i in (0, 1)]
    return sizes[0], sizes[1], max(c[2] for c in corners)


def _corners(planned: PrintSet) -> list[Point]:
    return [
        piece.on_bed((x, y, prism.high_mm))
        for piece in planned.pieces
        for prism in piece.prisms
        for outline in prism.outlines
        for x, y in outline
    ]


def _at_corner(planned: PrintSet) -> PrintSet:
    """Shift the pieces together so that none lies below zero: files ask for that."""
    corners = _corners(planned)
    x, y = (min(c[i] for c in corners) for i in (0, 1))
    pieces = [replace(p, place_mm=(p.place_mm[0] - x, p.place_mm[1] - y)) for p in planned.pieces]
    return replace(planned, pieces=tuple(pieces))


def _check_room(planned: PrintSet, bounds: Bounds) -> None:
    x, y, z = extent_mm(planned)
    spare = 2 * BED_EDGE_MM
    for field, needs, has in (
        ("bed_x_mm", x + spare, bounds.bed_x_mm),
        ("bed_y_mm", y + spare, bounds.bed_y_mm),
        ("bed_z_mm", z, bounds.bed_z_mm),
    ):
        if needs > has + 1e-6:
            raise InputError(
                field,
                tr("{name} needs {needs:.0f} mm here, the machine has {has:g} mm; choose another piece.",
                   name=planned.name, needs=needs, has=has),
            )  # fmt: skip


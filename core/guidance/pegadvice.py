"""What clearance to draw for a peg in a hole, from the spreads of a machine and lot."""

from __future__ import annotations

from core.guidance.partgroups import Group, group_words
from core.guidance.promised import PromiseJudgement
from core.part_size.pegfit import Mate, clearance_for
from core.part_size.promise import FEWEST_PIECES
from core.part_size.spread import Spread
from core.quantity import coverage_factor
from core.words import Words, tr


def peg_advice(judgement: PromiseJudgement, peg_mm: float, share_ratio: float) -> Words:
    """Say what clearance to draw for a peg in a hole of this machine and lot.

    Args:
        judgement: with outside lengths and bores, or windows where no bore was read.
        peg_mm: drawn diameter of the peg.
        share_ratio: of the pairs that must go together.

    Raises:
        InputError: field `share` outside 0 to 1.
    """
    by_group = {one.parts.group: one.spread for one in judgement.groups if one.spread is not None}
    of_hole = Group.HOLE if Group.HOLE in by_group else Group.INSIDE
    peg, hole = by_group.get(Group.OUTSIDE), by_group.get(of_hole)
    if peg is None or hole is None:
        return tr("Pegs in holes: read outside lengths and bores, or windows, on two parts at least.")
    mates = tuple(_mate(spread, peg_mm) for spread in (hole, peg))
    clearance, u = clearance_for(share_ratio, *mates)
    pieces = min(hole.pieces, peg.pieces)
    says = tr(
        "Peg of {peg:g} mm in a hole: draw {clearance:.2f} ± {U:.2f} mm clearance on the diameter, then {percent:g} % "
        "of the pairs go together (from {group} of {pieces} parts).",
        peg=peg_mm,
        clearance=clearance,
        U=coverage_factor(min(mate.dof for mate in mates)) * u,
        percent=100 * share_ratio,
        group=group_words(of_hole),
        pieces=pieces,
    )
    if pieces < FEWEST_PIECES:
        says = tr("{says} So few parts tell little of a share: try one pair first.", says=says)
    if not max(hole.shortest_mm, peg.shortest_mm) <= peg_mm <= min(hole.longest_mm, peg.longest_mm):
        says = tr("{says} No size near {peg:g} mm was read.", says=says, peg=peg_mm)
    if of_hole is Group.INSIDE:
        says = tr("{says} Round holes come out smaller still: read bores.", says=says)
    return says


def _mate(spread: Spread, at_mm: float) -> Mate:
    values = spread.bias_at(at_mm), spread.sd_at(at_mm), spread.u_bias_at(at_mm), spread.dof_at(at_mm)
    return Mate(*(float(value) for value in values))

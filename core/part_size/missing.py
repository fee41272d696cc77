"""Which reading would tell what the readings at hand leave open.

A combination c of the parameters is open when some direction of the null space changes it. A new reading with response
x removes the directions that it sees; c is told as soon as none that changes c is left.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from core.measuring.finite import finite_in
from core.part_size.features import FEATURES, FeatureKind, Terms, axis_problem, design_terms, kind_words
from core.part_size.scatter import FEWEST_SPARE, ScatteredFit
from core.words import Words, side_by_side, tr

Floats = NDArray[np.float64]

# In the order of the trouble they make: what is on most parts and within reach of the jaws comes first.
_BY_TROUBLE = (
    FeatureKind.NOTCH,
    FeatureKind.CLOSED_HOLE,
    FeatureKind.TOOTH,
    FeatureKind.OUTSIDE,
    FeatureKind.SAME_FACING,
    FeatureKind.RING_MEAN,
)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A reading that could be taken."""

    kind: FeatureKind
    axis: str
    nominal_mm: float

    def words(self) -> Words:
        """Say what to measure."""
        return tr(
            "one length of about {length:g} mm along {axis} ({kind})",
            kind=kind_words(self.kind),
            length=self.nominal_mm,
            axis=self.axis,
        )


@dataclass(frozen=True, slots=True)
class Missing:
    """A parameter that the readings do not determine, what it needs, and the readings that would tell, if any do."""

    name: str
    needs: Words
    readings: tuple[Candidate, ...] = ()


def missing_parameters(
    terms: Terms,
    scattered: ScatteredFit,
    kinds: Sequence[FeatureKind],
    axes: Sequence[str],
    nominal_mm: Floats,
    line_refused: bool,
) -> tuple[Missing, ...]:
    """Return the parameters that a fit does not give, or gives without an uncertainty, with what each needs.

    Args:
        terms: the parameters of the fit.
        scattered: the fit.
        kinds: (m,) of each feature.
        axes: (m,) of each feature.
        nominal_mm: (m,) of each feature.
        line_refused: no straight line describes the readings; no scale is given then.
    """
    found = []
    for name in terms.names:
        c = terms.coefficients(name)
        if not scattered.fit.determines(c):
            readings = telling_readings(terms, scattered.fit.null_space, c, list(kinds), list(axes), nominal_mm)
            needs = tr("measure {readings}", readings=reading_list(readings)) if readings else tr("measure more kinds")
            found.append(Missing(name, needs, readings))
        elif math.isnan(scattered.variance_mm2):
            spare = FEWEST_SPARE - scattered.fit.dof
            more = tr("one more feature") if spare == 1 else tr("{count} more features", count=spare)
            needs = tr("measure {more} to see how they scatter, or check the instrument's repeatability", more=more)
            found.append(Missing(name, needs))
        elif line_refused and name.startswith("scale_"):
            needs = tr("find what bends first: a lifted corner, a bent part, a misread length; no straight line fits")
            found.append(Missing(name, needs))
    return tuple(found)


def reading_list(readings: Iterable[Candidate]) -> Words:
    """Say which readings to take, each kind and axis once."""
    return side_by_side((reading.words() for reading in {(r.kind, r.axis): r for r in readings}.values()), ", ")


@finite_in("null_space", "combination", "lengths_mm")
def telling_readings(
    terms: Terms,
    null_space: Floats,
    combination: Floats,
    kinds: list[FeatureKind],
    axes: list[str],
    lengths_mm: Floats,
) -> tuple[Candidate, ...]:
    """Return the fewest and least troublesome readings (at most two) that would tell the combination; () if none do.

    Args:
        terms: of the fit.
        null_space: (p, q) directions that no reading sees.
        combination: (p,) what is asked for.
        kinds: (m,) read already; kinds with constants of their own (bore, height, travel) only return among these.
        axes: (m,) along which they were read.
        lengths_mm: (m,) lengths of these.

    Raises:
        InputError: one of the numbers is none.
    """
    open_to = combination @ null_space
    candidates = list(_candidates(terms.names, kinds, axes, lengths_mm))
    rows = {c: _seen(_response(terms, c), null_space) for c in candidates}
    for size in (1, 2):
        for chosen in combinations(candidates, size):
            seen = np.array([rows[c] for c in chosen])
            rest = open_to - open_to @ np.linalg.pinv(seen, rcond=1e-9) @ seen
            if np.all(np.abs(rest) < 1e-6 * max(float(np.max(np.abs(open_to))), 1e-300)):
                return chosen
    return ()


def _response(terms: Terms, candidate: Candidate) -> Floats:
    kind, axis, length = [candidate.kind], [candidate.axis], [candidate.nominal_mm]
    return np.asarray(design_terms(terms.names, kind, axis, length, terms.centre_mm).design[0])


def _seen(response: Floats, null_space: Floats) -> Floats:
    """Return what a reading sees of each open direction, exact zeros where it sees only rounding."""
    seen = response @ null_space
    return np.asarray(np.where(np.abs(seen) > 1e-9 * float(np.linalg.norm(response)), seen, 0.0))


def _candidates(
    names: tuple[str, ...], kinds: list[FeatureKind], axes: list[str], lengths_mm: Floats
) -> Iterator[Candidate]:
    """List what could be read: every kind whose parameters are in the fit, at a length far from those on its axis."""
    far = {a: _far_from(lengths_mm[[a == b for b in axes]]) for a in sorted(set(axes))}
    own = [kind for kind in dict.fromkeys(kinds) if FEATURES[kind].constant]
    used = [kind for kind in dict.fromkeys(kinds) if not (FEATURES[kind].constant or FEATURES[kind].low)]
    low = [kind for kind in dict.fromkeys(kinds) if FEATURES[kind].low]  # last: flare helps no other length
    order = own + used + [kind for kind in _BY_TROUBLE if kind not in used] + low
    for kind in order:
        for axis, length in far.items():
            if _in_fit(kind, axis, names):
                yield Candidate(kind, axis, length)


def _in_fit(kind: FeatureKind, axis: str, names: tuple[str, ...]) -> bool:
    travels = f"origin_{axis}" in names
    if axis_problem(kind, axis) or travels != (kind is FeatureKind.TRAVEL):
        return False
    return bool(FEATURES[kind].constant) or axis == "z" or f"lost_motion_{axis}" in names


def _far_from(lengths_mm: Floats) -> float:
    """Choose a length that makes the lever long: a tenth of a long one, or far beyond a short one."""
    longest = float(np.max(np.abs(lengths_mm)))
    shortest = float(np.min(np.abs(lengths_mm)))
    if longest < 60.0:
        return 120.0
    return 10.0 if shortest > longest / 3 else round(longest / 2, 0)

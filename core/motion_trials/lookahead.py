"""Looking ahead over a path: the highest speeds between moves from which every later stop can still be kept.

    v[i]^2 <= cap[i]^2,   |v[i+1]^2 - v[i]^2| <= 2 a[i] l[i]

Symbols: v[i] speed before move i, cap limit of the junction, a acceleration, l length, w = 2 a l the most that v^2 can
change within a move, S running sum of w. The fastest solution is the largest one: forwards
v[i]^2 = min(cap[i]^2, v[i-1]^2 + w[i-1]), which is S[i] + min over j <= i of (cap[j]^2 - S[j]); backwards likewise from
the end; of both the smaller. So the passes are running minima, and no move waits for the one before it.

Reference: Verscheure et al., Time-optimal path tracking for robots, IEEE Trans. Autom. Control 54 (2009) 2318: with v^2
as unknown the problem is convex; its solution here in closed form is elementary.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from core.measuring.reach import finite_out

Floats = NDArray[np.float64]


@finite_out("length_mm")
def junction_speeds_mm_s(length_mm: Floats, acceleration_mm_s2: Floats, cap_mm_s: Floats) -> Floats:
    """Return the speeds (n + 1,) before, between and after n moves.

    Args:
        length_mm: (n,) lengths.
        acceleration_mm_s2: (n,) acceleration and deceleration within each move.
        cap_mm_s: (n + 1,) highest speed before each move and after the last; finite, 0 where the machine stands.

    Raises:
        InputError: field `length_mm` where a speed is no number; what goes in is not checked.
    """
    room = np.concatenate([[0.0], np.cumsum(2.0 * acceleration_mm_s2 * length_mm)])
    square = cap_mm_s * cap_mm_s
    forward = np.minimum.accumulate(square - room)
    forward += room
    backward = np.minimum.accumulate((square + room)[::-1])[::-1]
    backward -= room
    np.minimum(forward, backward, out=forward)
    return np.asarray(
        np.sqrt(np.clip(forward, 0.0, square))
    )  # the sums round: no speed above its cap, none below standing

"""An independent look at the pieces: walls found on a mesh by trimesh, volumes by shapely. For tests only."""

from __future__ import annotations

import numpy as np
import shapely
import trimesh

from core.pieces.bounds import Bounds
from core.pieces.solid import RELIEF_STEP_MM

LONG = Bounds(bed_x_mm=320.0, bed_y_mm=320.0, caliper_mm=300.0)


def bounds_for(key: str) -> Bounds:
    """Bounds that leave room for every set."""
    return LONG if key.startswith("half_combs") else Bounds()


def walls_along(mesh: trimesh.Trimesh, first, second) -> np.ndarray:
    """Return where the line through two points crosses the surface, mm from the first towards the second."""
    first, second = np.asarray(first, float), np.asarray(second, float)
    along = (second - first) / np.linalg.norm(second - first)
    upright = abs(along[2]) > 0.5
    normal = np.array([0.0, 1.0, 0.0]) if upright else np.array([0.0, 0.0, 1.0])
    across = np.cross(normal, along)
    ends = trimesh.intersections.mesh_plane(mesh, normal, first)
    side = (ends - first) @ across
    t = (ends - first) @ along
    cut = (side[:, 0] < 1e-7) != (side[:, 1] < 1e-7)
    (s0, s1), (t0, t1) = side[cut].T, t[cut].T
    return np.sort(t0 + (t1 - t0) * s0 / (s0 - s1))


def volume_mm3(planned) -> list[float]:
    """Return the volume of each piece, added up slab by slab from its drawing."""
    return [_volume(piece) for piece in planned.pieces]


def _volume(piece) -> float:
    slabs = []
    for prism in piece.prisms:
        region = shapely.Polygon(prism.outlines[0], prism.outlines[1:])
        low, inset = prism.low_mm, prism.relief_mm
        while inset > 1e-9:
            slabs.append((low, low + RELIEF_STEP_MM, region.buffer(-inset, join_style="mitre")))
            low, inset = low + RELIEF_STEP_MM, inset - RELIEF_STEP_MM
        slabs.append((low, prism.high_mm, region))
    levels = sorted({round(z, 9) for low, high, _ in slabs for z in (low, high)})
    total = 0.0
    for low, high in zip(levels, levels[1:], strict=False):
        middle = (low + high) / 2
        total += (high - low) * shapely.union_all([r for a, b, r in slabs if a < middle < b]).area
    return total

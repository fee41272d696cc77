"""Solids of the pieces, by manifold3d: closed by construction, in millimetres, standing on the bed.

The lower edge of a relieved prism steps in layer by layer under 45 degrees, as it is printed.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from core.pieces.piece import Piece, PrintSet, Prism

if TYPE_CHECKING:
    from manifold3d import CrossSection, Manifold

RELIEF_STEP_MM = 0.2
Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Solid:
    """A closed body of triangles: corners (n, 3) mm, corner numbers (m, 3) anticlockwise from outside, and volume."""

    name: str
    corners_mm: Floats
    triangles: NDArray[np.int64]
    volume_mm3: float


def solids_of(planned: PrintSet, *, relieved: bool = True) -> tuple[Solid, ...]:
    """Return the solids of a set where they stand on the bed, one for each piece."""
    return tuple(solid_of(piece, relieved=relieved) for piece in planned.pieces)


def solid_of(piece: Piece, *, relieved: bool = True) -> Solid:
    """Return the solid of a piece; not `relieved`: without the steps of its lower edge, for pictures."""
    from manifold3d import Manifold, OpType

    prisms = [prism if relieved else replace(prism, relief_mm=0.0) for prism in piece.prisms]
    slabs = [slab for prism in prisms for slab in _slabs(prism)]
    body = Manifold.batch_boolean(slabs, OpType.Add)  # pairs of small bodies: quicker than one after another
    if piece.turned:
        body = body.rotate([0.0, 0.0, 90.0])
    body = body.translate([*piece.place_mm, 0.0])
    assert isinstance(body, Manifold)
    mesh = body.to_mesh64()
    corners = np.array(mesh.vert_properties, dtype=np.float64)[:, :3]
    triangles = np.array(mesh.tri_verts, dtype=np.int64)
    for array in (corners, triangles):
        array.flags.writeable = False
    return Solid(str(piece.name), corners, triangles, float(body.volume()))


def _slabs(prism: Prism) -> list[Manifold]:
    """Return the prism as slabs, one for each step of its lower edge and one for the rest."""
    from manifold3d import CrossSection, FillRule

    region = CrossSection([list(outline) for outline in prism.outlines], FillRule.EvenOdd)
    low, slabs = prism.low_mm, []
    inset = prism.relief_mm
    while inset > 1e-9:
        slabs.append(_slab(_inset(region, inset), low, low + RELIEF_STEP_MM))
        low, inset = low + RELIEF_STEP_MM, inset - RELIEF_STEP_MM
    return [_slab(region, low, prism.high_mm), *slabs]


def _slab(region: CrossSection, low_mm: float, high_mm: float) -> Manifold:
    return region.extrude(high_mm - low_mm).translate([0.0, 0.0, low_mm])


def _inset(region: CrossSection, by_mm: float) -> CrossSection:
    from manifold3d import JoinType

    return region.offset(-by_mm, JoinType.Miter, 4.0)

"""A test piece made solid and written as 3MF and as STL, beside the two libraries used directly.

The peer makes the same union of the same prisms and writes it by the same library, to its place at once. Ours writes
beside the place and moves the file there; into a 3MF it also puts the name of the set and a picture of it.
"""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from functools import partial
from pathlib import Path

import numpy as np

from tests.benchmarks.sidebyside import Contest, Way

TITLE = "Piece to a file"
LAYER_MM = 0.2  # steps of a relieved edge


def contests(quick: bool) -> Iterator[Contest]:
    """The largest piece and a plain one; the answers are read back from the files."""
    import lib3mf

    from core.pieces.catalogue import plan_set
    from core.pieces.meshfiles import write_pieces

    library = lib3mf.get_wrapper()
    planned = plan_set("comb_x")
    with tempfile.TemporaryDirectory() as folder:
        for kind in ("3mf",) if quick else ("3mf", "stl"):
            paths = Path(folder) / f"ours.{kind}", Path(folder) / f"peer.{kind}"

            def ours(path: Path = paths[0]) -> Path:
                write_pieces(planned, path)
                return path

            yield Contest(
                kind,
                f"size comb to {kind.upper()}",
                Way("write_pieces", ours),
                (
                    Way(
                        "manifold3d and lib3mf directly",
                        partial(write_directly, library, planned, kind, paths[1]),
                        partial(volumes_apart, library),
                    ),
                ),
                (1e-6, "of the volume"),
            )


def write_directly(library, planned, kind: str, path: Path) -> Path:
    import lib3mf

    model = library.CreateModel()
    for piece in planned.pieces:
        mesh = body_of(piece).to_mesh64()
        corners = np.array(mesh.vert_properties, dtype=np.float32)[:, :3].tobytes()
        triangles = np.array(mesh.tri_verts, dtype=np.uint32).tobytes()
        body = model.AddMeshObject()
        body.SetGeometry(
            (lib3mf.Position * (len(corners) // 12)).from_buffer_copy(corners),
            (lib3mf.Triangle * (len(triangles) // 12)).from_buffer_copy(triangles),
        )
        model.AddBuildItem(body, library.GetIdentityTransform())
    model.QueryWriter(kind).WriteToFile(str(path))
    return path


def body_of(piece):
    from manifold3d import CrossSection, FillRule, JoinType

    body = None
    for prism in piece.prisms:
        region = CrossSection([list(outline) for outline in prism.outlines], FillRule.EvenOdd)
        low, parts, inset = prism.low_mm, [], prism.relief_mm
        while inset > 1e-9:
            parts.append(region.offset(-inset, JoinType.Miter, 4.0).extrude(LAYER_MM).translate([0.0, 0.0, low]))
            low, inset = low + LAYER_MM, inset - LAYER_MM
        parts.append(region.extrude(prism.high_mm - low).translate([0.0, 0.0, low]))
        for part in parts:
            body = part if body is None else body + part
    if piece.turned:
        body = body.rotate([0.0, 0.0, 90.0])
    return body.translate([*piece.place_mm, 0.0])


def volumes_apart(library, ours: Path, other: Path) -> float:
    mine, its = volume_of(library, ours), volume_of(library, other)
    return abs(mine - its) / its


def volume_of(library, path: Path) -> float:
    """Volume of all bodies of a file, as the library reads it."""
    model = library.CreateModel()
    model.QueryReader(path.suffix.removeprefix(".")).ReadFromFile(str(path))
    meshes, total = model.GetMeshObjects(), 0.0
    while meshes.MoveNext():
        body = meshes.GetCurrentMeshObject()
        corners = np.array([list(point.Coordinates) for point in body.GetVertices()])
        triangles = np.array([list(triangle.Indices) for triangle in body.GetTriangleIndices()])
        a, b, c = (corners[triangles[:, i]] for i in range(3))
        total += float(np.einsum("ij,ij->", a, np.cross(b, c))) / 6.0
    return total

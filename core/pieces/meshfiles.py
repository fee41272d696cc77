"""Files of the pieces: 3MF (names, units, a picture of the set) and STL. The only place of the core that writes them.

Reference: 3MF Core Specification 1.3 (3MF Consortium), written by its own library lib3mf; STL has no unit, by custom
it is read as millimetres.
"""

from __future__ import annotations

import locale
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np

from core.errors import StoreError
from core.pieces.outfile import moved_into_place
from core.pieces.piece import PrintSet
from core.pieces.solid import Solid, solids_of
from core.pieces.view import png_of, view_of
from core.words import tr

_PICTURE_PX = (256, 256)
KINDS = ("3mf", "stl")
_STL_HEAD = 80  # bytes, by custom free


def write_pieces(planned: PrintSet, path: Path, mark: str = "") -> None:
    """Write a set as 3MF or STL, as the ending of the path says.

    Args:
        planned: the pieces.
        path: of the file.
        mark: what the file says of itself, 80 letters of ASCII at most; nothing for none.

    Raises:
        StoreError: the file cannot be written, or its ending is another.
    """
    kind = path.suffix.lower().removeprefix(".")
    if kind not in KINDS:
        raise StoreError(tr("{name} is neither .3mf nor .stl; choose one of the two.", name=path.name))
    with moved_into_place(path) as beside, _same_locale():
        _write(planned, solids_of(planned), kind, beside, mark)


@contextmanager
def _same_locale() -> Iterator[None]:
    """Bring the locale of the process back: lib3mf 2.5 leaves it at "C", and names in other letters unreadable."""
    before = locale.setlocale(locale.LC_ALL)
    try:
        yield
    finally:
        locale.setlocale(locale.LC_ALL, before)


def _write(planned: PrintSet, solids: Sequence[Solid], kind: str, path: Path, mark: str) -> None:
    import lib3mf

    library = _library()
    model = library.CreateModel()
    model.SetUnit(lib3mf.ModelUnit.MilliMeter)
    for solid in solids:
        body = model.AddMeshObject()
        body.SetName(solid.name)
        body.SetGeometry(*_arrays(solid))
        model.AddBuildItem(body, library.GetIdentityTransform())
    if kind == "3mf":
        told = model.GetMetaDataGroup()
        told.AddMetaData("", "Title", str(planned.name), "xs:string", True)
        if mark:
            told.AddMetaData("", "Description", mark, "xs:string", True)
        picture = png_of(view_of(solids_of(planned, relieved=False), *_PICTURE_PX))
        model.CreatePackageThumbnailAttachment().ReadFromBuffer(list(picture))
    writer = model.QueryWriter(kind)
    try:
        writer.WriteToFile(str(path))
    except lib3mf.ELib3MFException as error:
        raise OSError(str(error)) from error
    if kind == "stl" and mark:
        _head_stl(path, mark)


def _head_stl(path: Path, mark: str) -> None:
    """Write the mark where a binary STL has room for words: its first 80 bytes."""
    with path.open("r+b") as file:
        file.write(mark.encode("ascii", "replace")[:_STL_HEAD].ljust(_STL_HEAD))


@cache
def _library() -> Any:
    """Return the library, loaded once: that looks up every one of its functions."""
    import lib3mf

    return lib3mf.get_wrapper()


def _arrays(solid: Solid) -> tuple[Any, Any]:
    """Return corners and triangles as the library wants them."""
    import lib3mf

    corners = np.ascontiguousarray(solid.corners_mm, dtype=np.float32).tobytes()
    triangles = np.ascontiguousarray(solid.triangles, dtype=np.uint32).tobytes()
    return (
        (lib3mf.Position * len(solid.corners_mm)).from_buffer_copy(corners),
        (lib3mf.Triangle * len(solid.triangles)).from_buffer_copy(triangles),
    )

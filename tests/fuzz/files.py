"""Files that nobody should hand to the program: of other kinds, cut off, endless, too deep, too large, or no files."""

from __future__ import annotations

import gzip
import json
import os
import sqlite3
import struct
import zipfile
import zlib
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from core.records.exchange import PROGRAM
from core.records.upgrade import KNOWN

_HEAD = b"axis,kind,nominal_mm,measured_mm\n"
_CONTENTS: dict[str, bytes] = {
    "binary.csv": bytes(range(256)) * 64,
    "empty.csv": b"",
    "long_line.csv": b"1," * 100_000,
    "formula.csv": _HEAD + b"=1+1,@x,+5,-cmd\n\tx,\rgap,=A1,12\n",
    "wide.csv": ("\ufeff" + _HEAD.decode() + "x,gap,1,1\n").encode("utf-16"),
    "zero.csv": _HEAD + b"x,gap,1\0,1\n",
    "latin.csv": "größe,maß\n1,5;2,5\n".encode("latin-1"),
    "log.csv": b"time,x\n0,1\n0,nan\n1e999,2\n" * 200,
    "still.csv": b"time,x\n" + b"".join(b"%f,0\n" % (n / 400) for n in range(2000)),
    "deep.json": b"[" * 100_000,
    "twice.json": b'{"program":"slipgauge","program":{"$float":[]}}',
    "tag.json": b'{"$float":' + b"9" * 400 + b"}",
    "long_number.json": b'{"rows":' + b"9" * 6000 + b"}",
    "other_version.json": b'{"program":"slipgauge","tables":"9999","rows":{}}',
    "no_rows.json": json.dumps({"program": PROGRAM, "tables": KNOWN[-1], "rows": {}}).encode(),
    "hostile.gcode": b"G1 X1e999 Y1..2 F\nG2 I J R0\n\x00\xffG91\nM83 E9e99\n" * 50,
    "circles.gcode": b"G3 X1 Y1 I1e-300 J0 E1\nG2 X0 Y0 I0 J0 F1e300\nG92 E-1e308\n" * 50,
    "packed.csv": gzip.compress(b"0,0\n" * 1_000_000),
}


def hostile_files(folder: Path) -> list[Path]:
    """Write them into a folder and return where they are, with the folder itself and one that is gone."""
    for name, content in _CONTENTS.items():
        (folder / name).write_bytes(content)
    makers: dict[str, Callable[[Path], object]] = {
        "loop.csv": lambda path: path.symlink_to(path),
        "pipe.json": os.mkfifo,
        "zero.gcode": lambda path: path.symlink_to("/dev/zero"),
        "sparse.json": _make_sparse,
        "bomb.3mf": _make_bomb,
        "picture.png": lambda path: path.write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(range(256))),
        "huge.png": _make_huge_picture,
        "other.sqlite": _make_other_database,
    }
    for name, make in makers.items():
        if not os.path.lexists(folder / name):
            make(folder / name)
    return [*(folder / name for name in (*_CONTENTS, *makers)), folder, folder / "gone.csv"]


def _make_sparse(path: Path) -> None:
    """A gigabyte that takes no room on the disk."""
    with path.open("wb") as file:
        file.truncate(10**9)


def _make_bomb(path: Path) -> None:
    """An archive whose one part grows a thousandfold when it is opened."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("3D/3dmodel.model", b"<model/>" + b" " * 20_000_000)


def _make_huge_picture(path: Path) -> None:
    """A picture that says of itself that it is 25 000 pixels wide and high, and holds none of them."""

    def chunk(kind: bytes, content: bytes) -> bytes:
        return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))

    head = chunk(b"IHDR", struct.pack(">IIBBBBB", 25_000, 25_000, 8, 2, 0, 0, 0))
    path.write_bytes(b"\x89PNG\r\n\x1a\n" + head + chunk(b"IDAT", zlib.compress(b"\0" * 99)) + chunk(b"IEND", b""))


def _make_other_database(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("CREATE TABLE trial (x BLOB)")
        connection.commit()

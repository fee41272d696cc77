"""Everything that is on record as text for other programs and back: a folder of CSV tables, or one JSON file.

CSV: one file a table, named after it, the first line names the columns; `about.csv` tells the version of the tables.
JSON: one object; its `tables` tell the version, its `rows` hold each table as a list of objects, one a line. A table or
column of the shop that a file does not have, and one that the shop does not have, are faults of the file.
"""

from __future__ import annotations

import csv
import io
import json
import os
import shutil
import sys
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain
from pathlib import Path
from typing import Any

from sqlalchemy import Table
from sqlalchemy.orm import Session

from core.errors import InputError
from core.records.backup import Step, no_step, share_of
from core.records.cells import cell_from_value, plain_from_row, value_from_cell, value_from_plain
from core.records.columns import json_from_value, value_from_json
from core.records.faults import store_error
from core.records.log import DEMO_MARK, newest_value
from core.records.outside import content_of
from core.records.transfer import ROWS_AT_ONCE, TABLES, Row, columns_of, count_rows, read_rows
from core.records.upgrade import KNOWN
from core.words import tr

ABOUT = "about.csv"
PROGRAM = "slipgauge"
LARGEST_MB = 300  # of one file: a shop with years of readings and photos; read whole it takes some ten times as much
RowCheck = Callable[[str, Row], Sequence[str]]  # what is wrong with a row of a table, a sentence each
_ENCODING = "utf-8-sig"  # spreadsheets take the mark as the sign of UTF-8


def no_faults(_table: str, _row: Row) -> Sequence[str]:
    """Find nothing wrong with a row whose columns have taken it."""
    return ()


@dataclass(slots=True)
class Parsed:
    """What a file holds: of each table the place and the values of its rows, and what is wrong with it."""

    rows: dict[str, list[tuple[str, Row]]] = field(default_factory=dict)
    faults: list[tuple[str, str]] = field(default_factory=list)

    def check(self, check: RowCheck, step: Step = no_step) -> None:
        """Add what a check finds wrong with the rows."""
        whole, done = max(sum(map(len, self.rows.values())), 1), 0
        for table, rows in self.rows.items():
            for place, row in rows:
                if done % ROWS_AT_ONCE == 0:
                    step(done / whole)
                self.faults += [(place, says) for says in check(table, row)]
                done += 1


def write_csv(session: Session, folder: Path, step: Step = no_step) -> None:
    """Write every table into a new folder; it has its name only when it is complete.

    Raises:
        InputError: field `file`: there is something of that name.
        StoreError: the disk refuses.
    """
    part = _part_of(folder)
    try:
        part.mkdir()
        _write_table(part / ABOUT, list(zip(*_about(session).items(), strict=True)))
        for table, rows in _tables(session, step):
            lines = ([cell_from_value(column, row[column.name]) for column in columns_of(table)] for row in rows)
            _write_table(part / f"{table.name}.csv", chain([_names(table)], lines))
        part.rename(folder)
    except OSError as error:
        raise store_error(error, str(folder)) from error
    finally:
        shutil.rmtree(part, ignore_errors=True)


def _about(session: Session) -> dict[str, str]:
    """Return what stands at the head of an export; one of the demo shop says so there."""
    head, mark = {"program": PROGRAM, "tables": KNOWN[-1]}, newest_value(session, DEMO_MARK)
    return head if mark is None else {**head, "note": str(mark.value.get("says", DEMO_MARK))}


def _names(table: Table) -> list[str]:
    return [column.name for column in columns_of(table)]


def _write_table(path: Path, lines: Iterable[Sequence[str]]) -> None:
    with path.open("w", encoding=_ENCODING, newline="") as file:
        csv.writer(file).writerows(lines)
        file.flush()
        os.fsync(file.fileno())


def write_json(session: Session, path: Path, step: Step = no_step) -> None:
    """Write every table into a new file; raises as `write_csv`."""
    part = _part_of(path)
    try:
        with part.open("x", encoding="utf-8") as file:
            about = "".join(f'"{key}":{json_from_value(says)},' for key, says in _about(session).items())
            file.write(f'{{{about}"rows":{{')
            comma = ""
            for table, rows in _tables(session, step):
                file.write(f'{comma}\n"{table.name}":[')
                comma = ""
                for row in rows:
                    file.write(f"{comma}\n{json_from_value(plain_from_row(table, row))}")
                    comma = ","
                file.write("\n]")
                comma = ","
            file.write("\n}}\n")
            file.flush()
            os.fsync(file.fileno())
        part.rename(path)
    except OSError as error:
        raise store_error(error, str(path)) from error
    finally:
        part.unlink(missing_ok=True)


def _part_of(path: Path) -> Path:
    if path.exists():
        raise InputError("file", tr("{file} is there already; choose another name.", file=path))
    return path.with_name(path.name + ".part")


def _tables(session: Session, step: Step) -> Iterator[tuple[Table, Iterator[Row]]]:
    """Yield each table with its rows, which are read while they are written."""
    whole, done = max(sum(count_rows(session).values()), 1), 0

    def rows_of(table: Table) -> Iterator[Row]:
        nonlocal done
        for part in read_rows(session, table):
            yield from part
            done += len(part)
            step(done / whole)

    for table in TABLES:
        yield table, rows_of(table)


def read_export(path: Path, step: Step = no_step) -> Parsed:
    """Read a folder of CSV tables, any file in it, or a JSON file; `step` is told the part done.

    Raises:
        InputError: field `file`: it is none of these, or of another version.
    """
    try:
        if path.suffix.lower() == ".json":
            return _read_json(path, step)
        return _read_csv(path if path.is_dir() else path.parent, step)
    except OSError as error:
        raise InputError("file", tr("{file} cannot be read; check that you may open it.", file=path)) from error
    except UnicodeDecodeError as error:
        sentence = tr("{file} is not UTF-8 text; save it as that, then try again.", file=path)
        raise InputError("file", sentence) from error


def _read_csv(folder: Path, step: Step) -> Parsed:
    if not (folder / ABOUT).is_file():
        raise _no_export(folder)
    about = [cells for _, cells in _lines(folder / ABOUT)]
    _check_version(folder, dict(zip(*about[:2], strict=False)) if len(about) > 1 else {})
    parsed = Parsed()
    for number, table in enumerate(TABLES):
        parsed.rows[table.name] = []
        file = folder / f"{table.name}.csv"
        if file.is_file():
            _read_table(parsed, table, file, share_of(step, number / len(TABLES), (number + 1) / len(TABLES)))
        else:
            parsed.faults.append((file.name, tr("The file is missing; export anew.")))
    return parsed


def _lines(path: Path) -> Iterator[tuple[int, list[str]]]:
    """Yield each row of cells with the number of the line where it begins."""
    before = csv.field_size_limit(sys.maxsize)  # a photo is one cell
    try:
        text = content_of(path, LARGEST_MB).decode(_ENCODING)
        reader, number = csv.reader(io.StringIO(text, newline=""), strict=True), 1
        for cells in reader:
            yield number, cells
            number = reader.line_num + 1
    except csv.Error as error:
        sentence = tr(
            "{file}, line {number}: a quotation mark is not closed, or stands inside a cell; correct it.",
            file=path,
            number=number,
        )
        raise InputError("file", sentence) from error
    finally:
        csv.field_size_limit(before)


def _read_table(parsed: Parsed, table: Table, file: Path, step: Step) -> None:
    lines = _lines(file)
    _, header = next(lines, (1, []))
    if sorted(header) != sorted(table.columns.keys()):
        names = ", ".join(_names(table))
        parsed.faults.append(
            (tr("{file}, line {number}", file=file.name, number=1), tr("The columns must be: {names}.", names=names))
        )
        return
    for count, (number, cells) in enumerate(lines):
        if count % ROWS_AT_ONCE == 0:
            step(0.0)  # how many lines are to come nobody knows
        place = tr("{file}, line {number}", file=file.name, number=number)
        if len(cells) != len(header):
            sentence = tr(
                "{found} cells instead of {wanted}; give every column its cell.", found=len(cells), wanted=len(header)
            )
            parsed.faults.append((place, sentence))
        elif any(cells):
            _read_row(parsed, table, place, dict(zip(header, cells, strict=True)), value_from_cell)


def _read_row(parsed: Parsed, table: Table, place: str, found: Mapping[str, Any], value_from: Any) -> None:
    row, faults = {}, []
    for column in columns_of(table):
        try:
            row[column.name] = value_from(column, found.get(column.name))
        except ValueError as error:
            faults.append((place, error.args[0]))
    parsed.faults += faults
    if not faults:
        parsed.rows[table.name].append((place, row))


def _read_json(path: Path, step: Step) -> Parsed:
    try:
        found = value_from_json(content_of(path, LARGEST_MB).decode("utf-8"))
    except json.JSONDecodeError as error:
        sentence = tr("{file} is not JSON from line {number} on; export anew.", file=path, number=error.lineno)
        raise InputError("file", sentence) from error
    except (InputError, UnicodeDecodeError):
        raise
    except ValueError as error:
        raise _no_export(path) from error
    if not isinstance(found, dict) or not isinstance(found.get("rows"), dict):
        raise _no_export(path)
    _check_version(path, found)
    parsed = Parsed()
    for at, table in enumerate(TABLES):
        parsed.rows[table.name] = []
        records = found["rows"].get(table.name)
        if not isinstance(records, list):
            parsed.faults.append((table.name, tr("The table is missing; export anew.")))
            continue
        for number, record in enumerate(records, start=1):
            if number % ROWS_AT_ONCE == 1:
                step((at + number / len(records)) / len(TABLES))
            place = tr("{table}, record {number}", table=table.name, number=number)
            if isinstance(record, dict) and record.keys() == set(table.columns.keys()):
                _read_row(parsed, table, place, record, value_from_plain)
            else:
                names = ", ".join(_names(table))
                parsed.faults.append((place, tr("The columns must be: {names}.", names=names)))
    return parsed


def _no_export(path: Path) -> InputError:
    return InputError(
        "file",
        tr("{file} is no export of this program; choose a folder that holds {about}, or a JSON file.",
           file=path, about=ABOUT),
    )  # fmt: skip


def _check_version(path: Path, about: Mapping[str, Any]) -> None:
    if about.get("program") != PROGRAM:
        raise _no_export(path)
    if about.get("tables") != KNOWN[-1]:
        raise InputError(
            "file",
            tr(
                "{file} was exported with tables {found}; this program reads tables {known}. Open the database itself "
                "with this program, or with a newer one, and export it anew.",
                file=path,
                found=about.get("tables"),
                known=KNOWN[-1],
            ),
        )

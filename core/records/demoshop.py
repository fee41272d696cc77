"""The demo shop: an invented shop in a database file of its own, beside that of the person and never mixed with it.

It comes with the program as an export, `resources/demo/shop.json`, which `python -m tests.demo` writes. All its moments
are moved on by whole days so that the newest is of yesterday. A value for the whole shop marks it; the mark goes along
with every copy and export.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from importlib.resources import as_file, files
from pathlib import Path
from typing import Any

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from core.errors import InputError, StoreError
from core.records.engine import Database
from core.records.exchange import Parsed, read_export
from core.records.faults import store_error
from core.records.log import DEMO_MARK, newest_value
from core.records.merge import import_parsed
from core.records.place import default_database_path, file_place, prepare
from core.records.transfer import TABLES, count_rows, empty_all
from core.records.upgrade import bring_up_to_date
from core.words import tr

FILE_NAME = "demo.sqlite"
_BEGUN = "begun"  # in the mark: what the database held when it was begun


def demo_path() -> Path:
    """Return where the demo shop lies: in the person's data folder. Raises as `default_database_path`."""
    return default_database_path().with_name(FILE_NAME)


def ready_demo(path: Path, now: datetime, *, anew: bool = False) -> None:
    """Begin the demo shop, or begin it anew unless somebody has worked in it.

    Args:
        path: of its database file; the folder is made where there is none.
        now: the present moment; the newest record is of the day before.
        anew: begin anew although somebody has worked in it.

    Raises:
        StoreError: the disk refuses, or what is there is no demo shop; it is left as it is.
    """
    place = file_place(path)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise store_error(error, place.shown) from error
    prepare(place)
    database = Database(place)
    try:
        bring_up_to_date(database, copy_first=False)
        with database.transaction(write=True) as session:
            if not _worked_in(session, place.shown) or anew:
                empty_all(session)
                import_parsed(session, _fresh(now))
    finally:
        database.close()


def refuse_demo(session: Session, parsed: Parsed, path: str) -> None:
    """Refuse an export of the demo shop unless it goes into one: invented records are not mixed with a person's own.

    Raises:
        InputError: field `file`.
    """
    marked = any(row["key"] == DEMO_MARK for _, row in parsed.rows["shop_value"])
    if marked and newest_value(session, DEMO_MARK) is None:
        raise InputError(
            "file",
            tr("{file} is an export of the demo shop, invented data; it is not mixed with your own.", file=path),
        )


def _worked_in(session: Session, shown: str) -> bool:
    """Tell whether anything was added, changed or taken away since the demo shop was begun; False where it is empty."""
    counts = count_rows(session)
    if not any(counts.values()):
        return False
    mark = newest_value(session, DEMO_MARK)
    if mark is None:
        raise StoreError(tr("{where} is not the demo shop, and was left as it is; move it away first.", where=shown))
    versions = sum(
        session.scalar(select(func.sum(table.c.version))) or 0 for table in TABLES if "version" in table.columns
    )
    return mark.value.get(_BEGUN) != _state(counts, versions)


def _state(counts: dict[str, int], versions: int) -> dict[str, int]:
    return {**counts, "versions": versions}


def _fresh(now: datetime) -> Parsed:
    """Return the invented records with their moments moved on."""
    with as_file(files("resources") / "demo" / "shop.json") as file:
        parsed = read_export(file)
    rows = [row for found in parsed.rows.values() for _, row in found]
    moments = [value for row in rows for value in row.values() if isinstance(value, datetime)]
    later = timedelta(days=(now.date() - max(moments).date()).days - 1)
    counts = {name: len(found) for name, found in parsed.rows.items()}
    begun = _state(counts, sum(row.get("version", 0) for row in rows))
    for name, found in parsed.rows.items():
        parsed.rows[name] = [(place, _moved(row, later, begun)) for place, row in found]
    return parsed


def _moved(row: Any, later: timedelta, begun: dict[str, int]) -> dict[str, Any]:
    moved = {name: value + later if isinstance(value, datetime) else value for name, value in row.items()}
    if row.get("key") == DEMO_MARK:
        moved["value"] = {**row["value"], _BEGUN: begun}
    return moved

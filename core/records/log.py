"""What happened in the shop, as the store holds it: events, small files, and values for the whole shop.

Only ever added to: an event logged by mistake is taken back by a later one, a value gives way to a newer one.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import or_, select
from sqlalchemy.orm import Session

from core.errors import InputError
from core.records.engine import Database
from core.records.rows import Attachment, Event, Machine, ShopValue
from core.records.serials import next_serial
from core.records.tables import (
    AttachmentRow,
    Base,
    EventRow,
    InstrumentRow,
    LotRow,
    MachineRow,
    ShopValueRow,
    TrialRow,
)
from core.words import tr

LARGEST_BYTES = 4 * 2**20  # a photograph of 1600 pixels takes a tenth of it
DEMO_MARK = "demo"  # key of the value for the whole shop that tells invented records from a person's own
_EVENT = tuple(field.name for field in fields(Event))
_ATTACHMENT = tuple(field.name for field in fields(Attachment))
_SHOP_VALUE = tuple(field.name for field in fields(ShopValue))
_POINTERS: dict[str, type[Base]] = {
    "machine_id": MachineRow,
    "lot_id": LotRow,
    "instrument_id": InstrumentRow,
    "trial_id": TrialRow,
    "event_id": EventRow,
    "takes_back": EventRow,
}


class Log:
    """The part of the store that is only added to. Every method raises `StoreError` when disk, lock or server fail.

    Attributes:
        author: who is at work at this seat; whatever is kept without an author is theirs.
    """

    def __init__(self, database: Database) -> None:
        self._database = database
        self.author = ""

    def log_event(self, event: Event) -> Event:
        """Add an event; it is dated and numbered here.

        Raises:
            InputError: no kind, or it points to what is not on record (the field names the pointer).
        """
        with self._database.transaction(write=True) as session:
            return write_event(session, replace(event, author=event.author or self.author))

    def events(
        self,
        machine_id: int | None = None,
        lot_id: int | None = None,
        instrument_id: int | None = None,
        kind: str | None = None,
    ) -> tuple[Event, ...]:
        """Return events in the order they were logged; None leaves a condition out."""
        wanted = {"machine_id": machine_id, "lot_id": lot_id, "instrument_id": instrument_id, "kind": kind}
        conditions = [getattr(EventRow, name) == value for name, value in wanted.items() if value is not None]
        with self._database.transaction() as session:
            columns = (getattr(EventRow, name) for name in _EVENT)
            found = session.execute(select(*columns).where(*conditions).order_by(EventRow.id)).mappings()
            return tuple(Event(**row) for row in found)

    def events_about(self, machine_id: int, lot_id: int | None = None) -> tuple[Event, ...]:
        """Return what concerns a machine, in the order of logging: its own, its lot's, and those of no machine."""
        conditions = [EventRow.machine_id == machine_id, EventRow.machine_id.is_(None)]
        if lot_id is not None:
            conditions.append(EventRow.lot_id == lot_id)
        with self._database.transaction() as session:
            columns = (getattr(EventRow, name) for name in _EVENT)
            found = session.execute(select(*columns).where(or_(*conditions)).order_by(EventRow.id)).mappings()
            return tuple(Event(**row) for row in found)

    def attach(self, attachment: Attachment, content: bytes) -> Attachment:
        """Keep a small file; pictures are made small before.

        Raises:
            InputError: field `content`: nothing in it or too much; or it points to what is not on record.
        """
        if not content:
            raise InputError("content", tr("The file {name} is empty; choose another one.", name=attachment.name))
        if len(content) > LARGEST_BYTES:
            raise InputError(
                "content",
                tr(
                    "The file {name} has {size} MiB; at most {largest} MiB are kept. Make it smaller.",
                    name=attachment.name,
                    size=f"{len(content) / 2**20:.1f}",
                    largest=LARGEST_BYTES // 2**20,
                ),
            )
        author, at = attachment.author or self.author, attachment.at or datetime.now(UTC)
        given = replace(attachment, author=author, at=at, size=len(content), id=None)
        with self._database.transaction(write=True) as session:
            _check_pointers(session, given)
            row = AttachmentRow(content=content, **{name: getattr(given, name) for name in _ATTACHMENT})
            session.add(row)
            session.flush()
            return replace(given, id=row.id)

    def attachments(
        self,
        machine_id: int | None = None,
        lot_id: int | None = None,
        trial_id: int | None = None,
        event_id: int | None = None,
    ) -> tuple[Attachment, ...]:
        """Return what is attached, oldest first, without the bytes; None leaves a condition out."""
        wanted = {"machine_id": machine_id, "lot_id": lot_id, "trial_id": trial_id, "event_id": event_id}
        conditions = [getattr(AttachmentRow, name) == value for name, value in wanted.items() if value is not None]
        with self._database.transaction() as session:
            columns = (getattr(AttachmentRow, name) for name in _ATTACHMENT)
            found = session.execute(select(*columns).where(*conditions).order_by(AttachmentRow.id)).mappings()
            return tuple(Attachment(**row) for row in found)

    def attachment_content(self, attachment_id: int) -> bytes:
        """Return the bytes of an attachment; InputError `id` if there is none."""
        with self._database.transaction() as session:
            content = session.scalar(select(AttachmentRow.content).where(AttachmentRow.id == attachment_id))
        if content is None:
            raise InputError("id", tr("The attachment {number} is not on record.", number=attachment_id))
        return content

    @property
    def is_demo(self) -> bool:
        """Whether this is the demo shop, or a copy of it: invented records."""
        return self.shop_value(DEMO_MARK) is not None

    def shop_value(self, key: str) -> ShopValue | None:
        """Return the value for the whole shop that holds now; None where none was ever set."""
        with self._database.transaction() as session:
            return newest_value(session, key)

    def set_shop_value(self, key: str, value: Mapping[str, Any], seen: ShopValue | None) -> ShopValue:
        """Set a value for the whole shop; those before stay on record.

        Args:
            key: its name, for example `parts`.
            value: plain JSON values.
            seen: the value as the caller last had it from here, None for none.

        Raises:
            InputError: field `version`: another seat has set it since then.
        """
        with self._database.transaction(write=True) as session:
            newest = newest_value(session, key)
            if (newest and newest.id) != (seen and seen.id):
                raise InputError(
                    "version",
                    tr("{name} was changed elsewhere meanwhile; open it again, then repeat the change.", name=key),
                )
            given = ShopValue(key, dict(value), self.author, datetime.now(UTC))
            row = ShopValueRow(**{name: getattr(given, name) for name in _SHOP_VALUE})
            session.add(row)
            session.flush()
            return replace(given, id=row.id)


def write_event(session: Session, event: Event) -> Event:
    """Write an event within a transaction; see `Log.log_event`."""
    if not event.kind.strip():
        raise InputError("kind", tr("Say what happened; choose it from the list."))
    _check_pointers(session, event)
    given = replace(event, at=event.at or datetime.now(UTC), serial=next_serial(session), id=None)
    row = EventRow(**{name: getattr(given, name) for name in _EVENT})
    session.add(row)
    session.flush()
    return replace(given, id=row.id)


def write_parts(session: Session, before: Mapping[str, Any], machine: Machine, author: str) -> None:
    """Log that the parts of a machine's drives were counted, where they are others than before."""
    counted = {axis: dict(parts) for axis, parts in machine.drives.items()}
    if counted != {axis: dict(parts) for axis, parts in before.items()}:
        detail = {"step": "record", "results": ["steps"], "how": "count", "drives": counted}
        write_event(session, Event("checked", machine.id, detail=detail, author=author))


def _check_pointers(session: Session, row: Event | Attachment) -> None:
    for field, table in _POINTERS.items():
        number = getattr(row, field, None)
        if number is not None and session.get(table, number) is None:
            raise InputError(
                field,
                tr("The {thing} {number} is not on record; choose again.", thing=table.__tablename__, number=number),
            )


def newest_value(session: Session, key: str) -> ShopValue | None:
    """Return the value for the whole shop that holds now."""
    columns = (getattr(ShopValueRow, name) for name in _SHOP_VALUE)
    statement = select(*columns).where(ShopValueRow.key == key).order_by(ShopValueRow.id.desc()).limit(1)
    row = session.execute(statement).mappings().first()
    return None if row is None else ShopValue(**row)

"""The words typed for an entry of the logbook and not sent yet: each stays with the entry it was typed for."""

from __future__ import annotations

from collections.abc import Mapping

from app.widgets.fieldgrid import FieldGrid
from core.guidance.logentries import Entry

NOTE = "note"  # the field of the card, and before the keys of what is typed in it


class UnsentWords:
    """Shows in the card's field what was typed for the chosen entry, and keeps what was typed for the others."""

    def __init__(self, form: FieldGrid) -> None:
        self._form = form
        self._words: dict[str, str] = {}
        self._key = ""  # of the entry in sight

    def load(self, typed: Mapping[str, str]) -> None:
        """Take over what a draft holds, and show it when its entry is chosen."""
        self._words = {key: text for key, text in typed.items() if key.startswith(f"{NOTE}.")}
        self._show("")

    def follow(self, entry: Entry | None) -> None:
        """Go over to another entry; the one in sight keeps its field as it is."""
        key = _key(entry)
        if key != self._key:
            self._hold()
            self._show(key)

    def typed(self) -> dict[str, str]:
        """Return all words that were typed and not sent, for the draft."""
        self._hold()
        return dict(self._words)

    def forget(self, entry: Entry) -> None:
        """Take away the words of an entry: they were sent."""
        self._words.pop(_key(entry), None)
        if _key(entry) == self._key:
            self._show(self._key)

    def _hold(self) -> None:
        if self._key:
            self._words.pop(self._key, None)
            text = self._form.texts()[NOTE]
            self._words |= {self._key: text} if text else {}

    def _show(self, key: str) -> None:
        self._key = key
        self._form.clear_problems()
        self._form.set_texts({NOTE: self._words.get(key, "")})


def _key(entry: Entry | None) -> str:
    return f"{NOTE}.{entry.kind}.{entry.row.id}" if entry is not None else ""

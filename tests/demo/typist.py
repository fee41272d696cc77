"""Types the demo shop into the pages of the program, offscreen, as its people would; the clock is theirs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import ExitStack, contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any
from unittest.mock import patch

import numpy as np
from PySide6.QtCore import QSettings, QSignalBlocker
from PySide6.QtWidgets import QApplication

from app.context import Context
from app.mainwindow import MainWindow
from core.errors import InputError
from core.records.rows import Event, Trial, TrialState
from core.records.store import Store
from tests.demo.causes import GAUGES, LOTS, MACHINES
from tests.demo.script import Entry

LAST_DAY = datetime(2026, 1, 30, 16, tzinfo=UTC)
_DATED = ("core.records.trials", "core.records.log", "core.records.inforce")
_SPECIMEN, _SAME_STEP = ("step", "judge", "criterion"), 1e-9
_TAKES = timedelta(minutes=12)  # from the first reading to the last


class Clock(datetime):
    """The time in the shop."""

    here = LAST_DAY

    @classmethod
    def now(cls, tz: Any = None) -> datetime:
        """Return it."""
        return cls.here


@contextmanager
def shop_clock() -> Iterator[None]:
    """Let the store date by the clock of the shop."""
    with ExitStack() as stack:
        for module in _DATED:
            stack.enter_context(patch(f"{module}.datetime", Clock))
        yield


class Typist:
    """A window on a store, and the hands that use it."""

    def __init__(self, store: Store, folder: Path) -> None:
        self.store = store
        self.context = Context(store)
        self.window = MainWindow(QSettings(str(folder / "demo.ini"), QSettings.Format.IniFormat))
        self.window.resize(1280, 800)
        self.window.show()
        self.window.open_shop(self.context, "storage")

    def do(self, entry: Entry) -> None:
        """Do one thing."""
        Clock.here = LAST_DAY - timedelta(days=entry.day)
        self.context.sign(entry.person)
        if entry.does == "add":
            self._add(entry)
            return
        if entry.does == "event":
            self._log(entry)
            return
        self.window.show_page("storage")  # pages in view would judge at each choice
        self._pick(entry)
        if entry.does == "decide":
            self._decide(entry)
        elif entry.does == "withdraw":
            self._withdraw(entry)
        elif entry.does == "prediction":
            self._predict(entry)
        elif entry.does == "promise":
            self._kept(entry, self._page("promise").keep)
        elif entry.does == "lots":
            self._weigh(entry)
        else:
            self._type(entry)

    def close(self) -> None:
        """Close the window; what stands on a page and was not kept goes."""
        self.window.close()
        self.window.deleteLater()
        for trial in self.store.trials(limit=10_000):
            if trial.state is TrialState.OPEN and trial.id is not None:
                self.store.discard_draft(trial.id)

    def _ids(self, entry: Entry) -> Mapping[str, int | None]:
        rows = {"machine": self.store.machines(), "lot": self.store.lots(), "instrument": self.store.instruments()}
        return {kind: next((row.id for row in some if row.name == getattr(entry, kind)), None)
                for kind, some in rows.items()}  # fmt: skip

    def _pick(self, entry: Entry) -> None:
        ids = self._ids(entry)
        self.context.select_machine(ids["machine"])
        self.context.select_lot(ids["lot"])
        self.context.select_instrument(ids["instrument"])

    def _add(self, entry: Entry) -> None:
        for name in filter(None, entry.machine.split(",")):
            self.store.add_machine(MACHINES[name][0])
        for name in filter(None, entry.lot.split(",")):
            self.store.add_lot(LOTS[name][0])
        for name in filter(None, entry.instrument.split(",")):
            self.store.add_instrument(GAUGES[name][0])

    def _log(self, entry: Entry) -> None:
        ids = self._ids(entry)
        detail = entry.settings.get("detail", {})
        self.store.log_event(Event(entry.settings["kind"], ids["machine"], ids["lot"], detail=detail, note=entry.note))

    def _page(self, key: str) -> Any:
        self.window.show_page(key)
        QApplication.processEvents()
        return self.window._pages[key]

    def _kept(self, entry: Entry, keep: Any) -> Trial:
        before = {trial.id for trial in self.store.trials(limit=10_000)}
        keep()
        new = [trial for trial in self.store.trials(limit=5) if trial.id not in before or trial.kept_at == Clock.here]
        if not new:
            raise InputError(entry.does, f"{entry} was not kept: {self.window.notices.label.text()}")
        return new[0]

    def _decide(self, entry: Entry) -> None:
        page = self._page("logbook")
        pane = page.decision_pane
        pane.setting.set_value(entry.settings["setting"])
        pane.setting.changed.emit()
        pane.form.set_texts({"new": entry.settings["new"], "because": entry.note})
        pane.put.click()
        now = self.store.in_force(entry.settings["setting"], self.context.machine.id, self.context.lot.id)
        if now is None:
            raise InputError("decide", self.window.notices.label.text())

    def _withdraw(self, entry: Entry) -> None:
        """Take the newest size trial of a machine and lot out of use."""
        ids = self._ids(entry)
        newest = self.store.trials("sizeerror", ids["machine"], ids["lot"], limit=1)[0]
        assert newest.id is not None
        self.store.withdraw(newest.id, entry.note)

    def _predict(self, entry: Entry) -> None:
        page = self._page("prediction")
        if entry.settings.get("verify"):
            lock = self.store.trials("prediction", limit=1)[0]
            page.locked.set_value(str(lock.id))
            page.recompute()
            size = self.store.trials("sizeerror", self.context.machine.id, self.context.lot.id, limit=1)[0]
            page.read_by.set_value(str(size.id))
            page.recompute()
        self._kept(entry, page.keep)

    def _weigh(self, entry: Entry) -> None:
        page = self._page("lots")
        masses = (row["measured_mm"] for row in entry.rows)
        page.weighing.form.set_texts(dict(zip(("before_g", "now_g", "u_balance_g"), masses, strict=True)))
        self._kept(entry, page.keep_weighing)

    def _type(self, entry: Entry) -> None:
        page = self._page(entry.does)
        form = page.form
        if hasattr(form, "rng"):
            form.rng = np.random.default_rng(0)
        if page.kept_trial is not None:
            page.begin_anew()
        with QSignalBlocker(form):
            for key, value in entry.settings.items():
                field = form.settings.field(key)
                field.set_value(value)
                field.changed.emit()
            self._fill(page, entry)
        page.answer_change()
        Clock.here += _TAKES
        self._kept(entry, page.keep)

    def _fill(self, page: Any, entry: Entry) -> None:
        model, taken = page.form.model, set()
        for number, row in enumerate(entry.rows):
            place = number if "step" not in row else _specimen(model.rows(), row, taken)
            if place is None:  # one set of pieces is scored, and they are printed once more
                page.form.more_button.click()
                place = _specimen(model.rows(), row, taken)
                assert place is not None
            while place >= model.rowCount():
                (getattr(page, "add_button", None) or page.form.add_button).click()
            taken.add(place)
            for key, text in row.items():
                if key not in _SPECIMEN:
                    model.edit(place, key, text)
            if model.question(place) is not None:
                model.answer(place)  # read again: it is so
        page.form.table.go_to(model.rowCount() - 1)


def _specimen(rows: list[Mapping[str, Any]], wanted: Mapping[str, str], taken: set[int]) -> int | None:
    """Return the row of a specimen, None where none is left.

    The letters on the plate hide which step it is, and their order is by chance.
    """
    free = ((place, row) for place, row in enumerate(rows) if place not in taken and "step" in row)
    return next(
        (
            place
            for place, row in free
            if (row["judge"], row.get("criterion", "")) == (wanted["judge"], wanted.get("criterion", ""))
            and abs(row["step"] - float(wanted["step"])) < _SAME_STEP
        ),
        None,
    )

"""What other trials of the shop say of the picked machine and lot; of a large shop it is read beside the window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from app.context import Context
from app.jobs import at_once
from app.waitrow import WaitRow, is_large

if TYPE_CHECKING:
    from app.jobs import Step
    from app.widgets.resultcard import ResultCard
    from core.guidance.splitpair import SplitPair
    from core.guidance.splitshop import Shop
    from core.records.rows import SeriesPoint

Here = tuple[int, int]  # ids of machine and lot
_FETCHES = 6  # of series, two an axis


class LinkedPairs(QObject):
    """Of a large shop there is nothing at first; `found` tells when it is there."""

    found = Signal()

    def __init__(self, card: ResultCard, context: Context) -> None:
        super().__init__(card)
        self._card, self._context = card, context
        self._known: tuple[Here, dict[str, SplitPair]] | None = None
        self._asked: Here | None = None
        self._waiting: WaitRow | None = None

    def now(self) -> dict[str, SplitPair]:
        """Return by axis what is known now; none where no trial links the two, or it is still being read.

        Raises:
            InputError: for drive parts on record that cannot be.
            StoreError: the database cannot be read.
        """
        machine_id, lot_id = self._context.machine_id, self._context.lot_id
        if machine_id is None or lot_id is None:
            return {}
        here = machine_id, lot_id
        if self._known is not None and self._known[0] == here:
            return self._known[1]
        if not is_large(self._context):
            self._known = here, linked_pairs(self._context, here, at_once)
            return self._known[1]
        if self._asked != here:
            self._begin(here)
        return {}

    def forget(self) -> None:
        """Read it anew when it is asked for next."""
        self._known = self._asked = None
        if self._waiting is not None:
            self._waiting.job.stop()

    def _begin(self, here: Here) -> None:
        if self._waiting is None:
            self._waiting = WaitRow(self._card, self._context)
            self._waiting.job.answered.connect(self._take)
        context, self._asked = self._context, here
        self._waiting.start(lambda step: (here, linked_pairs(context, here, step)))

    def _take(self, answer: tuple[Here, dict[str, SplitPair]]) -> None:
        self._known = answer
        self.found.emit()


def linked_pairs(context: Context, here: Here, step: Step) -> dict[str, SplitPair]:
    """Return by axis what other trials of the shop say of a machine and a lot; none where no trial links them.

    Raises:
        InputError: for drive parts on record that cannot be.
        StoreError: the database cannot be read.
    """
    shop = told_apart(context, step)
    pairs = {axis: shop.pair(axis, *here) for axis in shop.axes}
    return {axis: pair for axis, pair in pairs.items() if pair is not None and pair.others > 0}


def told_apart(context: Context, step: Step) -> Shop:
    """Read all that is kept, and tell machines and lots apart; raises as `linked_pairs`."""
    from core.guidance.splitshop import read_shop

    store, fetched = context.store, 0

    def fetch(name: str) -> tuple[SeriesPoint, ...]:
        nonlocal fetched
        step(fetched / _FETCHES)
        fetched += 1
        return store.series(name)

    shop = read_shop(store.machines(), store.lots(), fetch, store.settings(None), store.events())
    step(1.0)
    return shop

"""The accelerometer log of a trial: read beside the window, kept with the trial, read again from there."""

from __future__ import annotations

import gzip
import io
import zlib
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from PySide6.QtCore import QObject, Signal

from app.jobs import Job, Step
from core.errors import InputError, StoreError
from core.records.outside import content_of
from core.records.rows import Attachment, Trial
from core.words import tr

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from app.context import Context

_LARGEST_MB = 200  # an hour at some thousand samples a second
_MIME, _ENDING = "application/gzip", ".gz"


class Samples(NamedTuple):
    """The samples of a log, and the bytes of its file, packed."""

    time_s: NDArray[np.float64]
    acceleration: NDArray[np.float64]
    packed: bytes


class LogFile(QObject):
    """Holds the log of the trial in sight; `ready` when its samples are there, `failed` with the error.

    Attributes:
        name: of the file; empty for none.
        samples: None where the file is not here.
        trouble: why the last file gave no samples; None where it did.
    """

    ready = Signal()
    failed = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.name = ""
        self.samples: Samples | None = None
        self.trouble: InputError | StoreError | None = None
        self._reading = ""
        self._seen: dict[tuple[int | None, str], Samples] = {}  # chosen in this session: machine and name
        self._chosen_for: tuple[int | None, str] | None = None
        self.job = Job(self)
        self.job.answered.connect(self._take)
        self.job.failed.connect(self._fail)

    def choose(self, path: str, machine_id: int | None) -> None:
        """Read a file beside the window."""
        try:
            content = content_of(Path(path), _LARGEST_MB, "log")
        except InputError as error:
            self._fail(error)
            return
        self._reading = Path(path).name
        self._chosen_for = machine_id, self._reading
        self.job.start(lambda step: _read(content, step))

    def recall(self, conditions: Mapping[str, Any], machine_id: int | None, *, seen: bool = True) -> None:
        """Go on with the log that a trial names; `seen`: with what was read under this name in this session."""
        self.job.finish()
        self.trouble = None
        self.name = str(conditions.get("log") or "")
        self.samples = self._seen.get((machine_id, self.name)) if seen else None

    def find(self, context: Context, trial: Trial) -> None:
        """Read the log that is kept with a trial, beside the window.

        Raises:
            StoreError: as the store.
        """
        name = self.name + _ENDING
        kept = [a for a in context.store.attachments(trial_id=trial.id) if (a.mime, a.name) == (_MIME, name)]
        if self.name and kept and kept[-1].id is not None:
            packed = context.store.attachment_content(kept[-1].id)
            self._reading, self._chosen_for = self.name, None
            self.job.start(lambda step: _unpack(packed, step))

    def keep(self, context: Context, trial: Trial) -> None:
        """Keep the samples with a trial.

        Raises:
            InputError: they are too many.
            StoreError: as the store.
        """
        if self.samples is not None and trial.id is not None:
            name = self.name + _ENDING
            pointer = Attachment(name, _MIME, machine_id=trial.machine_id, trial_id=trial.id)
            context.store.attach(pointer, self.samples.packed)

    def needed(self) -> Samples:
        """Return the samples.

        Raises:
            InputError: field `log`: they are not here, or the file cannot be read.
        """
        if self.samples is None:
            if self.trouble is not None:
                raise InputError("log", self.trouble.message)
            raise InputError("log", tr("The log {name} is not here; read it again.", name=self.name))
        return self.samples

    def _fail(self, error: InputError | StoreError) -> None:
        named = isinstance(error, InputError) and error.row is not None  # a line of the file, not the file by its name
        says = tr("{name}: {says}", name=self._reading, says=error.message)
        self.trouble = InputError("log", says) if named else error
        self.failed.emit(self.trouble)

    def _take(self, samples: Any) -> None:
        self.name, self.samples, self.trouble = self._reading, samples, None
        if self._chosen_for is not None:
            self._seen[self._chosen_for] = samples
        self.ready.emit()


def _read(content: bytes, step: Step) -> Samples:
    from core.motion_trials.spectrum import read_log

    time_s, acceleration = read_log(content.decode("utf-8-sig", "replace"), step)
    return Samples(time_s, acceleration, gzip.compress(content, mtime=0))


def _unpack(packed: bytes, step: Step) -> Samples:
    try:
        with gzip.open(io.BytesIO(packed)) as file:
            content = file.read(_LARGEST_MB * 10**6 + 1)
        if len(content) > _LARGEST_MB * 10**6:  # packed by somebody else, to fill the memory
            raise EOFError
    except (OSError, EOFError, zlib.error) as error:
        raise StoreError(tr("The log that was kept is damaged; its peaks are on record.")) from error
    samples = _read(content, step)
    return samples._replace(packed=packed)

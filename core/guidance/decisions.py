"""What a person puts in force after reading a verdict: the settings that may be set by hand, and the value proposed.

A correction starts from the value in force when the piece was made, not from the one in force now: whatever was set
since is no part of what the piece shows. So new = base - outset, and for factors new = base / (1 + scale error).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from core.errors import InputError
from core.guidance.changes import in_force_when, now_in_force
from core.guidance.logentries import plain_value, setting_name_words, value_words
from core.measuring.finite import finite_in
from core.quantity import Estimate, size_ratio
from core.records.rows import SettingInForce
from core.words import Words, tr

_PLACES = 5  # decimals of a proposed value: finer than any machine or slicing program takes
_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class Settable:
    """A setting that may be set by hand.

    Attributes:
        of_lot: whether it belongs to a machine with a lot; else to the machine as such.
        usual: what holds where nobody ever set it; None where nobody knows.
        estimate: name of the result that it corrects; empty for none.
    """

    name: str
    unit: str
    of_lot: bool = False
    usual: float | None = None
    estimate: str = ""


SETTABLE = (
    Settable("contour_offset", "mm", True, 0.0, "wall_outset"),
    *(Settable(f"shrink_allowance_{axis}", "1", True, 1.0, f"scale_{axis}") for axis in "xyz"),
    *(Settable(f"axis_scale_{axis}", "1", False, 1.0) for axis in "xyz"),
    Settable("flow_factor", "1", True, 1.0),
    Settable("filament_diameter", "mm", True),
    Settable("extruder_steps_mm", "steps/mm"),
    Settable("height_offset", "mm"),
    Settable("nozzle_temperature", "°C", True),
    Settable("bed_temperature", "°C", True),
)


@dataclass(frozen=True, slots=True)
class Read:
    """What a kept trial says of a setting.

    Attributes:
        made_at: when the readings of the piece were begun.
    """

    trial_id: int
    estimate: Estimate
    made_at: datetime


@dataclass(frozen=True, slots=True)
class Proposal:
    """What is in force now, and what a trial asks for.

    Attributes:
        now: None where nobody ever set it and nobody knows.
        base: in force when the piece was made; None where nobody knows, and then nothing is proposed.
        new: the proposed value; None where no trial says one.
        because: the reason to write down; nothing where no trial gives one.
        sentences: what a person must know before he sets it.
    """

    now: float | None
    base: float | None
    new: float | None
    because: Words | None
    sentences: tuple[Words, ...]


def settable(name: str) -> Settable:
    """Return the setting of that name."""
    return next(kind for kind in SETTABLE if kind.name == name)


def propose(kind: Settable, settings: Sequence[SettingInForce], lot_id: int | None, read: Read | None) -> Proposal:
    """Propose a value for a setting.

    Args:
        kind: the setting.
        settings: every setting that was ever in force on the machine.
        lot_id: the lot it is for.
        read: the newest trial that speaks of it; None for none.

    Raises:
        InputError: field `scale`, where that trial tells a scale error that no part has.
    """
    held = next((s for s in now_in_force(settings, lot_id) if s.name == kind.name), None)
    now = held.new if held else kind.usual
    sentences = [_now_words(kind, held, now)]
    if read is None:
        return Proposal(now, None, None, None, tuple(sentences))
    then = in_force_when(settings, kind.name, lot_id, read.made_at)
    base = then.new if then else kind.usual
    sentences.append(tr("Trial {number} gives {value}.", number=read.trial_id, value=value_words(read.estimate)))
    if abs(read.estimate.value) <= read.estimate.U:
        sentences.append(tr("That is within its uncertainty: change nothing."))
        return Proposal(now, base, None, None, tuple(sentences))
    if base is None:
        sentences.append(_unknown_words(kind, now))
        return Proposal(now, None, None, None, tuple(sentences))
    new = _corrected(kind, base, read.estimate.value)
    if now is not None and abs(new - now) <= _SAME:
        sentences.append(tr("The correction from it is in force already: print and read a new piece."))
        return Proposal(now, base, None, None, tuple(sentences))
    if now is not None and abs(base - now) > _SAME:
        sentences.append(
            tr(
                "{base} was in force when its piece was made and was changed since: the correction starts from {base}, "
                "and the piece says nothing of {now}. Print a new piece rather.",
                base=plain_value(base, kind.unit),
                now=plain_value(now, kind.unit),
            )
        )
    because = tr("{value} in trial {number}", value=value_words(read.estimate), number=read.trial_id)
    sentences.append(tr("Proposed: {new}.", new=plain_value(new, kind.unit)))
    return Proposal(now, base, new, because, tuple(sentences))


@finite_in("value")
def decided(
    kind: Settable, proposal: Proposal, place: tuple[int, int | None], value: float, because: str, read: Read | None
) -> SettingInForce:
    """Return the setting to put in force, with the prediction that the next trial is held against.

    Args:
        kind: the setting.
        proposal: as `propose` gave it; undoing goes back to its `now`.
        place: ids of the machine and lot.
        value: the new one, in the unit of the setting.
        because: the reason.
        read: the trial that asks for it; None for none.

    Raises:
        InputError: `lot` where one is needed; `new` for the value that is in force already.
    """
    machine_id, lot_id = place
    if kind.of_lot and lot_id is None:
        raise InputError("setting", tr("This setting belongs to a filament lot; choose one above."))
    if proposal.now is not None and abs(value - proposal.now) <= _SAME:
        raise InputError("new", tr("This value is in force already; there is nothing to change."))
    expected: dict[str, Any] = {}
    if read is not None and proposal.new is not None and abs(value - proposal.new) <= 10.0**-_PLACES:
        estimate = read.estimate
        expected = {"name": estimate.name, "value": 0.0, "U": estimate.U, "unit": estimate.unit}
    return SettingInForce(
        machine_id,
        lot_id if kind.of_lot else None,
        kind.name,
        proposal.now,
        value,
        kind.unit,
        prediction=expected,
        because=because,
    )


def _corrected(kind: Settable, base: float, error: float) -> float:
    return round(base - error if kind.unit == "mm" else base / size_ratio(error), _PLACES)


def _unknown_words(kind: Settable, now: float | None) -> Words:
    """Say that a correction has nothing to start from, and what to type."""
    if now is None:
        return tr(
            "Cannot tell yet: nobody wrote down what was set when its piece was made, and a correction starts from "
            "there. Look up {name} in the controller or in the slicing program and put that value in force here, "
            "unchanged; then print and read a new piece.",
            name=setting_name_words(kind.name),
        )
    return tr(
        "Cannot tell yet: {now} was written down after its piece was made, and nobody knows what held then. Print and "
        "read a new piece.",
        now=plain_value(now, kind.unit),
    )


def _now_words(kind: Settable, held: SettingInForce | None, now: float | None) -> Words:
    if now is None:
        return tr("Nobody wrote down yet what is set now.")
    if held is None or held.since is None:
        return tr("Never set here: {now} is taken to hold.", now=plain_value(now, kind.unit))
    return tr("In force: {now}, since {day}.", now=plain_value(now, kind.unit), day=f"{held.since:%Y-%m-%d}")

"""A prediction locked before the readings exist, read back unchanged, and what its verification means.

A locked prediction is a kept trial of the subject "prediction": kept trials are never overwritten, the store gives the
moment, and a hash over the content shows any change. Only readings begun afterwards can verify it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.guidance.keptfit import fit_of, size_readings
from core.guidance.partgroups import GROUP_OF, Group, feature_errors, group_words, guard_of
from core.guidance.sentences import undecided
from core.guidance.verdict import Advice, Setting
from core.measuring.choices import each_of
from core.part_size.features import FeatureKind
from core.part_size.ownscore import lifetime_score
from core.part_size.prediction import (
    METHOD,
    Changes,
    Prediction,
    Verification,
    content_hash,
    predict,
    sign_test,
    verify,
)
from core.quantity import Estimate, coverage_factor, rounded_pair
from core.records.rows import Instrument, Trial
from core.words import Words, tr

LOCKED, VERIFIED = "prediction", "verification"
PROOF_MM = (37.0, 64.0, 91.0, 118.0)  # lengths that no test piece has (common practice, no source)
FEWEST_SIGNS = 5  # features of a class on one side before it is called biased
_COLUMNS = ("axis", "kind", "nominal_mm", "as_is_mm", "predicted_mm", "U_mm")


def features_to_predict(trial: Trial) -> tuple[list[str], list[str], list[float]]:
    """Return axis, kind and nominal length of the proof lengths and of the gauges of the trial itself."""
    read = size_readings(trial)
    own = list(dict.fromkeys(zip(read.axis, map(str, read.kind), map(float, read.nominal_mm), strict=True)))
    asked = [
        (axis, kind, length)
        for axis in dict.fromkeys(read.axis)
        for kind in (("outside", "closed_hole") if axis != "z" else ("height",))
        for length in PROOF_MM
    ]
    every = list(dict.fromkeys([*asked, *own]))
    return [a for a, _, _ in every], [k for _, k, _ in every], [n for _, _, n in every]


def predict_from(trial: Trial, instrument: Instrument | None, changes: Changes) -> Prediction:
    """Predict the next piece from a kept size trial.

    Raises:
        InputError: field `value` where the trial tells no feature.
    """
    return predict(fit_of(trial, instrument), *features_to_predict(trial), changes)


def locked_trial(source: Trial, prediction: Prediction, changes: Changes) -> Trial:
    """Return the prediction as a trial to be kept: from then on it is locked."""
    readings = {
        "axis": list(prediction.axis),
        "kind": [str(kind) for kind in prediction.kind],
        "nominal_mm": prediction.nominal_mm.tolist(),
        "as_is_mm": prediction.as_is_mm.tolist(),
        "predicted_mm": prediction.error_mm.tolist(),
        "U_mm": prediction.U_mm.tolist(),
    }
    conditions = {
        "from_trial": source.id,
        "offset_mm": changes.offset_mm,
        "factor": dict(changes.factor_ratio),
        "k": prediction.k,
        "dof": prediction.dof if math.isfinite(prediction.dof) else None,
        "covariance_mm2": prediction.covariance_mm2.tolist(),
    }
    conditions["hash"] = content_hash({"readings": readings, "conditions": conditions})
    return Trial(
        LOCKED,
        source.machine_id,
        source.lot_id,
        source.instrument_id,
        readings=readings,
        conditions=conditions,
        used=() if source.id is None else (source.id,),
        method=METHOD,
    )


def unlocked(trial: Trial) -> Prediction:
    """Read a locked prediction back.

    Raises:
        InputError: field `hash` where it is no longer what was locked.
    """
    conditions = {name: value for name, value in trial.conditions.items() if name != "hash"}
    readings = {name: list(trial.readings.get(name, ())) for name in _COLUMNS}
    if content_hash({"readings": readings, "conditions": conditions}) != trial.conditions.get("hash"):
        raise InputError(
            "hash", tr("Prediction № {number} was changed after it was locked; it proves nothing.", number=trial.id)
        )
    return Prediction(
        axis=tuple(readings["axis"]),
        kind=tuple(each_of(FeatureKind, readings["kind"], "kind")),
        nominal_mm=np.array(readings["nominal_mm"]),
        as_is_mm=np.array(readings["as_is_mm"]),
        error_mm=np.array(readings["predicted_mm"]),
        covariance_mm2=np.array(conditions["covariance_mm2"]),
        k=float(conditions["k"]),
        dof=math.inf if conditions.get("dof") is None else float(conditions["dof"]),
    )


@dataclass(frozen=True, slots=True, eq=False)
class Verified:
    """A verification with what it means; `before` are the normalised errors of earlier ones, piece by piece."""

    result: Verification
    groups: tuple[Group | None, ...]
    advice: tuple[Advice, ...]
    before: tuple[tuple[float, ...], ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the share that agrees and `prediction_factor` on our U, of this piece.

        The share is `prediction_inside` where the prediction holds. Where it does not, the share that disagrees is
        `prediction_outside`, so that nobody takes the piece for a proof.
        """
        score = lifetime_score([self.result.e_n])
        u_share = (score.high - score.low) / 2 / coverage_factor(math.inf)
        u_factor = score.factor / math.sqrt(2 * self.result.dof)  # of the features of this piece, as if each were alone
        held = self.result.passed
        name, share = ("prediction_inside", score.share) if held else ("prediction_outside", 1.0 - score.share)
        return (
            Estimate(name, share, u_share, math.inf, "1"),
            Estimate("prediction_factor", score.factor, u_factor, self.result.dof, "times"),
        )


def verify_locked(
    locked: Trial, read: Trial, instrument: Instrument | None, before_ratio: Sequence[tuple[float, ...]] = ()
) -> Verified:
    """Hold a size trial against a locked prediction.

    Args:
        locked: the kept prediction.
        read: the size trial of the proof piece.
        instrument: it was read with; None for none on record.
        before_ratio: normalised errors of all earlier verifications, piece by piece.

    Raises:
        InputError: field `started_at` where the readings were begun before the prediction was locked; `hash` where it
            was changed; `measured_mm` where nothing read was predicted.
    """
    if locked.kept_at is None or read.started_at is None or read.started_at < locked.kept_at:
        raise InputError(
            "started_at",
            tr("Trial № {number} was begun before the prediction was locked; it cannot verify it.", number=read.id),
        )
    prediction = unlocked(locked)
    read_at: dict[int, list[float]] = {}  # gauges alike in axis, kind and length are one feature, read more than once
    for kind, axis, nominal, error in feature_errors(read):
        at = prediction.place(axis, kind, nominal)
        if at is not None:
            read_at.setdefault(at, []).append(error)
    groups = tuple(GROUP_OF.get(prediction.kind[at]) for at in read_at)
    guards = [guard_of(group or Group.OUTSIDE, instrument) for group in groups]
    lengths = prediction.nominal_mm[list(read_at)]
    k = coverage_factor(math.inf)
    u = [float(np.hypot(zero, ratio * L)) / k for (zero, ratio), L in zip(guards, lengths.tolist(), strict=True)]
    result = verify(prediction, list(read_at), [float(np.mean(errors)) for errors in read_at.values()], u)
    found = tuple(_advice(result, groups, locked))
    return Verified(result, groups, found, tuple(before_ratio))


def _advice(result: Verification, groups: tuple[Group | None, ...], locked: Trial) -> Iterator[Advice]:
    base = tr(
        "{inside} of {count} features lie inside their prediction (E_n up to 1); all together: χ² {chi2:.1f} of {dof}, "
        "by chance in {percent:.0f} of 100.",
        inside=result.inside,
        count=int(result.e_n.size),
        chi2=result.chi2,
        dof=result.dof,
        percent=100 * result.probability,
    )
    untouched = tr("Every setting: nothing is tuned by a proof piece.")
    if result.mirrored:
        yield undecided(
            tr("Look at the sign: take the change back and make it the other way round. Then lock a new prediction."),
            tr("{base} The readings lie where the change with the wrong sign would put them.", base=base),
        )
    elif result.passed:
        yield Advice(
            Setting.LEAVE,
            tr("Keep the settings: prediction № {number} holds.", number=locked.id),
            None,
            "",
            base,
            untouched,
        )
    else:
        yield undecided(tr("Do not tune by this piece; look at what fails first."), base)
    for group in Group:
        mine = np.array([g is group for g in groups])
        if np.any(mine) and not result.mirrored and (fails := _fails(result, group, mine)) is not None:
            yield Advice(Setting.UNDECIDED, _owner(group), None, "", fails, untouched)


def _fails(result: Verification, group: Group, mine: NDArray[np.bool_]) -> Words | None:
    """Say how a class of features is off; None where it keeps to its prediction."""
    outside = int(np.sum(np.abs(result.e_n[mine]) > 1.0))
    mean, U = result.mean_mm(mine)
    chance = sign_test(result.rest_mm[mine])
    biased = chance < 0.05 and int(mine.sum()) >= FEWEST_SIGNS and abs(mean) > U
    if not biased and (not outside or result.passed):
        return None
    return tr(
        "Of {count} {group} {outside} are off, {mean} ± {U} mm in the mean; as many on one side, were each on "
        "its own, by chance in {percent:.0f} of 100.",
        group=group_words(group),
        outside=outside,
        count=int(np.sum(mine)),
        mean=rounded_pair(mean, U)[0],
        U=rounded_pair(mean, U)[1],
        percent=100 * chance,
    )


def _owner(group: Group) -> Words:
    """Name the step that owns errors of a class."""
    return {
        Group.OUTSIDE: tr("Flow and wall outset own it, then the scale: pages Wall, Mass and Size error."),
        Group.INSIDE: tr("Wall outset and lost motion own it: pages Size error and Reversal."),
        Group.HOLE: tr("Facets and the pull of the arc own it: draw more facets, or ream."),
        Group.HEIGHT: tr("The gap of the first layer and whole layers own it: pages First layer and Bed plane."),
    }[group]


def verification_columns(verified: Verified) -> dict[str, list[Any]]:
    """Return what a verification keeps: feature, predicted and read error, normalised error."""
    result = verified.result
    at = list(result.place)
    p = result.prediction
    return {
        "axis": [p.axis[i] for i in at],
        "kind": [str(p.kind[i]) for i in at],
        "nominal_mm": [float(p.nominal_mm[i]) for i in at],
        "predicted_mm": [float(p.error_mm[i]) for i in at],
        "U_mm": [float(p.U_mm[i]) for i in at],
        "error_mm": [float(p.error_mm[i] + r) for i, r in zip(at, result.rest_mm, strict=True)],
        "e_n": [float(value) for value in result.e_n],
    }


def verification_trial(locked: Trial, read: Trial, verified: Verified) -> Trial:
    """Return a verification as a trial to be kept, with the two trials it rests on."""
    return Trial(
        VERIFIED,
        read.machine_id,
        read.lot_id,
        read.instrument_id,
        readings=verification_columns(verified),
        estimates=verified.estimates(),
        verdict=tuple(advice.as_json() for advice in verified.advice),
        used=tuple(trial.id for trial in (locked, read) if trial.id is not None),
        method=verified.method,
    )

"""`python -m app analyse`: the same verdict without a window. Readings file in; text, JSON, picture, kept trial out."""

from __future__ import annotations

import argparse
import io
import json
import os
import sys
from collections.abc import Iterator, Sequence
from contextlib import closing
from pathlib import Path
from typing import TypeVar

from core.errors import InputError, StoreError
from core.guidance.report import as_json, text_lines
from core.guidance.sizetrial import SUBJECT, SizeJudgement, SizeReadings, judge_size_trial
from core.part_size.features import FeatureKind, axis_problem
from core.part_size.lengths import PartTemperature, reading_problem
from core.records.csvio import Fault, ReadingsFile, ReadingsFileError, read_readings
from core.records.rows import Instrument, Lot, Machine, Trial
from core.records.store import Store, open_store
from core.words import tr

_Named = TypeVar("_Named", Machine, Lot, Instrument)


def main(arguments: Sequence[str]) -> int:
    """Run the command; 0 done, 2 the file or an argument is at fault, 3 the database cannot do it."""
    options = _parser().parse_args(arguments)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # an old code page has no typographic minus
    try:
        return _analyse(options)
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # the reader has seen enough
        return 0
    except ReadingsFileError as error:
        for line, sentence in error.faults:
            print(f"{options.readings}:{line}: {sentence}" if line else sentence, file=sys.stderr)
        return 2
    except InputError as error:
        print(error.message, file=sys.stderr)
        return 2
    except StoreError as error:
        print(error.message, file=sys.stderr)
        return 3


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m app analyse",
        description="Tell constant from proportional size errors in a file of readings, and name the setting of each.",
        epilog="Columns: axis,kind,nominal_mm,measured_mm and, if you like, "
        f"feature,repeat,lot,instrument,excluded,reason. Kinds: {', '.join(FeatureKind)}.",
    )
    parser.add_argument("readings", type=Path, help="CSV file of readings")
    parser.add_argument("--machine", metavar="NAME", help="machine in the database whose drives are known")
    parser.add_argument("--database", metavar="FILE", help="database file or URL; the trial is kept in it")
    parser.add_argument("--picture", type=Path, metavar="PNG", help="write the plot of error against nominal length")
    parser.add_argument("--axis", choices=["x", "y", "z"], help="axis of the picture; the first one measured otherwise")
    parser.add_argument("--tolerance", default="m", metavar="CLASS", help="f m c v, IT5 to IT16, or plus-minus in mm")
    parser.add_argument("--part-temperature", type=float, metavar="C", help="temperature of the part when it was read")
    parser.add_argument("--json", action="store_true", help="print JSON instead of sentences")
    return parser


def _analyse(options: argparse.Namespace) -> int:
    if options.machine and not options.database:
        raise InputError("machine", tr("A machine is looked up in a database; name it with --database."))
    file = read_readings(options.readings, list(FeatureKind))
    readings = _readings(file, options)
    names = _only_one(file, "lot", file.lot), _only_one(file, "instrument", file.instrument)
    kept = ""
    if options.database and not _is_there(options.database) and any((options.machine, *names)):
        says = tr("There is no database {where}; names are looked up in one that is there.", where=options.database)
        raise InputError("database", says)
    if options.database is None:
        judgement = _judge(file, readings, None, None)
        _draw(judgement, readings, options)
    else:
        with closing(open_store(options.database)) as store:
            judgement, kept = _judge_and_keep(store, file, readings, options, names)
    _tell(file, judgement, options)
    if kept:
        print(kept, file=sys.stderr)
    return 0


def _is_there(database: str) -> bool:
    return "://" in database or Path(database).exists()


def _readings(file: ReadingsFile, options: argparse.Namespace) -> SizeReadings:
    """Take the rows that count; whatever cannot be is a fault of its line, and all are told at once."""
    if faults := tuple(_faults(file)):
        raise ReadingsFileError(faults)
    used = _used(file)
    warm_c = options.part_temperature
    return SizeReadings(
        nominal_mm=[file.nominal_mm[i] for i in used],
        measured_mm=[file.measured_mm[i] or 0.0 for i in used],
        kind=[file.kind[i] for i in used],
        axis=[file.axis[i] for i in used],
        feature=[_feature(file, i) for i in used],
        tolerance=_tolerance(options.tolerance),
        part_temperature=None if warm_c is None else PartTemperature(warm_c),
    )


def _faults(file: ReadingsFile) -> Iterator[Fault]:
    for i, line in enumerate(file.line_number):
        kind, measured_mm = FeatureKind(file.kind[i]), file.measured_mm[i]
        if file.excluded[i] or measured_mm is None:
            problem = axis_problem(kind, file.axis[i])
        else:
            _, problem = reading_problem(kind, file.axis[i], file.nominal_mm[i], measured_mm) or ("", None)
        if problem:
            yield line, problem


def _used(file: ReadingsFile) -> list[int]:
    return [i for i, excluded in enumerate(file.excluded) if not excluded]


def _feature(file: ReadingsFile, i: int) -> str:
    """Return the name of a feature; numbered repeats without a name belong to the feature of their kind and length."""
    if file.feature[i] or not file.repeat[i]:
        return file.feature[i]
    return f"{file.axis[i]} {file.kind[i]} {file.nominal_mm[i]:g}"


def _tolerance(text: str) -> str | float:
    try:
        return float(text.replace(",", "."))
    except ValueError:
        return text


def _judge(
    file: ReadingsFile, readings: SizeReadings, machine: Machine | None, instrument: Instrument | None
) -> SizeJudgement:
    """Judge; a fault of one reading is told with its line."""
    try:
        return judge_size_trial(readings, machine, instrument)
    except InputError as error:
        if error.row is None:
            raise
        raise ReadingsFileError(((file.line_number[_used(file)[error.row]], error.message),)) from error


def _judge_and_keep(
    store: Store, file: ReadingsFile, readings: SizeReadings, options: argparse.Namespace, names: tuple[str, str]
) -> tuple[SizeJudgement, str]:
    """Judge by what the database knows, draw, and keep the trial last, so that nothing is half-kept; say where."""
    machine = _named("machine", options.machine or "", store.machines())
    lot = _named("lot", names[0], store.lots())
    instrument = _named("instrument", names[1], store.instruments())
    judgement = _judge(file, readings, machine, instrument)
    _draw(judgement, readings, options, invented=store.is_demo)
    kept = store.keep(_trial(file, judgement, options, (machine, lot, instrument)))
    return judgement, tr("Kept as trial {number} in {where}.", number=kept.id, where=store.where)


def _only_one(file: ReadingsFile, column: str, names: Sequence[str]) -> str:
    """Return the one name in a column; one trial is one print read with one instrument. Excluded rows do not count."""
    lines = {names[i]: file.line_number[i] for i in reversed(_used(file)) if names[i]}
    given = sorted(lines, key=lambda name: lines[name])
    if len(given) > 1:
        says = tr(
            "One trial has one {column}, and this file names {names}; split it.", column=column, names=", ".join(given)
        )
        raise ReadingsFileError(((lines[given[1]], says),))
    return given[0] if given else ""


def _named(what: str, name: str, rows: Sequence[_Named]) -> _Named | None:
    if not name:
        return None
    for row in rows:
        if row.name == name:
            return row
    known = ", ".join(row.name for row in rows) or tr("none")
    raise InputError(
        what, tr("There is no {what} “{name}” in the database; it knows {known}.", what=what, name=name, known=known)
    )


def _trial(
    file: ReadingsFile,
    judgement: SizeJudgement,
    options: argparse.Namespace,
    used: tuple[Machine | None, Lot | None, Instrument | None],
) -> Trial:
    machine, lot, instrument = used
    return Trial(
        subject=SUBJECT,
        machine_id=machine.id if machine else None,
        lot_id=lot.id if lot else None,
        instrument_id=instrument.id if instrument else None,
        readings={
            "feature": [_feature(file, i) for i in range(len(file.axis))],
            "axis": list(file.axis),
            "kind": list(file.kind),
            "nominal_mm": list(file.nominal_mm),
            "measured_mm": list(file.measured_mm),
            "raw": list(file.measured_text),
            "excluded": list(file.excluded),
            "reason": list(file.reason),
            "note": ["; ".join(f"{name}: {text}" for name, text in notes.items()) for notes in file.notes],
        },
        conditions={"tolerance": _tolerance(options.tolerance), "part_temperature_c": options.part_temperature},
        estimates=judgement.estimates(),
        verdict=tuple(advice.as_json() for advice in judgement.advice),
        method=judgement.method,
        note=options.readings.name,
    )


def _draw(
    judgement: SizeJudgement, readings: SizeReadings, options: argparse.Namespace, *, invented: bool = False
) -> None:
    """Write the picture, marked where it rests on the demo shop; the window system is not needed for it."""
    if options.picture is None:
        return
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtCore import QSize
    from PySide6.QtWidgets import QApplication

    from app.pages.part_size.sizeplot import size_plot
    from app.widgets.invented import mark_pictures, marked
    from app.widgets.plotexport import render_plot
    from core.guidance.reports import DEMO

    application = QApplication.instance() or QApplication(["slipgauge"])
    axis = options.axis or sorted(set(readings.axis))[0]
    if axis not in readings.axis:
        raise InputError("axis", tr("There is no reading along {axis} to draw.", axis=axis))
    image = render_plot(size_plot(readings, judgement, axis), QSize(800, 500), scale=2.0)
    if invented:
        mark_pictures(str(DEMO))
        image = marked(image)
        mark_pictures("")
    if not image.save(str(options.picture)):
        raise InputError("picture", tr("{file} cannot be written; choose another place.", file=options.picture))
    del application


def _tell(file: ReadingsFile, judgement: SizeJudgement, options: argparse.Namespace) -> None:
    flagged = zip(_used(file), judgement.fit.flagged.tolist(), strict=True)
    lines = [file.line_number[i] for i, stands_out in flagged if stands_out]
    if options.json:
        print(json.dumps({**as_json(judgement), "outlier_lines": lines}, indent=1, allow_nan=False))
    else:
        outliers = [tr("  Line {line} stands out from the others: read that gauge again.", line=n) for n in lines]
        print("\n".join([*text_lines(judgement), *outliers]))
    sys.stdout.flush()

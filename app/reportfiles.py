"""Reports written to files: what every page that reports shares."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QWidget

from app.context import Context
from app.pages.subjecttitles import subject_titles
from app.pages.trialcard import kept_to_do
from app.pdf import write_report
from app.theme import LIGHT
from app.units import inches_for
from app.version import our_version
from app.widgets.picturepane import PicturePane
from app.widgets.plotdata import PlotData
from app.widgets.plotexport import render_plot
from app.widgets.plotpane import PlotPane
from core.guidance.reportblocks import Report, csv_text
from core.guidance.reportconditions import Settings
from core.guidance.reports import NO_SETTINGS, Of, trial_report
from core.guidance.verdict import with_action
from core.records.rows import Trial

_PLOT = QSize(800, 460)
_SCALE = 2.0


def write_one(
    report: Report, path: Path, pictures: dict[str, QImage] | None = None, *, inch: bool = False
) -> bool:
    """Write a report as PDF, with lengths in inch or not, or its tables as CSV where the name ends so, in mm always."""
    if path.suffix.lower() == ".csv":
        try:
            path.write_text(csv_text(report.blocks), encoding="utf-8")
        except OSError:
            return False
        return True
    return write_report(report, path, pictures or {}, inch=inch)


def write_trial(
    context: Context,
    trial: Trial,
    check: Trial | None,
    path: Path,
    picture: QWidget | None,
    settings: Settings = NO_SETTINGS,
) -> bool:
    """Write the report of a kept trial, with the machine, lot and instrument it was kept with.

    Args:
        context: of the window.
        trial: the kept trial.
        check: the last check of its instrument; None for none.
        path: of the file.
        picture: what the page draws of the trial; None for none.
        settings: label and value of each setting that counted, by key.
    """
    store = context.store
    machine = next((row for row in store.machines() if row.id == trial.machine_id), None)
    lot = next((row for row in store.lots() if row.id == trial.lot_id), None)
    instrument = next((row for row in store.instruments() if row.id == trial.instrument_id), None)
    title = subject_titles().get(trial.subject, "")
    of = Of(machine, lot, instrument, check, datetime.now(UTC), our_version(), store.is_demo)
    inch = inches_for(trial.subject) and path.suffix.lower() != ".csv"
    report = trial_report(_held(trial) if inch else trial, of, title, settings)
    drawn = None if picture is None else picture_of(picture)
    return write_one(report, path, {} if drawn is None else {"trial": drawn}, inch=inch)


def _held(trial: Trial) -> Trial:
    """Return a trial whose verdict says in mm what is to be entered in mm elsewhere."""
    held = (
        with_action(advice, kept_to_do(advice)) if str(advice.get("unit", "")).startswith("mm") else advice
        for advice in trial.verdict
    )
    return replace(trial, verdict=tuple(held))


def plot_image(data: PlotData) -> QImage | None:
    """Return a plot for a page of paper; None where nothing is drawn."""
    return render_plot(data, _PLOT, scale=_SCALE) if data.point_count else None


def picture_of(widget: QWidget) -> QImage | None:
    """Return what a page draws, in the colours of paper; None for an empty plot or a picture of another kind."""
    if isinstance(widget, PlotPane):
        return plot_image(widget.data)
    if not isinstance(widget, PicturePane):
        return None
    image = QImage(_PLOT * _SCALE, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(_SCALE)
    image.fill(QColor(LIGHT.card))
    painter = QPainter(image)
    painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.TextAntialiasing)
    widget.draw(painter, _PLOT, LIGHT)
    painter.end()
    return image

"""Reports written from where a trial is looked at: with its own instrument, its picture, and words where none is."""

import numpy as np
import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QFileDialog, QLabel

from app.pages.part_size.sizeerror import SizeErrorPage
from app.reportfiles import picture_of, plot_image, write_one, write_trial
from app.widgets.barsview import Bar, BarsData, BarsPane
from app.widgets.plotdata import PlotData
from core.guidance.reportblocks import Heading, Report
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, Trial
from tests.core.guidance.test_predicted import size_trial
from tests.core.part_size.printouts import Faults


@pytest.fixture
def kept(context, store):
    machine, lot = store.add_machine(Machine("Ash")), store.add_lot(Lot("Slate", "PETG"))
    caliper = store.add_instrument(Instrument("Caliper 2", u_outside_zero_mm=0.005))
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    read = size_trial(None, Faults(wall_outset_mm=0.04), np.random.default_rng(1), begun=None)
    return store.keep(
        Trial("sizeerror", machine.id, lot.id, caliper.id, readings=read.readings, conditions=read.conditions,
              estimates=(Estimate("wall_outset", 0.04, 0.002, 8, "mm"),))
    )  # fmt: skip


def test_a_kept_trial_is_reported_from_its_page(qtbot, context, kept, tmp_path, monkeypatch):
    page, said = SizeErrorPage(context), []
    qtbot.addWidget(page)
    page.show()
    context.notice.connect(lambda text, level: said.append((text, level)))
    assert page.report.isHidden() and not page.report.write("trial", tmp_path / "none.pdf")
    context.kept.emit(kept)
    assert not page.report.isHidden() and page.plot.data.point_count > 0
    for action, name in zip(page.report.menu().actions(), ("trial.pdf", "trial.csv"), strict=True):
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, name=name: (str(tmp_path / name), ""))
        action.trigger()
    assert [level for _, level in said] == ["error", "good", "good"]
    assert (tmp_path / "trial.pdf").read_bytes().startswith(b"%PDF")
    text = (tmp_path / "trial.csv").read_text()
    assert "Caliper 2, never checked here" in text and "wall outset" in text and "Ash" in text
    page.begin_anew()
    assert page.report.isHidden()


def test_the_picture_of_the_page_is_on_the_paper(qtbot, context, kept, tmp_path):
    page = SizeErrorPage(context)
    qtbot.addWidget(page)
    page.show()
    context.kept.emit(kept)
    assert write_trial(context, kept, None, tmp_path / "with.pdf", page.plot)
    assert write_trial(context, kept, None, tmp_path / "without.pdf", None)
    assert (tmp_path / "with.pdf").stat().st_size > (tmp_path / "without.pdf").stat().st_size + 5000


def test_a_picture_that_a_subject_draws_is_drawn_in_the_colours_of_paper(qtbot):
    pane = BarsPane("Error by cause", "Nothing.")
    qtbot.addWidget(pane)
    pane.show_data(BarsData(["scale"], [Bar("outside", [-0.2], -0.2, 0.01, "outside")], "", ""))
    image = picture_of(pane)
    assert image.size() == QSize(1600, 920) and image.pixelColor(2, 2) == QColor("#ffffff")
    assert any(image.pixelColor(x, y) != QColor("#ffffff") for x in range(0, 1600, 7) for y in range(0, 920, 7))
    assert plot_image(PlotData(())) is None and picture_of(QLabel()) is None


def test_a_folder_that_takes_no_file_is_not_written(tmp_path):
    report = Report("a", (Heading("a"),), "")
    (tmp_path / "file").write_text("")
    for name in ("a.csv", "a.pdf"):
        assert not write_one(report, tmp_path / "file" / name)

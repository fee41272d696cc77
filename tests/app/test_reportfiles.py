"""Reports written from where a trial is looked at: with its own instrument, its picture, and words where none is."""

from importlib.metadata import PackageNotFoundError

import numpy as np
import pytest
from PySide6.QtCore import QSize, QTranslator
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QFileDialog, QLabel

from app.pages.motion_trials.ladder import LadderPage
from app.pages.part_size.promise import PromisePage
from app.pages.part_size.shop_split import ShopSplitPage
from app.pages.part_size.sizeerror import SizeErrorPage
from app.pages.shop.logbook import LogbookPage
from app.pages.trialreport import write_kept
from app.reportfiles import picture_of, plot_image, write_one, write_trial
from app.widgets.barsview import Bar, BarsData, BarsPane
from app.widgets.plotdata import PlotData
from app.widgets.reportbutton import ReportButton
from app.words import shown
from core.errors import StoreError
from core.guidance.reportblocks import Heading, Report
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, Trial
from core.words import tr
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


@pytest.fixture
def ladder(context, store, kept):
    conditions = {
        "ladder": "temperature", "read": "high", "low": 200.0, "high": 230.0, "steps": 7, "limit": 260.0,
        "in_force": 245.0, "aim": "looks", "value_unit": "N",
    }  # fmt: skip
    readings = {
        "feature": ["A", "B"], "axis": ["temperature/high"] * 2, "raw": ["12", "11"], "measured_mm": [12.0, 11.0],
        "step": [200.0, 230.0],
    }  # fmt: skip
    return store.keep(
        Trial("ladder", kept.machine_id, kept.lot_id, kept.instrument_id, readings=readings, conditions=conditions)
    )


LADDER = [
    "Ladder of,Temperature",
    "Read by,{read}",
    "First step,200 °C",
    "Last step,230 °C",
    "Steps,7",
    "Machine up to,260 °C",
    "Now set,245 °C",
    "Value in,N",
]


def test_a_report_says_under_which_settings_the_trial_was_taken(qtbot, context, ladder, tmp_path):
    page = LadderPage(context)
    qtbot.addWidget(page)
    page.show()
    context.kept.emit(ladder)
    assert page.report.write("trial", tmp_path / "page.csv")
    assert write_kept(context, ladder, tmp_path / "logbook.csv")
    for name in ("page.csv", "logbook.csv"):
        text = (tmp_path / name).read_text(encoding="utf-8")
        told = [line.removeprefix("conditions,") for line in text.splitlines() if line.startswith("conditions,")]
        assert told == [line.format(read=page.form.read_by.currentText()) for line in LADDER]
        assert page.form.read_by.value() == "high" and "Caliper" not in text


def test_a_report_away_from_its_page_leaves_readings_in_progress_alone(context, store, ladder, tmp_path):
    write_kept(context, ladder, tmp_path / "a.csv")
    assert store.draft("ladder", ladder.machine_id, ladder.lot_id) is None
    assert write_kept(context, store.keep(Trial("of a later version", ladder.machine_id)), tmp_path / "b.csv")
    assert write_kept(context, store.keep(Trial("promise", ladder.machine_id)), tmp_path / "c.csv")


def test_the_file_of_a_report_is_named_after_its_subject_and_number(qtbot, context, ladder, monkeypatch):
    proposed = []
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *said: (proposed.append(said[2]) or "", ""))
    page, promise, split = LadderPage(context), PromisePage(context), ShopSplitPage(context)
    logbook = LogbookPage(context)
    for each in (page, promise, split, logbook):
        qtbot.addWidget(each)
        each.show()
    context.kept.emit(ladder)
    logbook.log.show_trial(ladder.id)
    for button in (page.report, logbook.log.card.report, promise.reports, split.report):
        for action in button.menu().actions():
            action.trigger()
    sizes = context.store.trials("sizeerror")[0].id
    assert [name for name in proposed if name.endswith("pdf")] == [
        f"ladder-{ladder.id}.pdf", f"ladder-{ladder.id}.pdf",
        "promise.pdf", "kept.pdf", f"sizeerror-{sizes}.pdf", "card.pdf", "label.pdf", "kept.pdf",
    ]  # fmt: skip


def test_where_the_number_cannot_be_read_the_store_says_why(qtbot, monkeypatch):
    def refuse(_kind):
        raise StoreError(tr("The disk is gone."))

    button, said = ReportButton(lambda *_: True, "Report", newest=True, name=refuse), []
    qtbot.addWidget(button)
    button.said.connect(lambda *what: said.append(what))
    button.menu().actions()[0].trigger()
    assert said == [("The disk is gone.", "error")]


def test_where_nothing_is_installed_the_foot_says_so_in_the_language_of_the_window(qapp, context, kept, tmp_path):
    class German(QTranslator):
        def translate(self, _context, text, *_):
            return {"from source": "aus dem Quelltext"}.get(text, text)

    german, feet = German(), []
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("importlib.metadata.version", refuse_version)
        patch.setattr("app.reportfiles.write_one", lambda report, *_, **__: feet.append(report.foot) or True)
        write_trial(context, kept, None, tmp_path / "a.pdf", None)
    assert str(feet[0]).startswith("Slipgauge from source ·")
    qapp.installTranslator(german)
    try:
        assert shown(feet[0]).startswith("Slipgauge aus dem Quelltext ·")
    finally:
        qapp.removeTranslator(german)


def refuse_version(_name):
    raise PackageNotFoundError

"""What leaves the demo shop says that it is invented, inside and in the name proposed for it; nothing else does."""

from __future__ import annotations

import csv
import json
from pathlib import Path

import lib3mf
import pytest
from PySide6.QtCore import QSettings
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtWidgets import QFileDialog

from app import analyse
from app.context import Context
from app.mainwindow import MainWindow
from app.widgets.invented import file_name, mark_pictures
from core.records.log import DEMO_MARK
from core.records.rows import Lot, Machine, Trial
from core.records.store import open_store

SAYS = "Demo shop, invented data"
BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}


@pytest.fixture(params=[True, False], ids=["demo", "own"])
def is_demo(request):
    return request.param


@pytest.fixture
def shop(is_demo, store):
    limits = {"nozzle_mm": 0.4, "hot_end_limit_c": 280.0, "bed_limit_c": 110.0, "max_flow_mm3_s": 24.0}
    machine = store.add_machine(Machine("Amsel", drives={"x": BELT, "y": BELT}, limits=limits))
    lot = store.add_lot(Lot("Chalk 12", "PLA"))
    if is_demo:
        store.set_shop_value(DEMO_MARK, {"says": SAYS}, None)
    return store, machine, lot


@pytest.fixture
def window(qtbot, shop, tmp_path):
    store, machine, lot = shop
    window = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(window)
    window.show()
    context = Context(store, window)
    window.open_shop(context, "board")
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    yield window
    window.close()
    mark_pictures("")


@pytest.fixture
def saved(monkeypatch, tmp_path):
    """Save under the proposed name; returns the names."""
    asked: list[str] = []

    def answer(_parent, _title, proposed, *_filter):
        asked.append(proposed)
        return str(tmp_path / proposed), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", answer)
    return asked


def page_of(window, key):
    window.show_page(key)
    return window._pages[key]


def only_in_demo(name: str, is_demo: bool) -> str:
    return f"demo-{name}" if is_demo else name


def test_g_code_says_so_in_its_head(window, saved, is_demo, tmp_path):
    page = page_of(window, "toolpaths")
    page.form.laying.set_texts({"nozzle_c": "215"})
    page.form.changed.emit()
    page.read_box.setChecked(True)
    page.keep()
    assert saved == [only_in_demo("wall-box.gcode", is_demo)]
    lines = (tmp_path / saved[0]).read_text("ascii").splitlines()
    head = lines[: next(n for n, line in enumerate(lines) if not line.startswith(";"))]
    marked = [line for line in head if line.startswith("; DEMO SHOP, invented data: ") and "Do not run it" in line]
    assert len(marked) == is_demo


@pytest.mark.parametrize("kind", ["3mf", "stl"])
def test_a_piece_says_so_in_its_file(window, saved, is_demo, tmp_path, kind):
    page = page_of(window, "pieces")
    getattr(page.form, f"save_{kind}").click()
    assert saved == [only_in_demo(f"comb_x.{kind}", is_demo)]
    file = tmp_path / saved[0]
    model = lib3mf.get_wrapper().CreateModel()
    model.QueryReader(kind).ReadFromFile(str(file))
    assert model.GetMeshObjects().Count() == 1
    if kind == "3mf":
        group = model.GetMetaDataGroup()
        entries = [group.GetMetaData(number) for number in range(group.GetMetaDataCount())]
        told = {entry.GetName(): entry.GetValue() for entry in entries}
        assert told["Title"] == "Size comb along X"
        assert ("demo shop, invented data" in told.get("Description", "")) is is_demo
    else:
        assert (b"demo shop, invented data" in file.read_bytes()[:80]) is is_demo


def test_exports_say_so_at_their_head(window, saved, is_demo, qtbot, shop, tmp_path):
    page = page_of(window, "storage")
    for button in (page.exchange.export_csv, page.exchange.export_json):
        with qtbot.waitSignal(page.job.ended):
            button.click()
    folder, file = (tmp_path / name for name in saved)
    assert [folder.name, file.name] == [only_in_demo(name, is_demo) for name in ("slipgauge-tables", "slipgauge.json")]
    with (folder / "about.csv").open(encoding="utf-8-sig", newline="") as about:
        head, values = csv.reader(about)
    assert (dict(zip(head, values, strict=True)).get("note") == SAYS) is is_demo
    assert (json.loads(file.read_text("utf-8")).get("note") == SAYS) is is_demo
    for export in (folder / "about.csv", file):  # into itself: all of it is there already, and none of it is at fault
        report = shop[0].storage.import_from(str(export))
        assert not report.refused and not any(report.added.values())


def test_copied_texts_say_so(window, is_demo):
    pane = page_of(window, "logbook").settings_pane
    pane.show_lines(("M92 X80.00",))
    pane.copy.click()
    own = "M92 X80.00"
    assert QGuiApplication.clipboard().text() == (f"; {SAYS}\n{own}" if is_demo else own)
    card = page_of(window, "pieces").card
    card.copy_text()
    assert QGuiApplication.clipboard().text() == (f"{SAYS}\n{card.text()}" if is_demo else card.text())


def test_a_picture_and_a_report_are_proposed_under_a_name_that_says_so(window, saved, is_demo):
    picture = page_of(window, "pieces").picture
    picture._ask_png()
    page = page_of(window, "reversal")
    page.plot.ask_and_export("svg")
    page.report.menu().actions()[0].trigger()
    assert [Path(name).suffix for name in saved] == [".png", ".svg", ".pdf"]
    assert all(name.startswith("demo-") is is_demo for name in saved)


def test_a_name_is_marked_only_while_a_demo_shop_is_open(window, is_demo):
    assert file_name("a.csv") == only_in_demo("a.csv", is_demo)
    window.close()
    assert file_name("a.csv") == "a.csv"


def test_a_picture_drawn_without_the_window_from_a_demo_shop_is_marked(qapp, tmp_path):
    lines = [f"x,outside,{length},{length + 0.1:.2f}" for length in (20, 40, 80, 120)]
    readings = tmp_path / "readings.csv"
    readings.write_text("\n".join(["axis,kind,nominal_mm,measured_mm", *lines]) + "\n", "utf-8")
    for name in ("own", "demo"):
        store = open_store(tmp_path / f"{name}.db")
        if name == "demo":
            store.set_shop_value(DEMO_MARK, {"says": SAYS}, None)
        store.close()
        out = tmp_path / f"{name}.png"
        assert analyse.main([str(readings), "--database", str(tmp_path / f"{name}.db"), "--picture", str(out)]) == 0
    own, demo = (QImage(str(tmp_path / f"{name}.png")) for name in ("own", "demo"))
    assert own.size() == demo.size() and own != demo
    assert file_name("a.csv") == "a.csv"


def test_a_page_of_the_demo_shop_begins_with_the_newest_kept_trial_of_the_picked_lot(window, shop, is_demo):
    store, machine, lot = shop
    other = store.add_lot(Lot("Moss 5", "PLA"))
    store.keep(Trial("diameter", machine.id, lot.id))
    newest = store.keep(Trial("diameter", machine.id, lot.id))
    store.keep(Trial("diameter", machine.id, other.id))
    picker = window.pickers.machine
    picker.setFocus()
    page = page_of(window, "diameter")
    assert (page.kept_trial.id if page.kept_trial else None) == (newest.id if is_demo else None)
    assert window.focusWidget() is picker
    window.enter_page("diameter")
    assert window.focusWidget() is (page.form.new_button if is_demo else page.form.entry.focusProxy())
    page.begin_anew()
    window.show_page("board")
    window.show_page("diameter")
    assert page.kept_trial is None  # whoever asked for new readings has them
    window.context.select_lot(None)
    assert page.kept_trial is None  # none of these was kept without a lot

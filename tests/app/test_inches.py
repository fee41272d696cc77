"""Inches for people who measure so: shown and read in inch, stored in mm; a number never changes by being looked at."""

from __future__ import annotations

import re

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QLabel, QTableView, QTextEdit

from app import reportfiles
from app.inches import show_inches
from app.pages import PAGES
from app.pages.part_size.promise_reports import card_pages
from app.pages.shop.boardreader import read_board
from app.pages.trialcard import place_row
from app.pdf import _in_inch, write_label
from app.units import HELD
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import GaugeField, LengthField, NumberField
from app.widgets.plaintable import PlainTable
from app.widgets.plotdata import EventMark, FitCurve, Ground, LimitLine, PlotData, PointSeries, WarningCurve
from app.widgets.plotinch import plot_in_inch
from app.widgets.readings import Column, Expected, ReadingsModel
from app.widgets.resulttext import CardData
from core.errors import InputError
from core.guidance.reportblocks import Heading, Label, Says, Table
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, Trial
from core.words import tr
from tests.app.shop.test_walk import go_to
from tests.shots import filled_machine

MM_PER_INCH = 25.4  # exact: international yard and pound agreement, 1959
BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
LENGTH = re.compile(r"\d mm(?![\w²³/·])")
RATIO = re.compile(r"mm in 100 mm")
COLUMNS = (
    Column("feature", "Gauge"),
    Column("nominal_mm", "Nominal mm", "length"),
    Column("measured_mm", "Reading mm", "length"),
    Column("error", "Error mm", "shown", editable=False),
    Column("expected", "Expected mm", "shown", editable=False),
)


@pytest.fixture
def inches():
    show_inches(True)
    yield
    show_inches(False)


def typed(field: LengthField, text: str) -> LengthField:
    field.clear()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)
    return field


# Fields


@pytest.fixture
def field(qtbot):
    found = LengthField(low_mm=1.0, high_mm=500.0, required=True, inch=True)
    qtbot.addWidget(found)
    return found


@pytest.mark.parametrize("length_mm", [20.0, 0.1 + 10.0, 123.456, 7.3])
def test_a_length_that_nobody_typed_stays_what_it_was(field, length_mm):
    field.set_mm(length_mm)
    assert abs(float(field.text()) * MM_PER_INCH - length_mm) <= 0.5 * MM_PER_INCH * 1e-4
    assert field.mm() == length_mm
    field.finish()
    assert field.mm() == length_mm


@pytest.mark.parametrize(
    ("text", "shown", "length_mm", "kept"),
    [("0.787", "0.787", 19.9898, "0.787in"), ("0,787", "0.787", 19.9898, "0,787in"),
     ("25/64", "0.3906", 9.921875, "25/64in"),
     ("20mm", "0.7874", 20.0, "20mm"), ('1.5"', "1.5", 38.1, '1.5"'), ("20 mm", "0.7874", 20.0, "20 mm")],
)
def test_typed_without_a_unit_it_is_inch(field, text, shown, length_mm, kept):
    typed(field, text)
    assert (field.text(), field.kept_text()) == (shown, kept)
    assert field.mm() == pytest.approx(length_mm, abs=1e-9)
    in_mm = LengthField()
    in_mm.show_text(field.kept_text())
    assert in_mm.mm() == pytest.approx(length_mm, abs=1e-9)


def test_a_stored_text_is_shown_in_inch_and_kept_as_it_is(field):
    field.show_text("200")
    assert (field.text(), field.mm(), field.kept_text()) == ("7.874", 200.0, "200")
    field.show_text("two")
    assert field.text() == "two"


def test_limits_are_told_in_inch(field):
    with pytest.raises(InputError, match="39.3701 in is too large: at most 19.685 in"):
        typed(field, "1000mm").mm()


def test_a_label_says_the_unit_of_its_field(qtbot):
    grid = FieldGrid(2)
    qtbot.addWidget(grid)
    grid.add("a", "&Side", LengthField(inch=True), "mm")
    grid.add("b", "&Nozzle", LengthField(), "mm")
    grid.add("c", "&Mass", NumberField(), "g")
    names = [grid.field(key).accessibleName() for key in "abc"]
    assert names == ["Side, in", "Nozzle, mm", "Mass, g"]
    typed(grid.field("a"), "2")
    assert grid.texts() == {"a": "2in", "b": "", "c": ""}


def test_a_gauge_of_other_things_takes_numbers_only(qtbot):
    gauge = GaugeField(high_mm=100.0)
    qtbot.addWidget(gauge)
    assert typed(gauge, "12,5").value() == 12.5
    with pytest.raises(InputError, match="is not a number"):
        typed(gauge, "1in").value()
    with pytest.raises(InputError, match=r"^200 is too large: at most 100\.$"):
        typed(gauge, "200").value()
    gauge.inch = True
    assert typed(gauge, "1").value() == 25.4
    with pytest.raises(InputError, match="4 in is too large"):
        typed(gauge, "4").limited(101.6)


# Tables


@pytest.fixture
def model(qtbot):
    found = ReadingsModel(COLUMNS)
    found.set_rows([{"feature": "a", "axis": "x", "kind": "outside", "nominal_mm": 20.0, "nominal_raw": "20.00"}] * 3)
    found.show_inches()
    return found


def titles(model) -> list[str]:
    return [" ".join(str(model.headerData(n, Qt.Orientation.Horizontal)).split()) for n in range(model.columnCount())]


def test_a_table_reads_and_shows_inches_and_keeps_mm(model):
    assert titles(model) == ["Gauge", "Nominal in", "Reading in", "Error in", "Expected in"]
    model.edit(0, "measured_mm", "0.7880")
    model.edit(1, "measured_mm", "20.05mm")
    model.edit(2, "measured_mm", "25/32")
    assert [model.text(row, "measured_mm") for row in range(3)] == ["0.7880", "0.7894", "0.7812"]
    assert [row["measured_mm"] for row in model.rows()] == pytest.approx([20.0152, 20.05, 19.84375])
    assert [row["raw"] for row in model.rows()] == ["0.7880in", "20.05mm", "25/32in"]
    assert model.text(0, "nominal_mm") == "0.7874"
    assert model.data(model.index(1, 2), Qt.ItemDataRole.ToolTipRole) == "typed as 20.05mm"


def test_looking_at_a_cell_and_leaving_it_changes_nothing(model):
    model.edit(0, "measured_mm", "20.05mm")
    before = model.rows()
    for column in (1, 2):
        index = model.index(0, column)
        model.setData(index, model.data(index, Qt.ItemDataRole.EditRole))
    assert model.rows() == before


def test_what_the_page_says_of_rows_is_told_in_inch(model):
    model.edit(0, "measured_mm", "20.05mm")
    model.set_error_text({0: "+0.050"})
    model.set_expected({0: Expected(20.0, 0.01, "20.00 ± 0.02 mm")})
    model.set_marks({0: "Stands out by 0.05 mm."})
    model.show_problem(0, "nominal_mm", "12.4 mm is not 20 mm.")
    assert model.text(0, "error") == "+0.00197"
    assert model.text(0, "expected") == "0.78740 ± 0.00079"
    assert model.mark(0) == "Stands out by 0.0020 in."
    assert model.problem(0, "nominal_mm") == "0.4882 in is not 0.7874 in."


def test_a_draft_of_a_person_who_measures_in_mm_is_shown_in_inch(model):
    model.set_rows([{"feature": "a", "nominal_mm": 20.0, "measured_mm": 20.05, "raw": "20.05", "unit": "mm"}])
    assert model.text(0, "measured_mm") == "0.7894"
    assert model.data(model.index(0, 2), Qt.ItemDataRole.ToolTipRole) == "typed as 20.05 mm"
    assert model.rows()[0]["raw"] == "20.05"


def test_a_plain_table_converts_below_headings_in_mm(qtbot):
    table = PlainTable("Parts", ("Part", "Error, mm", "Prints"))
    qtbot.addWidget(table)
    table.show_inches()
    table.set_rows([("outside X 20 mm", "+0.040 ± 0.0060", "12")])
    assert table.rows.rows() == [("outside X 0.7874 in", "+0.00157 ± 0.00024", "12")]
    assert table.rows.headerData(1, Qt.Orientation.Horizontal) == "Error, in"


# Plots and reports


def test_a_plot_is_divided_where_its_axis_is_in_mm():
    x, y = np.array([25.4, 50.8]), np.array([0.254, 0.508])
    data = PlotData(
        points=(PointSeries("20 mm", x, y, y, tips=("at 25.4 mm",)),),
        curves=(FitCurve("fit", x, y, y, y),),
        warning_curve=WarningCurve(x, y, "from 8 mm"),
        ground=Ground(x, y, "± 0.1 mm"),
        limits=(LimitLine("limit 0.1 mm", x, y),),
        events=(EventMark(25.4, "belt"),),
        x_label="nominal length, mm",
        y_label="error, mm",
        least_y_span=0.254,
    )
    inch = plot_in_inch(data)
    assert (inch.x_label, inch.y_label, inch.least_y_span) == ("nominal length, in", "error, in", 0.01)
    for values in (inch.points[0].x, inch.curves[0].x, inch.warning_curve.x, inch.ground.x, inch.limits[0].x):
        assert values == pytest.approx([1.0, 2.0])
    halves = (inch.points[0].y, inch.points[0].U, inch.curves[0].mean, inch.curves[0].confidence_half,
              inch.curves[0].prediction_half, inch.warning_curve.y, inch.ground.half_height, inch.limits[0].y)
    for values in halves:
        assert values == pytest.approx([0.01, 0.02])
    assert inch.events == (EventMark(1.0, "belt"),)
    assert list(inch.points[0].tips) == ["at 1 in"]
    names = inch.points[0].name, inch.ground.label, inch.limits[0].name
    assert names == ("0.7874 in", "± 0.0039 in", "limit 0.0039 in")
    speeds = plot_in_inch(PlotData((PointSeries("a", x, y),), x_label="speed, mm/s", y_label=f"X,{HELD}"))
    assert (speeds.points[0].x[0], speeds.points[0].y[0], speeds.x_label) == (25.4, 0.254, "speed, mm/s")


def test_a_report_is_converted_block_by_block_and_names_stay(inches):
    assert _in_inch(Heading(tr("Peg of {mm:g} mm", mm=8))).text == "Peg of 0.315 in"
    assert _in_inch(Says(tr("{what} is {mm:g} mm.", what="Peg 8 mm", mm=8))).text == f"Peg 8{HELD} is 0.315 in."
    table = Table("t", (tr("Lot"), tr("Error, mm")), (("PLA 1.75 mm", "+0.040 ± 0.0060"), (tr("{a:g} mm", a=8), "")))
    assert _in_inch(table).rows == (("PLA 1.75 mm", "+0.00157 ± 0.00024"), ("0.315 in", ""))
    assert _in_inch(table).headings == ("Lot", "Error, in")


# Pages


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT}))
    lot = store.add_lot(Lot("PLA 1.75 mm", "PLA"))
    caliper = store.add_instrument(Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008))
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    context.select_instrument(caliper.id)
    return context


def fill_size(page) -> None:
    for place, row in enumerate(page.form.model.rows()):
        page.form.model.edit(place, "measured_mm", f"{row['nominal_mm'] * 0.997 + (place % 3 - 1) * 0.02 + 0.08:.2f}")


FILLS = {
    "sizeerror": fill_size, "reversal": filled_machine.fill_reversal, "squareness": filled_machine.fill_squareness,
    "bedplane": filled_machine.fill_bedplane,
}  # fmt: skip


def opened(qtbot, context, key):
    page = next(entry for entry in PAGES if entry.key == key).build(context)
    qtbot.addWidget(page)
    page.resize(1000, 700)
    page.show()
    return page


def texts(page) -> list[str]:
    """What a person reads on a page."""
    found = [widget.text() for kind in (QLabel, QAbstractButton) for widget in page.findChildren(kind)]
    found += [widget.accessibleName() for widget in page.findChildren(QLabel)]
    found += [widget.toPlainText() for widget in page.findChildren(QTextEdit)]
    for table in page.findChildren(QTableView):
        model = table.model()
        if model is not None:
            found += [str(model.headerData(n, Qt.Orientation.Horizontal)) for n in range(model.columnCount())]
    if hasattr(page, "plot"):
        data = page.plot.data
        found += [data.x_label, data.y_label, data.summary, data.title]
        found += [tip for series in data.points for tip in series.tips]
        found += [line.name for line in data.limits] + [curve.name for curve in data.curves]
    return found


@pytest.mark.parametrize("key", FILLS)
def test_a_page_of_part_sizes_says_inches_of_the_same_readings(qtbot, shop, key):
    page = opened(qtbot, shop, key)
    FILLS[key](page)
    assert any(LENGTH.search(text) for text in texts(page))
    estimates = page.record().estimates
    assert estimates and page.save_draft()
    show_inches(True)
    try:
        again = opened(qtbot, shop, key)
        assert again.record().estimates == estimates
        assert again.record().readings == page.record().readings
        left = [text for text in texts(again) if LENGTH.search(RATIO.sub("", text))]
        told_to_the_machine = [text for text in left if text.startswith(("Come from", "Move", "Step"))]
        assert [text for text in left if text not in told_to_the_machine] == []
        assert " in" in again.card.text()
        assert again.card.text() != page.card.text()
    finally:
        show_inches(False)


@pytest.mark.usefixtures("inches")
def test_what_is_entered_elsewhere_in_mm_is_said_in_mm_and_names_stay(qtbot, shop, store, tmp_path, monkeypatch):
    page = opened(qtbot, shop, "sizeerror")
    for place, row in enumerate(page.form.model.rows()):
        page.form.model.edit(place, "measured_mm", f"{row['nominal_mm'] + (0.08 if place < 5 else -0.08):.2f}mm")
    live = page.card.text()
    page.keep()
    (kept,) = [store.trial(trial.id) for trial in store.trials("sizeerror")]
    assert all(" in " not in f"{said['action']} {said['because']}".replace("in force", "") for said in kept.verdict[:2])
    for says in (live, page.card.text()):
        assert re.search(rf"change the one in force by −[\d.]+ ± [\d.]+{HELD} per side", says)
        assert re.search(r"Walls stand \+[\d.]+ ± [\d.]+ in per side", says)
    card = CardData((), (place_row(shop), ("gap", "+0.040 mm", ""))).in_inch()
    assert [row[1] for row in card.rows] == [f"Bramble, PLA 1.75{HELD}", "+0.00157 in"]
    reports: list = []

    def write_report(report, *_, **said) -> bool:
        reports.append((report, said))
        return True

    monkeypatch.setattr(reportfiles, "write_report", write_report)
    assert reportfiles.write_trial(shop, kept, None, tmp_path / "trial.pdf", None)
    ((report, said),) = reports
    assert said == {"inch": True}
    shown = " ".join(_in_inch(block).text for block in report.blocks if isinstance(block, Says))
    assert re.search(rf"by −[\d.]+ ± [\d.]+{HELD} per side", shown)
    assert re.search(r"Walls stand \+[\d.]+ ± [\d.]+ in per side", shown)
    assert reportfiles.write_trial(shop, kept, None, tmp_path / "trial.csv", None)
    assert " mm" in (tmp_path / "trial.csv").read_text(encoding="utf-8")
    assert HELD not in (tmp_path / "trial.csv").read_text(encoding="utf-8")


# What looks over several pages: each result in the unit of the page that keeps it


@pytest.mark.usefixtures("inches")
@pytest.mark.parametrize(
    ("name", "subject", "unit"), [("wall_outset", "sizeerror", "in"), ("diameter", "diameter", "mm")]
)
def test_a_chart_is_in_the_unit_of_the_page_that_keeps_its_results(qtbot, shop, store, name, subject, unit):
    for value_mm in (0.25, 0.27, 0.26):
        estimates = (Estimate(name, value_mm, 0.005, 9.0, "mm"),)
        store.keep(Trial(subject, machine_id=1, lot_id=1, estimates=estimates))
    page = opened(qtbot, shop, "charts")
    page.choices.owner.setCurrentIndex(page.choices.owner.findData("lot" if name == "diameter" else "machine"))
    page.choices.quantity.setCurrentIndex(page.choices.quantity.findData(name))
    plot = page.plots.above.data
    factor = MM_PER_INCH if unit == "in" else 1.0
    assert plot.y_label.endswith(f", {unit}")
    assert plot.points[0].y == pytest.approx(np.array([0.25, 0.27, 0.26]) / factor)
    assert {"in": "+0.01024 ± 0.00043 in", "mm": "0.260 ± 0.011 mm"}[unit] in page.card.text()


@pytest.mark.usefixtures("inches")
def test_the_board_says_a_promise_in_inch(shop, store):
    store.keep(Trial("promise", 1, 1, estimates=(Estimate("promise_x", 0.2, 0.01, 20.0, "mm"),)))
    board = read_board(shop)
    assert board.promise(shop, board.line(board.machines[0])) == "0.00787 ± 0.00083 in"  # 0.2 ± 0.021 mm


@pytest.mark.usefixtures("inches")
def test_a_step_of_the_walk_is_in_the_unit_of_its_pages(qtbot, shop):
    page = opened(qtbot, shop, "walk")
    go_to(page, "reversal")
    assert "Up to 0.0008 in is good" in page.card.text.text() and " mm" not in page.card.text.text()
    go_to(page, "feed")
    assert "Twice running 100 mm come within ± 0.5 mm" in page.card.text.text()


@pytest.mark.usefixtures("inches")
def test_the_card_of_a_machine_and_its_label_follow_too(shop, store, tmp_path, monkeypatch):
    for subject, name in (("sizeerror", "wall_outset"), ("diameter", "diameter")):
        estimates = (Estimate(name, 0.26, 0.005, 9.0, "mm"),)
        store.keep(Trial(subject, machine_id=1, estimates=estimates))
    tables = [block for block in card_pages(shop, None).blocks if isinstance(block, Table)]
    (measured,) = [table for table in tables if table.name == "measured"]
    assert {str(row[0]): row[1] for row in measured.rows} == {
        "wall outset per side": "+0.01024 ± 0.00043 in", "equivalent diameter": "0.260 ± 0.011 mm"}
    plain = card_pages(shop, None, for_paper=False)
    assert not any(" in" in row[1] for block in plain.blocks if isinstance(block, Table) for row in block.rows)
    drawn: list[str] = []
    monkeypatch.setattr("app.pdf.shown", lambda text: drawn.append(str(text)) or str(text))
    lines = (tr("nozzle {mm:g}\u00a0mm", mm=0.4), tr("{group} ±{mm:.2f} mm", group="Bolt 8 mm", mm=0.05))
    assert write_label(Label(("Bay 8 mm", *lines), "code"), tmp_path / "label.pdf", inch=True)
    assert {"Bay 8 mm", "nozzle 0.4\u00a0mm", "Bolt 8\u00a0mm ±0.0020 in"} <= set(drawn)

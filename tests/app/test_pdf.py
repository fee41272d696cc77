"""Reports and labels as PDF: pages, texts that can be searched, pictures, the code read back."""

import re
import subprocess

import numpy as np
import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter, QPdfWriter

from app import language
from app.pdf import _draw_code, _html, foot_font, write_label, write_report
from core.guidance.reportblocks import Heading, Label, Picture, Report, Says, Signature, Table
from core.words import tr


def text_of(path):
    return subprocess.run(["pdftotext", "-layout", str(path), "-"], check=True, capture_output=True, text=True).stdout


def a_report(rows):
    table = Table("t", ("Feature", "Size"), tuple((f"gauge {n} <b>", f"{n}.00") for n in range(rows)))
    blocks = (Heading("Ash & Birch"), Says("Measured."), table, Picture("plot"), Picture("none"), Heading("End"),
              Says("Mind this.", mind=True), Signature("Checked by"))  # fmt: skip
    return Report("Ash", blocks, "foot with hash")


def test_a_report_flows_over_pages_with_head_foot_and_picture(qapp, tmp_path):
    image = QImage(300, 150, QImage.Format.Format_RGB32)
    image.fill(QColor("#0072b2"))
    path = tmp_path / "new folder" / "report.pdf"
    assert write_report(a_report(120), path, {"plot": image})
    assert path.read_bytes().startswith(b"%PDF") and b"/Image" in path.read_bytes()
    text = text_of(path)
    assert text.count("foot with hash") == text.count("page ") >= 3 and "page 1 of" in text
    assert "gauge 119 <b>" in text and "Ash & Birch" in text and "Checked by: ____" in text
    assert text.count("Feature") >= 3  # the head of the table stands on each page


def test_a_file_that_cannot_be_written_is_told(qapp, tmp_path):
    (tmp_path / "file").write_text("in the way")
    for path in (tmp_path / "file" / "report.pdf", tmp_path):
        assert not write_report(a_report(1), path)
        assert not write_label(Label(("Ash", "Void"), "code"), path)


def test_a_label_is_one_small_page(qapp, tmp_path):
    path = tmp_path / "label.pdf"
    lines = (
        "Ash",
        "nozzle 0.4 mm",
        "outside ±0.10 to 140 mm",
        "a long line that has to break over to the next one",
        "Void",
    )
    assert write_label(Label(lines, "slipgauge machine 3 trial 44"), path)
    text = text_of(path)
    assert "Ash" in text and "Void" in text and "outside ±0.10" in text


@pytest.mark.parametrize("text", ["Slipgauge 1.0 · page 1 of 2", "Demo-Werkstatt, erfundene Daten · " * 6])
def test_the_foot_leaves_room_between_its_line_and_the_number_of_the_page(qapp, tmp_path, text):
    writer = QPdfWriter(str(tmp_path / "foot.pdf"))
    writer.setResolution(96)
    font = foot_font(text, writer)
    assert QFontMetricsF(font, writer).horizontalAdvance(text) <= writer.width() - 20
    assert (font.pointSizeF() == 7.5) == (len(text) < 40)


def test_the_square_code_is_the_one_the_library_makes(qapp):
    import segno

    rows = [list(row) for row in segno.make("slipgauge machine 3", error="m", micro=False).matrix_iter(border=4)]
    image = QImage(10 * len(rows), 10 * len(rows), QImage.Format.Format_Grayscale8)
    image.fill(QColor("white"))
    painter = QPainter(image)
    _draw_code(painter, "slipgauge machine 3", QRectF(0, 0, image.width(), image.height()))
    painter.end()
    drawn = [[image.pixelColor(10 * x + 5, 10 * y + 5).lightness() < 128 for x in range(len(rows))]
             for y in range(len(rows))]  # fmt: skip
    assert np.array_equal(np.array(drawn), np.array(rows) > 0)


def test_numbers_have_a_comma_in_german_and_what_was_typed_stays(qapp):
    headings = (tr("Lot"), tr("Value ± U (95 %)"), tr("As typed"))
    rows = (("PLA 1.75 mm", "+0.040 ± 0.006 mm", "127.6"), ("2.4 rig", "6.2", "127,6"), ("", "3.88 ± 0.33 of 4", ""))
    before = language.current_view()
    language.apply_view(qapp, language.View("de"))
    try:
        told = _html(Table("t", headings, rows), {}, title=False)
    finally:
        language.apply_view(qapp, before)
    assert re.findall(r"<td[^>]*>([^<]*)</td>", told) == [
        "PLA 1.75 mm", "+0,040 ± 0,006 mm", "127.6", "2.4 rig", "6,2", "127,6", "&nbsp;", "3,88 ± 0,33 von 4", "&nbsp;"]

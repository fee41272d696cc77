"""Coverage factors against the published table; values and lengths as people read and type them, one line a case."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.quantity import (
    MM_PER_INCH,
    Estimate,
    coverage_factor,
    harmless_cell,
    length_from_text,
    rounded_pair,
    told_value,
    value_text,
)
from tests.published import printed, table

LEVELS = {"p68_27": 0.6827, "p90": 0.90, "p95": 0.95, "p95_45": 0.9545, "p99": 0.99, "p99_73": 0.9973}
G2 = [(row["nu"], column, row[column]) for row in table("quantity_gum_g2") for column in LEVELS]
# Two cells are printed as 1.70 and 235.80; the exact values are 1.6896 and 235.784.
ROUNDING_SLIPS = {("35", "p90"): "1.6896", ("1", "p99_73"): "235.784"}


@pytest.mark.parametrize(("nu", "column", "cell"), G2, ids=[f"{nu} {column}" for nu, column, _ in G2])
def test_gum_table_g2(nu, column, cell):
    assert coverage_factor(float(nu), LEVELS[column]) == printed(ROUNDING_SLIPS.get((nu, column), cell))


def test_degrees_of_freedom_are_not_truncated():
    assert coverage_factor(2) > coverage_factor(2.5) > coverage_factor(3) > coverage_factor(math.inf)


def test_estimate():
    estimate = Estimate("wall_outset", 0.05, 0.01, 4, "mm")
    assert (estimate.k, estimate.U) == (printed("2.78"), printed("0.0278"))
    assert estimate.significant and not Estimate("wall_outset", -0.02, 0.01, 4, "mm").significant


@pytest.mark.parametrize(
    ("value", "U", "shown"),
    [
        (0.0404, 0.0061, ("+0.0404", "0.0061")),
        (0.04, 0.0123, ("+0.040", "0.012")),
        (-0.0404, 0.0061, ("−0.0404", "0.0061")),
        (100.146, 0.333, ("+100.15", "0.33")),
        (0.1, 0.0994, ("+0.100", "0.099")),
        (0.1, 0.0996, ("+0.10", "0.10")),  # rounds up to one digit fewer
        (9.96, 0.996, ("+10.0", "1.0")),
        (12.34, 1.0, ("+12.3", "1.0")),
        (123.4, 9.94, ("+123.4", "9.9")),
        (123.4, 9.96, ("+123", "10")),
        (12345.0, 234.0, ("+12340", "230")),
        (12345.0, 999.0, ("+12300", "1000")),
        (0.00001, 0.02, ("+0.000", "0.020")),
        (-0.00001, 0.02, ("+0.000", "0.020")),  # no minus before a zero
        (0.0, 0.02, ("+0.000", "0.020")),
        (1e-7, 2e-8, ("+0.000000100", "0.000000020")),
        (0.25, 0.0, ("0.25", "0")),
        (-0.25, 0.0, ("−0.25", "0")),
        (0.1234567, math.inf, ("0.123457", "?")),
        (0.1234567, math.nan, ("0.123457", "?")),
        (0.25, -1.0, ("0.25", "0")),
        (5.0, 1.75e308, ("5", "?")),
    ],
)
def test_rounded_pair(value, U, shown):
    assert rounded_pair(value, U) == shown


@given(value=st.floats(-1e4, 1e4), U=st.floats(1e-9, 1e4))
def test_rounding_moves_nothing_by_more_than_half_a_digit(value, U):
    shown, band = rounded_pair(value, U)
    assert float(band) == pytest.approx(U, rel=0.051)
    assert abs(float(shown.replace("−", "-")) - value) <= 0.051 * U * (1 + 1e-6)
    assert len(band.replace(".", "").lstrip("0")) == 2 or U >= 99.5
    assert len(shown.partition(".")[2]) == len(band.partition(".")[2])


@pytest.mark.parametrize(
    ("estimate", "text"),
    [
        (Estimate("wall_outset", 0.04, 0.003, math.inf, "mm"), "+0.0400 ± 0.0059 mm"),
        (Estimate("scale_x", -0.0012, 0.0001, 9, "1"), "−0.120 ± 0.023 %"),
        (Estimate("angle", 0.5, 0.1, math.inf, "deg"), "+0.50 ± 0.20 deg"),
        (Estimate("scale_x", 0.001, math.nan, 9, "1"), "0.1 ± ? %"),
        (Estimate("flow_ratio_wall", 0.975, 0.006, math.inf, "1"), "+0.975 ± 0.012"),
    ],
)
def test_value_text(estimate, text):
    assert value_text(estimate) == text


def test_what_is_set_is_what_is_told():
    """JCGM 100:2008 7.2.6: as many places as two digits of U have."""
    assert told_value(Estimate("flow_ratio", 0.976955, 0.006, math.inf, "1")) == 0.977
    assert told_value(Estimate("skew_xy", -0.0012345, 1e-5, math.inf, "rad")) == -0.001234
    assert told_value(Estimate("steps", 95.384615, 0.0, math.inf, "steps/mm")) == 95.3846


@pytest.mark.parametrize(
    ("text", "mm", "unit", "step_mm"),
    [
        ("12.5", 12.5, "mm", 0.1),
        ("12,5", 12.5, "mm", 0.1),
        ("12", 12.0, "mm", 1.0),
        ("12.", 12.0, "mm", 1.0),
        ("12,", 12.0, "mm", 1.0),
        (".5", 0.5, "mm", 0.1),
        (",05", 0.05, "mm", 0.01),
        ("1,234", 1.234, "mm", 0.001),  # a decimal comma, never a thousands separator
        ("12.50", 12.5, "mm", 0.01),
        ("+3.2", 3.2, "mm", 0.1),
        ("-3.2", -3.2, "mm", 0.1),
        ("−3,2", -3.2, "mm", 0.1),
        ("  12,5  ", 12.5, "mm", 0.1),
        ("12.5mm", 12.5, "mm", 0.1),
        ("12,5 MM", 12.5, "mm", 0.1),
        ("0.394in", 10.0076, "in", 0.0254),
        ("0,394 in", 10.0076, "in", 0.0254),
        ("0.394 inch", 10.0076, "in", 0.0254),
        ('5.108"', 129.7432, "in", 0.0254),
        ("5.108″", 129.7432, "in", 0.0254),
        ("1IN", 25.4, "in", 25.4),
        ("100000", 1e5, "mm", 1.0),
    ],
)
def test_a_length_is_read(text, mm, unit, step_mm):
    length = length_from_text(text)
    assert (length.text, length.mm, length.unit) == (text, pytest.approx(mm, rel=1e-14), unit)
    assert length.step_mm == pytest.approx(step_mm)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("25/64in", 9.921875),
        ('25/64"', 9.921875),
        ("25/64 inch", 9.921875),
        ("1 1/2in", 38.1),
        ("1-1/2 in", 38.1),
        ("-1 1/2in", -38.1),
        ("−1/8in", -3.175),
        ("+1/8in", 3.175),
    ],
)
def test_a_fraction_of_an_inch_is_read(text, mm):
    length = length_from_text(text)
    assert (length.mm, length.unit) == (mm, "in") and math.isnan(length.step_mm)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "“” is not a length; type for example 12.5"),
        ("abc", "is not a length"),
        ("mm", "is not a length"),
        (".", "is not a length"),
        ("1,234.5", "without thousands separators"),
        ("1.234,5", "without thousands separators"),
        ("1 234", "without thousands separators"),
        ("1'234", "without thousands separators"),
        ("1,234,567", "without thousands separators"),
        ("12..5", "is not a length"),
        ("12.5.", "is not a length"),
        ("--5", "is not a length"),
        ("5-", "is not a length"),
        ("1e3", "is not a length"),
        ("0x10", "is not a length"),
        ("12 mm 5", "is not a length"),
        ("12\n5", "is not a length"),
        ("nan", "is not a length"),
        ("inf", "is not a length"),
        ("12.5 ± 0.1", "is not a length"),
        ("1234567/3in", "is not a length"),
        ("9" * 5000 + "/3in", "is not a length"),
        ("12 cm", "“12 cm”: the unit cm is not known here; type mm or in"),
        ("12.5 µm", "the unit µm is not known"),
        ("12.5 μm", "the unit μm is not known"),  # the Greek letter looks the same
        ("3 ft", "the unit ft is not known"),
        ("0.5 inches", "the unit inches is not known"),
        ("25/64", "“25/64”: a fraction is read in inch only; type 25/64in, or the length in mm as a decimal"),
        ("25/64 mm", "“25/64 mm”: a fraction is read in inch only; type 25/64in,"),
        ("1/0in", "zero below the line"),
        ("100000.1", "longer than 100 m"),
        ("9" * 400, "longer than 100 m"),
        ("-4000in", "longer than 100 m"),
        ("999999/2in", "longer than 100 m"),
    ],
)
def test_a_length_is_refused(text, words):
    with pytest.raises(InputError) as refused:
        length_from_text(text, field="measured_mm")
    assert words in refused.value.message
    assert (refused.value.field, refused.value.row) == ("measured_mm", None)


@given(thousandths=st.integers(-(10**8), 10**8), mark=st.sampled_from(".,"), minus=st.sampled_from("-−"))
def test_a_length_in_mm_survives_the_round_trip(thousandths, mark, minus):
    mm = thousandths / 1000
    length = length_from_text(f"{mm:.3f}".replace(".", mark).replace("-", minus))
    assert (length.mm, length.unit, length.step_mm) == (mm, "mm", pytest.approx(0.001))


@given(ten_thousandths=st.integers(-(10**7), 10**7), unit=st.sampled_from(["in", ' "', " inch", "″"]))
def test_a_length_in_inch_survives_the_round_trip(ten_thousandths, unit):
    length = length_from_text(f"{ten_thousandths / 1e4:.4f}{unit}")
    assert length.mm / MM_PER_INCH == pytest.approx(ten_thousandths / 1e4, rel=1e-15, abs=1e-12)
    assert length.unit == "in"


@given(whole=st.integers(0, 99), top=st.integers(1, 63), power=st.integers(1, 6))
def test_a_fraction_survives_the_round_trip(whole, top, power):
    text = f"{whole} {top}/{2**power}in"
    assert length_from_text(text).mm == pytest.approx((whole + top / 2**power) * 25.4, rel=1e-15)


@given(st.text(max_size=12) | st.text("0123456789.,/- \"'inmµ+−", max_size=12))
def test_anything_else_is_refused_in_words(text):
    try:
        length = length_from_text(text)
    except InputError as refused:
        assert refused.field == "length" and refused.message
    else:
        assert math.isfinite(length.mm) and abs(length.mm) <= 1e5


@pytest.mark.parametrize("level", [0.0, 1.0, -3.0, 95.0, math.nan])
def test_a_level_of_confidence_is_a_share(level):
    with pytest.raises(InputError, match="not between 0 and 1; type 0.95 for 95 %"):
        coverage_factor(5.0, level)


@pytest.mark.parametrize("text", ["=1+1", "@A1", "+x", "+1+1", "-cmd|' /C calc'!A0", "\t=1", " =1", "＝1", "'x"])
def test_what_a_spreadsheet_would_run_is_marked_as_text(text):
    """Common practice, no source."""
    assert harmless_cell(text) == "'" + text


@pytest.mark.parametrize("text", ["+0.04", "-3,5", "+0.00 ± 0.03", "-0.2 ± 0.1 mm", "+0.3 %", "12.5 mm", "", "−0.02"])
def test_numbers_and_words_stay_as_they_are(text):
    assert harmless_cell(text) == text

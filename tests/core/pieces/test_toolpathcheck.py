"""The check of programs: each refusal has a case, written by hand as somebody's own text may be.

Where no file is named, the programs are from memory of how such files look.
"""

import math

import numpy as np
import pytest
from gcodeparser import parse_gcode_lines
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import InputError
from core.pieces.toolpathcheck import MOST_FAULTS, Limits, check_program
from tests.core.pieces.gcodereading import laid_out

LIMITS = Limits()
START = "; caution\nM104 S0\nM140 S0\nG28\nG90\nM83\nG0 Z5 F600\nG0 X10 Y10 F6000\nM104 S210\nM109 S210\n"
END = "M104 S0\nM140 S0\n"
FILAMENT = math.pi * 1.75**2 / 4


def check(body: str, limits: Limits = LIMITS, *, start: str = START, end: str = END):
    return check_program([start.encode(), f"{body}\n".encode(), end.encode()], limits, 1.75)


def says(body: str, limits: Limits = LIMITS, **around) -> list[str]:
    return [fault.says for fault in check(body, limits, **around).faults]


def test_a_good_program_is_told_in_numbers():
    found = check(
        "G0 Z0.2 F600\nG1 X110 E3.3849 F2400\nG1 E-1 F1800\nG0 X10 Y20 F6000\nG1 E1 F1800\nG1 X110 E3.3849 F2400"
    )
    assert not found.faults
    assert found.filament_mm == pytest.approx(6.7698)
    assert found.low_mm == pytest.approx((10, 10, 0.2))
    assert found.high_mm == pytest.approx((110, 20, 5))
    assert (found.nozzle_c, found.bed_c, found.speed_mm_s) == (210, 0, 100)
    assert found.rate_mm3_s == pytest.approx(3.3849 * FILAMENT / 2.5, rel=1e-5)
    way = 4.8 / 10 + 2.5 + 1 / 30 + math.hypot(100, 10) / 100 + 1 / 30 + 2.5
    assert found.time_s == pytest.approx(way)


REFUSED = {
    "beside the bed": ("G0 X220.01", "X 220.01 mm is outside the travel, 0 to 220 mm"),
    "before the bed": ("G0 Y-0.5", "Y -0.5 mm is outside"),
    "below the bed": ("G0 Z-0.1 F600", "Z -0.1 mm is below the bed"),
    "above the travel": ("G0 Z221 F600", "Z 221 mm is outside"),
    "bed left by steps": ("G91\nG0 X120\nG0 X120", "X 250 mm is outside"),
    "longer than the axis": ("G91\nG0 X230", "X moves by 230 mm; the axis is only 220 mm long"),
    "hot end": ("M109 S241", "241 °C is beyond the limit of the hot end, 240 °C"),
    "hot end by R": ("M109 R260", "260 °C is beyond"),
    "bed": ("M190 S101", "101 °C is beyond the limit of the bed, 100 °C"),
    "below nothing": ("M104 S-5", "-5 °C is beyond"),
    "no temperature": ("M104", "No temperature stands there"),
    "fast": ("G0 X200 F9001", "The nozzle would run at 150 mm/s"),
    "fast upwards": ("G0 Z15 F601", "Z would run at 10.02 mm/s, the ceiling is 10 mm/s"),
    "fast upwards aslant": ("G0 X20 Z15 F6000", "Z would run at 70.71 mm/s"),
    "fast filament": ("G1 E-1 F3601", "The filament would run at 60.02 mm/s"),
    "fast filament on the way": ("G1 X10.1 E-1 F600", "The filament would run at 100 mm/s"),
    "rate": ("G1 X110 E10 F6000", "The plastic would run at 24.05 mm³/s, the ceiling is 12 mm³/s"),
    "rate standing": ("G1 E10 F600", "The plastic would run at 24.05 mm³/s"),
    "told cold": ("M104 S160\nG1 X20 E0.3 F600", "Filament moves while the nozzle is told 160 °C"),
    "drawn back cold": ("M104 S0\nG1 E-1 F1800", "told 0 °C; below 170 °C nothing flows"),
    "not waited for": ("M104 S220\nG1 X20 E0.3 F600", "before the nozzle was waited for (M109)"),
    "no number": ("G1 Xnan", "“XNAN” is no letter with a number"),
    "huge number": ("G1 X" + "9" * 400, "no finite number"),
    "unknown word": ("M92 X80", "M92 is not among"),
    "place renamed": ("G92 X0", "G92 may set E only"),
    "all renamed": ("G92", "G92 may set E only"),
    "fan": ("M106 S256", "S of M106 is 0 to 255 here, not 256"),
    "no speed": ("G0 X20 F0", "no speed above 0"),
    "zero lost": ("G28 X\nG91\nG0 X5", "X moves by 5 mm, and nobody knows from where"),
    "fed from nowhere": ("G28 X\nG1 X20 E0.3 F600", "on the way from a place that nobody knows"),
}


@pytest.mark.parametrize(("body", "words"), REFUSED.values(), ids=REFUSED.keys())
def test_each_refusal_names_the_thing_and_the_limit(body, words):
    found = check(body)
    assert any(words in fault.says for fault in found.faults), [fault.says for fault in found.faults]
    lines = START.count("\n") + body.count("\n") + 1
    assert {fault.line for fault in found.faults} <= set(range(START.count("\n") + 1, lines + 1))


HEADS = {
    "no caution": ("M104 S0\nM140 S0\n", "does not begin with its cautions"),
    "moves before heaters are off": ("; c\nM104 S0\nG28\nM140 S0\n", "G28 comes before both heaters were switched off"),
    "heats first": ("; c\nM104 S200\nM140 S0\n", "M104 comes before both heaters were switched off"),
    "not homed": ("; c\nM104 S0\nM140 S0\nG90\nG0 X10 F600\n", "X moves before it has found its zero (G28)"),
    "one axis not homed": ("; c\nM104 S0\nM140 S0\nG90\nG28 X\nG0 X10 Y10 F600\n", "Y moves before"),
    "no way of counting": ("; c\nM104 S0\nM140 S0\nG28\nG0 X10 F600\n", "neither G90 nor G91"),
    "no way of feeding": ("; c\nM104 S0\nM140 S0\nG28\nG90\nM109 S210\nG1 E1 F60\n", "neither M82 nor M83"),
    "no speed at all": ("; c\nM104 S0\nM140 S0\nG28\nG90\nG0 X10\n", "no speed above 0"),
}


@pytest.mark.parametrize(("start", "words"), HEADS.values(), ids=HEADS.keys())
def test_beginnings_that_are_refused(start, words):
    assert any(words in said for said in says("", start=start))


@pytest.mark.parametrize(
    ("end", "left"), [("", "hot end"), ("M104 S0\nM190 S60\n", "bed"), ("M104 S0\nM140 S0\nM104 S40\n", "hot end")]
)
def test_a_heater_left_on_is_refused_for_the_whole_program(end, left):
    (fault,) = check("", end=end).faults
    assert fault.line == 0
    assert fault.says == f"The {left} is not switched off at the end."


def test_an_empty_program_switches_nothing_off():
    assert len(check_program([b""], LIMITS, 1.75).faults) == 2


def test_what_was_drawn_back_is_given_again_at_any_rate():
    """A retraction of 2 mm comes back at 60 mm/s: 144 mm3/s of filament, and no plastic."""
    assert not says("G1 E-2 F3600\nG1 E2 F3600")
    assert "The plastic would run" in says("G1 E-2 F3600\nG1 E2.5 F3600")[0]


def test_absolute_extrusion_is_counted_from_where_it_was_set():
    found = check("M82\nG92 E0\nG1 X110 E3 F2400\nG1 X10 E6 F2400\nG92 E0\nG1 X110 E3 F2400")
    assert not found.faults
    assert found.filament_mm == pytest.approx(9)


def test_cooler_needs_no_new_wait_while_hot():
    assert not says("M104 S200\nG1 X20 E0.3 F600")


def test_bed_and_fan_are_known():
    found = check("M190 S60\nM106 S128\nM107")
    assert not found.faults
    assert found.bed_c == 60


def test_a_round_bed_has_no_corners():
    disc = Limits(low_mm=(-100, -100, 0), high_mm=(100, 100, 200), round_bed=True)
    assert not says("G0 X99 Y10", disc)
    assert "X 80, Y 80 mm is outside the round bed" in says("G0 X80 Y80", disc)[0]
    homed_x = "; c\nM104 S0\nM140 S0\nG28\nG90\nG0 X99 F600\n"  # Y is not told yet
    assert not says("", disc, start=homed_x)


def test_a_move_to_where_it_stands_takes_no_time():
    assert check("G1 X10 F600").time_s == check("").time_s
    assert not says("G1 X10 E0 F600")
    assert not says("G1 F600")


def test_not_more_than_twenty_faults_are_listed():
    assert len(check("G0 X999\n" * 50).faults) == MOST_FAULTS


@pytest.mark.parametrize("value", [0.0, -1.0, 17.5, math.nan])
def test_a_filament_that_cannot_be_is_refused(value):
    with pytest.raises(InputError, match="cannot be") as refused:
        check_program([b""], LIMITS, value)
    assert refused.value.field == "filament_mm"


@given(st.lists(st.text(alphabet="GMXYZEFS0123456789.- ;n", max_size=24), max_size=12))
@settings(max_examples=150, deadline=None)
def test_whatever_is_written_is_read_to_its_end(lines):
    """No text makes the check fail, and none that leaves the bed or heats beyond the limit passes."""
    found = check("\n".join(lines))
    if not found.faults:
        assert found.nozzle_c <= LIMITS.hot_end_c
        assert found.speed_mm_s <= LIMITS.speed_mm_s * (1 + 1e-6)
        assert all(low >= -1e-6 for low in found.low_mm)
        assert all(high <= 220 + 1e-6 for high in found.high_mm)


def test_what_passes_is_harmless_by_an_independent_reading():
    """One to three letters of a good program are changed, 1500 times; what still passes stays within every limit."""
    rng = np.random.default_rng(5)
    good = list(START + "G0 Z0.2 F600\nG1 X110 E3.3849 F2400\nG0 X10 Y20 F6000\nG1 X110 E3.3849 F2400\n" + END)
    passed = 0
    for _ in range(1500):
        text = good.copy()
        for place in rng.integers(12, len(text), rng.integers(1, 4)).tolist():
            text[place] = str(rng.choice(list("0123456789.-GMXYZEFS \n")))
        program = "".join(text)
        if check_program([program.encode()], LIMITS, 1.75).faults:
            continue
        try:
            found = laid_out(program)
        except ValueError:  # the library does not read a number that ends with its point
            continue
        passed += 1
        for axis in "XYZ":
            told = [value for value in found[axis] if not math.isnan(value)]
            assert all(-1e-6 <= value <= 220 + 1e-6 for value in told), program
        assert all(value / 60 <= LIMITS.speed_mm_s + 1e-6 for value in found["F"] if not math.isnan(value)), program
        heats = [line for line in parse_gcode_lines(program) if line.command_str in ("M104", "M109", "M140", "M190")]
        assert all(float(line.params["S"]) <= LIMITS.hot_end_c for line in heats if "S" in line.params), program
    assert 100 < passed < 1400  # neither all nor none

"""Programs, read back by a general-purpose parser library that knows nothing of ours."""

import math
from dataclasses import replace

import numpy as np
import pytest
from gcodeparser import parse_gcode_lines

from core.errors import InputError, StoreError
from core.pieces.toolpath import Laying, Moves, PathBead, Toolpath, lay
from core.pieces.toolpathdraw import Setup
from core.pieces.toolpathtext import (
    END_TEXT,
    START_TEXT,
    Heat,
    Program,
    cautions,
    filled_text,
    heats,
    program_text,
    write_program,
)
from core.pieces.toolpathtrials import TRIALS, TrialKind, draw_trial
from core.words import tr
from tests.core.pieces.gcodereading import laid_out

AREA = 0.2 * (0.45 - (1 - math.pi / 4) * 0.2)
FILAMENT = math.pi * 1.75**2 / 4
BEAD = PathBead(0.45, 0.2, AREA / 0.2, AREA / FILAMENT)
SETUP = Setup(BEAD, 1.75, 40.0, 20.0, (110.0, 100.0), (0.0, 0.06, -0.06))
COMMON_WORDS = {"G0", "G1", "G28", "G90", "G91", "G92", "M82", "M83", "M104", "M109", "M140", "M190", "M106", "M107"}


def program(kind: TrialKind, relative: bool = True, **changed) -> Program:
    plan = TRIALS[kind]
    made = draw_trial(kind, {entry.key: entry.usual for entry in plan.entries}, SETUP)
    laying = Laying(120.0, 8.0, retract_mm=1.0 if plan.heats else 0.0, lift_mm=plan.lift_mm)
    path = Toolpath(plan.title, made.parts, lay(made.strokes, laying, 20.0), 1.75)
    heat = Heat(210.0, 60.0 if plan.lays else 0.0, 50.0) if plan.heats else None
    usual = Program(path, heat, relative, START_TEXT, END_TEXT, lap_mm_s=60.0, z_mm_s=8.0, lap_z_mm=20.0)
    return replace(usual, **changed)


def text_of(of: Program) -> str:
    return b"".join(program_text(of)).decode("ascii")


@pytest.mark.parametrize("relative", [True, False], ids=["relative", "absolute"])
@pytest.mark.parametrize("kind", list(TrialKind))
def test_an_independent_reader_finds_the_drawn_moves_and_volume(kind, relative):
    made = program(kind, relative)
    moves = made.toolpath.moves
    found = laid_out(text_of(made))
    lap, end = 6, 1  # moves before and after those of the path
    count = moves.x_mm.size
    assert len(found["X"]) == lap + count + end
    for key, drawn in (("X", moves.x_mm), ("Y", moves.y_mm), ("Z", moves.z_mm)):
        assert np.array(found[key][lap : lap + count]) == pytest.approx(drawn, abs=5.01e-4)
    assert np.array(found["E"]).sum() * FILAMENT == pytest.approx(moves.filament_mm.sum() * FILAMENT, abs=1e-4)
    assert np.array(found["E"][lap : lap + count]) == pytest.approx(moves.filament_mm, abs=1.01e-5)
    speed = np.array(found["F"][lap : lap + count]) / 60
    assert (speed <= moves.speed_mm_s * (1 + 1e-9)).all()
    assert speed == pytest.approx(moves.speed_mm_s, rel=2e-3)


@pytest.mark.parametrize("kind", list(TrialKind))
def test_only_words_that_the_trade_at_large_uses(kind):
    assert {line.command_str for line in parse_gcode_lines(text_of(program(kind)))} <= COMMON_WORDS


@pytest.mark.parametrize("kind", list(TrialKind))
def test_cautions_first_heaters_off_first_and_last(kind):
    made = program(kind)
    text = text_of(made)
    lines = text.splitlines()
    says = cautions(made.heat is not None)
    assert lines[0].startswith("; Slipgauge")
    assert [line for line in lines if "CAUTION" in line] == [f"; CAUTION: {words}" for words in says]
    commands = [line for line in lines if not line.startswith(";")]
    assert commands[:4] == ["M104 S0", "M140 S0", "M107", "G28"]
    last_heat = max(n for n, line in enumerate(commands) if line.startswith(("M104", "M109", "M140", "M190")))
    assert commands[last_heat - 1 : last_heat + 1] == ["M104 S0", "M140 S0"]
    assert commands[-3:] == END_TEXT.split("\n")[:3]


def test_a_lap_goes_round_before_anything_is_heated():
    made = program(TrialKind.WALL_BOX)
    lines = text_of(made).splitlines()
    start = lines.index("; a lap with the heaters off: all that follows lies within")
    lap = [line.split() for line in lines[start + 2 : start + 7]]
    moves = made.toolpath.moves
    assert lines[start + 1] == "G0 Z20.000 F480"
    assert {float(words[1][1:]) for words in lap} == {moves.x_mm.min(), moves.x_mm.max()}
    assert {float(words[2][1:]) for words in lap} == {moves.y_mm.min(), moves.y_mm.max()}
    assert lap[0] == lap[-1]
    assert lines[start + 7 : start + 11] == ["M140 S60", "M190 S60", "M104 S210", "M109 S210"]


def test_nothing_is_heated_for_a_pen_and_no_bed_for_strands():
    assert "S210" not in text_of(program(TrialKind.PEN_LINES))
    assert "E" not in {w[0] for line in text_of(program(TrialKind.PEN_LINES)).splitlines()
                       if not line.startswith(";") for w in line.split()}  # fmt: skip
    strands = text_of(program(TrialKind.STRANDS))
    assert "M109 S210" in strands
    assert "M190" not in strands


def test_layers_are_named_and_the_fan_begins_with_the_second():
    lines = text_of(program(TrialKind.WALL_BOX)).splitlines()
    assert lines.count("M106 S128") == 1
    assert lines[lines.index("M106 S128") - 1] == "; layer 2 of 75, Z 0.400"
    assert "; layer 75 of 75, Z 15.000" in lines
    assert "M106" not in text_of(program(TrialKind.WALL_BOX, heat=Heat(210.0, 60.0)))


def test_absolute_extrusion_begins_anew_with_each_layer():
    lines = text_of(program(TrialKind.WALL_BOX, relative=False)).splitlines()
    assert lines.count("G92 E0") == 75
    largest = max(float(word[1:]) for line in lines if line.startswith("G1") for word in line.split() if word[0] == "E")
    assert largest < 10


def test_rounding_is_not_added_up():
    """Ten thousand bits of filament of a third of the last digit each."""
    count = 10_000
    feed = np.full(count, 1e-5 / 3)
    x = np.tile([100.0, 110.0], count // 2)
    moves = Moves(x, np.full(count, 100.0), np.full(count, 0.2), feed, np.full(count, 40.0), np.full(count, 0.45),
                  np.ones(count, np.int64))  # fmt: skip
    made = replace(program(TrialKind.WALL_BOX), toolpath=Toolpath(tr("Bits"), (), moves, 1.75))
    found = laid_out(text_of(made))
    assert sum(found["E"]) == pytest.approx(count * 1e-5 / 3, abs=1e-5)


def test_the_machines_own_text_is_filled_in():
    text = "G28 ; all\nM190 S{bed_c}\n"
    assert filled_text(text, Heat(215.5, 60.0)) == "G28 ; all\nM190 S60\n"
    assert filled_text("S{nozzle_c}", None) == "S0"
    made = program(TrialKind.WALL_BOX, start_text="G28\n; {nozzle_c} deg wanted", end_text="; park")
    lines = text_of(made).splitlines()
    assert "; 210 deg wanted" in lines
    assert lines[-2:] == ["; park", "; end"]


def test_an_unknown_name_in_the_machines_text_is_refused():
    with pytest.raises(InputError, match="names {tool}; known are {nozzle_c} and {bed_c}") as refused:
        text_of(program(TrialKind.WALL_BOX, start_text="T{tool}"))
    assert refused.value.field == "template"


def test_remarks_are_written_in_letters_that_every_machine_reads():
    made = program(TrialKind.WALL_BOX, remarks=("machine: Brömble 2 °C\nG1 Z-5",))
    assert "; machine: Br?mble 2 deg C G1 Z-5" in text_of(made).splitlines()


@pytest.mark.parametrize(
    ("column", "value", "says"),
    [
        ("filament_mm", math.nan, "filament that is no number"),
        ("speed_mm_s", 0.0, "0 mm/s cannot be"),
        ("speed_mm_s", math.inf, "inf mm/s cannot be"),
        ("x_mm", math.nan, "no number"),
    ],
)
def test_numbers_that_cannot_be_are_refused(column, value, says):
    made = program(TrialKind.MASS_BOX)
    moves = made.toolpath.moves
    wrong = getattr(moves, column).copy()
    wrong[moves.width_mm > 0] = value
    with pytest.raises(InputError, match=says) as refused:
        text_of(replace(made, toolpath=replace(made.toolpath, moves=replace(moves, **{column: wrong}))))
    assert refused.value.field == "toolpath"


def test_a_place_next_to_zero_has_no_minus():
    made = program(TrialKind.WALL_BOX)
    moves = made.toolpath.moves
    shifted = replace(moves, x_mm=np.where(moves.x_mm < 95, -1e-9, moves.x_mm))
    assert "-0.000" not in text_of(replace(made, toolpath=replace(made.toolpath, moves=shifted)))


def test_long_runs_are_written_in_one_go_and_read_the_same():
    """A spiral of 20000 short moves: whole runs by tables, its first line by hand."""
    count = 20_000
    turn = np.linspace(0, 60 * math.pi, count)
    radius = np.linspace(5, 60, count)
    x, y = 110 + radius * np.cos(turn), 100 + radius * np.sin(turn)
    length = np.hypot(np.diff(x, prepend=x[0]), np.diff(y, prepend=y[0]))
    moves = Moves(x, y, np.full(count, 0.2), length * BEAD.filament_ratio, np.full(count, 40.0), np.full(count, 0.45),
                  np.ones(count, np.int64))  # fmt: skip
    path = Toolpath(tr("Spiral"), (), moves, 1.75)
    found = laid_out(text_of(replace(program(TrialKind.WALL_BOX), toolpath=path)))
    assert np.array(found["X"][6:-1]) == pytest.approx(x, abs=5.01e-4)
    assert np.array(found["E"][6:-1]) == pytest.approx(moves.filament_mm, abs=1.01e-5)
    assert sum(found["E"]) * FILAMENT == pytest.approx(length.sum() * AREA, rel=1e-6)


def test_a_program_is_written_whole_or_not_at_all(tmp_path):
    made = program(TrialKind.WALL_BOX)
    path = tmp_path / "box.gcode"
    path.write_text("old")
    with pytest.raises(InputError):
        write_program(replace(made, start_text="{tool}"), path)
    assert path.read_text() == "old"
    write_program(made, path)
    assert path.read_text() == text_of(made)
    assert [found.name for found in tmp_path.iterdir()] == ["box.gcode"]


def test_a_folder_that_is_not_there_is_said(tmp_path):
    with pytest.raises(StoreError, match="choose another folder"):
        write_program(program(TrialKind.FEED), tmp_path / "none" / "feed.gcode")


@pytest.mark.parametrize(
    ("text", "warm"),
    [
        ("G28", False),
        ("M104 S0\nM140 S0.0 ; off", False),
        ("; M104 S200", False),
        ("M104 S200", True),
        ("g28\n m190 s60", True),
        ("M109 R180", True),
        ("M140 S{bed_c}", True),
        ("M106 S255", False),
    ],
)
def test_a_text_that_heats_is_found(text, warm):
    assert heats(text) is warm

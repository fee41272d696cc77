"""The command without a window: file in; sentences, strict JSON, a picture and a kept trial out; faults by line."""

import json
import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from app import analyse
from core.machine_geometry.drive import Drive, DriveKind
from core.records.rows import Instrument, Lot, Machine, TrialState
from core.records.store import open_store
from tests.core.part_size.printouts import Faults, Print
from tests.published import table

ROOT = Path(__file__).resolve().parents[2]
HEAD = "axis,kind,nominal_mm,measured_mm"


def comb_lines(axes="x", seed=1, **faults):
    piece, rng = Print(axes), np.random.default_rng(seed)
    sizes = piece.size_mm(Faults(**faults)) + 0.008 * rng.standard_normal(piece.nominal_mm.size)
    rows = zip(piece.axis, piece.kind, piece.nominal_mm, sizes, strict=True)
    return [HEAD, *(f"{a},{k},{L:g},{y:.2f}" for a, k, L, y in rows)]


@pytest.fixture
def run(tmp_path, capsys):
    """Write the lines to a file, run the command in this process; return code, stdout and stderr."""

    def command(lines, *arguments, encoding="utf-8"):
        file = tmp_path / "readings.csv"
        file.write_text("\n".join(lines) + "\n", encoding=encoding)
        code = analyse.main([str(file), *map(str, arguments)])
        told = capsys.readouterr()
        return code, told.out, told.err.replace(str(file), "readings.csv")

    return command


@pytest.fixture
def database(tmp_path):
    where = tmp_path / "shop.db"
    store = open_store(where)
    store.add_machine(Machine("old bed", drives={"x": Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20).parts()}))
    store.add_lot(Lot("grey 7", "PETG"))
    store.add_instrument(Instrument("caliper 1", u_outside_zero_mm=0.004, u_inside_zero_mm=0.004))
    store.close()
    return where


def kept_in(where):
    store = open_store(where)
    try:
        return [store.trial(trial.id) for trial in store.trials()]
    finally:
        store.close()


# What is told


@pytest.mark.parametrize("name", ["11358-axis1", "11359-axis1", "11361-axis1"])
def test_the_real_axes_print_leave_and_nothing_else(run, name):
    rows = table("sizeerror_stepper_axes", axis=name, direction="positive")
    lines = [HEAD, *(f"x,travel,{row['setpoint_mm']},{row['resolver_mm']}" for row in rows)]
    code, out, err = run(lines)
    assert (code, err) == (0, "") and out.startswith("Leave it: Change nothing. Travel of X: ")
    told = json.loads(run(lines, "--json")[1])
    assert [advice["setting"] for advice in told["verdict"]] == ["leave"]
    assert not told["not_estimable"] and not told["line_refused"]


def test_the_text_for_people(run):
    code, out, err = run(comb_lines(scale=(-0.005, 0.0)))
    lines = out.splitlines()
    assert (code, err) == (0, "")
    assert lines[0].startswith("Shrink allowance: Draw parts of this filament 1.00")
    assert lines[1].startswith("  Do not touch: ") and lines[2].startswith("  scale error X: −0.")
    assert all("±" in line for line in lines[2:5])


def no_constant(text):
    raise AssertionError(f"{text} is no JSON")


@pytest.mark.parametrize("lines", [comb_lines("xy"), [HEAD, "x,outside,20,20.1"], comb_lines(wall_outset_mm=0.06)])
def test_json_has_the_agreed_keys_and_is_strict(run, lines):
    code, out, err = run(lines, "--json")
    assert (code, err) == (0, "")
    assert out.isascii()  # any code page can carry it
    told = json.loads(out, parse_constant=no_constant)
    assert list(told) == ["estimates", "not_estimable", "diagnostics", "verdict", "line_refused", "outlier_lines"]
    for name, keys in (
        ("estimates", ["name", "value", "u", "dof", "unit", "k", "U"]),
        ("not_estimable", ["name", "needs"]),
        ("diagnostics", ["name", "value", "limit", "ok", "says"]),
        ("verdict", ["setting", "action", "amount", "unit", "because", "do_not_touch"]),
    ):
        assert all(list(row) == keys for row in told[name])
    for e in told["estimates"]:
        assert e["U"] == pytest.approx(e["k"] * e["u"]) and e["u"] > 0


def test_tolerance_and_temperature_reach_the_verdict(run):
    lines = comb_lines(scale=(-0.002, 0.0))
    for tolerance, setting in (("f", "shrink_allowance"), ("1,5", "leave"), ("IT16", "leave")):
        told = json.loads(run(lines, "--json", "--tolerance", tolerance)[1])
        assert [advice["setting"] for advice in told["verdict"]] == [setting]
    warm = json.loads(run(lines, "--json", "--part-temperature", "48.57")[1])
    cold = json.loads(run(lines, "--json")[1])
    assert cold["estimates"][0]["value"] - warm["estimates"][0]["value"] == pytest.approx(0.002, rel=0.01)


# How the file may be written


def same(run, lines, as_before):
    code, out, err = run(lines, "--json")
    assert (code, err) == (0, "") and json.loads(out) == json.loads(run(as_before, "--json")[1])


def test_a_byte_order_mark_semicolons_and_decimal_commas(run, tmp_path, capsys):
    lines = comb_lines()
    other = [line.replace(",", ";").replace(".", ",") for line in lines]
    same(run, other, lines)
    file = tmp_path / "marked.csv"
    file.write_bytes("\n".join(other).encode("utf-8-sig"))
    assert analyse.main([str(file), "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == json.loads(run(lines, "--json")[1])


def test_comments_blank_lines_and_other_columns_change_nothing(run):
    lines = comb_lines()
    noted = ["# printed yesterday", "", lines[0] + ",who"]
    for line in lines[1:]:
        noted += ["  # next", line + ",A."]
    same(run, noted, lines)


def test_excluded_rows_do_not_count(run):
    lines = comb_lines()
    excluded = [lines[0] + ",excluded,reason", *(line + ",no," for line in lines[1:])]
    excluded += ["x,outside,50,31,yes,misread", "x,outside,50,,yes,not read"]
    same(run, excluded, lines)


def test_numbered_repeats_are_one_feature(run):
    lines = [HEAD + ",repeat"]
    for L in (10, 60, 120):
        lines += [f"x,tooth,{L},{L + 0.1 + off},{i}" for i, off in enumerate((0, 0.02, 0.01), start=1)]
    told = json.loads(run(lines, "--json")[1])
    scatter = next(row for row in told["diagnostics"] if row["name"] == "scatter_mm")
    assert "rest on the repeats" in scatter["says"] and {e["dof"] for e in told["estimates"]} == {6}
    named = [line + (",feature" if i == 0 else f",f{line.split(',')[2]}") for i, line in enumerate(lines)]
    assert json.loads(run(named, "--json")[1]) == told


# Faults


def test_every_fault_has_its_line(run):
    lines = [
        HEAD,
        "x,outside,20,20.1",
        "u,outside,20,20.1",
        "# a comment counts as a line",
        "x,cube,20,20.1",
        "x,outside,twenty,20.1",
        "x,outside,20",
    ]
    code, out, err = run(lines)
    assert (code, out) == (2, "")
    told = err.splitlines()
    assert [line.split(": ")[0] for line in told] == [f"readings.csv:{n}" for n in (3, 5, 6, 7)]
    assert "“cube” is not one of" in told[1] and "bore, boss" in told[1]


def test_readings_that_cannot_be_are_all_told_by_line(run):
    lines = [
        HEAD + ",excluded,reason",
        "z,outside,20,20.1,,",
        "x,outside,-20,20.1,,",
        "x,outside,20,0,,",
        "x,outside,20000,20000,,",
        "x,height,20,20,yes,wrong axis",
        "x,outside,20,0,yes,slipped",
        "x,travel,-20,-20.1,,",
    ]
    code, out, err = run(lines)
    assert (code, out) == (2, "")
    told = err.splitlines()
    assert [line.split(": ")[0] for line in told] == [f"readings.csv:{n}" for n in (2, 3, 4, 5, 6)]
    assert told[1].endswith(
        "-20 mm: a length on a part is 0.001 mm at least, only travel may be zero or negative; retype it."
    )


@pytest.mark.parametrize(
    ("lines", "line", "words"),
    [
        ([HEAD, "x,outside,20,20.1", "x,travel,20,20.1"], 3, "do not belong to one trial"),
        ([HEAD + ",feature", "x,tooth,20,20.1,a", "x,tooth,30,30.1,a"], 3, "two nominal lengths, 20 and 30 mm"),
        (
            [HEAD + ",feature,excluded,reason", "x,tooth,5,5,,yes,no", "x,tooth,20,20.1,a,,", "x,tooth,30,30.1,a,,"],
            4,
            "two nominal lengths",
        ),
        (
            [HEAD + ",lot", "x,tooth,20,20.1,grey", "x,tooth,30,30.1,", "x,tooth,40,40.1,red"],
            4,
            "names grey, red; split",
        ),
        ([HEAD + ",instrument", "x,tooth,20,20.1,a", "x,tooth,30,30.1,b"], 3, "One trial has one instrument"),
    ],
)
def test_what_does_not_belong_together(run, lines, line, words):
    code, out, err = run(lines)
    assert (code, out) == (2, "") and err.count("\n") == 1
    assert err.startswith(f"readings.csv:{line}: ") and words in err


def test_a_lot_of_excluded_rows_only_does_not_count(run):
    lines = [
        HEAD + ",lot,excluded,reason",
        *(line + ",grey,," for line in comb_lines()[1:]),
        "x,tooth,9,9,red,yes,other",
    ]
    assert run(lines)[0] == 0


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--tolerance", "rough"], "“rough” is not a tolerance class"),
        (["--tolerance", "0"], "A tolerance is above 0 mm"),
        (["--tolerance", "inf"], "A tolerance is above 0 mm"),
        (["--part-temperature", "nan"], "is no temperature at which a part is read"),
        (["--machine", "old bed"], "name it with --database"),
        (["--picture", "out.png", "--axis", "y"], "no reading along y to draw"),
        (["--picture", "no/such/folder/out.png"], "cannot be written; choose another place"),
    ],
)
def test_arguments_that_cannot_be(run, arguments, words, qapp):
    code, out, err = run(comb_lines(), *arguments)
    assert (code, out) == (2, "") and words in err and err.count("\n") == 1


def test_files_that_cannot_be(run, tmp_path, capsys):
    assert analyse.main([str(tmp_path / "nowhere.csv")]) == 2
    assert capsys.readouterr().err.startswith(f"{tmp_path / 'nowhere.csv'} is not there")
    code, out, err = run([HEAD])
    assert (code, out) == (2, "") and err.startswith("readings.csv:1: There is no row of readings")
    code, out, err = run([HEAD + ",excluded,reason", "x,outside,20,20.1,yes,all bad"])
    assert (code, out) == (2, "") and "There is no reading yet" in err


HOSTILE = {
    "every byte": bytes(range(256)) * 999,
    "zero bytes": b"\0" * 100_000,
    "a picture": b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 99,
    "no such letters": b"axis,kind,nominal_mm,measured_mm\nx,outside,\xff\xfe,10\n",
    "sixteen bits": "axis,kind,nominal_mm,measured_mm\nx,outside,10,10.1\n".encode("utf-16"),
    "formulas": b"axis,kind,nominal_mm,measured_mm\n=1+1,@x,+5,-cmd|' /C calc'!A0\n",
    "an open quote": b'axis,kind,nominal_mm,measured_mm\n"x,outside,10,' + b"9" * 300_000,
    "one long line": b"axis,kind,nominal_mm,measured_mm\n" + b"1," * 200_000,
    "out of range": b"axis,kind,nominal_mm,measured_mm\nx,outside,1e308,1e-320\nx,outside,1e999,nan\n",
    "long numbers": b"axis,kind,nominal_mm,measured_mm\nx,outside," + b"9" * 5000 + b",1\n",
    "heads only": b"axis,kind,nominal_mm,measured_mm\n" * 3,
    "the same head twice": b"axis,axis,kind,nominal_mm,measured_mm\nx,y,outside,10,10\n",
    "deep JSON": b"[" * 100_000,
    "JSON": b'{"program":"slipgauge","rows":[{"axis":"x"}]}',
    "G-code": b"G1 X1e999 Y1..2 F\nG2 I J R0\n" * 500,
    "lone returns": b"axis,kind,nominal_mm,measured_mm\rx,outside,10\r\r\r",
    "empty": b"",
}


@pytest.mark.parametrize("content", HOSTILE.values(), ids=list(HOSTILE))
@pytest.mark.parametrize("options", [(), ("--json",)])
def test_hostile_files_are_refused_in_words(tmp_path, capsys, content, options):
    file = tmp_path / "readings.csv"
    file.write_bytes(content)
    assert analyse.main([str(file), *options]) == 2
    out, err = capsys.readouterr()
    assert out == "" and 20 < len(err) < 20_000
    assert all(line.isprintable() for line in err.split("\n"))


if os.name == "posix":

    def test_what_never_ends_is_not_read(tmp_path, capsys):
        pipe, loop, zero = (tmp_path / name for name in ("pipe.csv", "loop.csv", "zero.csv"))
        os.mkfifo(pipe)
        loop.symlink_to(loop)
        zero.symlink_to("/dev/zero")
        for file in (pipe, loop, zero, tmp_path, tmp_path / "a\0b"):
            assert analyse.main([str(file)]) == 2
            assert len(capsys.readouterr().err) > 20


def test_wrong_options_are_refused_by_the_parser(run):
    with pytest.raises(SystemExit) as refused:
        run(comb_lines(), "--colour", "red")
    assert refused.value.code == 2


# Keeping


def test_a_trial_is_kept_as_entered(run, database):
    lines = [
        line + {0: ",lot,instrument,excluded,reason,mood"}.get(i, ",grey 7,caliper 1,,,")
        for i, line in enumerate(comb_lines())
    ]
    lines += ['x,outside,50,"1,97in",grey 7,caliper 1,yes,slipped,bad']
    code, out, err = run(lines, "--database", database, "--machine", "old bed", "--tolerance", "f")
    assert code == 0 and out.startswith("Leave it")
    assert err == f"Kept as trial 1 in {database}.\n"
    (trial,) = kept_in(database)
    assert (trial.state, trial.subject, trial.machine_id, trial.lot_id, trial.instrument_id) == (
        TrialState.KEPT, "sizeerror", 1, 1, 1,
    )  # fmt: skip
    assert trial.readings["raw"][-1] == "1,97in" and trial.readings["measured_mm"][-1] == pytest.approx(1.97 * 25.4)
    assert trial.readings["excluded"] == [False] * 11 + [True]
    assert (trial.readings["reason"][-1], trial.readings["note"][-1]) == ("slipped", "mood: bad")
    assert trial.readings["kind"][5] == "outside" and trial.readings["nominal_mm"][5] == 140.0
    assert (
        trial.conditions["tolerance"] == "f" and trial.note == "readings.csv" and trial.method.startswith("sizeerror")
    )
    assert [e.name for e in trial.estimates] == ["scale_x", "wall_outset", "lost_motion_x"]
    assert trial.verdict[0]["setting"] == "leave"


def test_what_the_database_knows_reaches_the_verdict(run, database):
    lines = comb_lines(ratio=(1.016, 1.0))
    assert "No drive is on record" in run(lines)[1]
    code, out, err = run(lines, "--database", database, "--machine", "old bed", "--json")
    assert code == 0 and err.startswith("Kept as trial 1")
    told = json.loads(out)
    assert "It would fit: a belt of 2.032 mm" in told["verdict"][0]["because"]
    with_caliper = [line + (",instrument" if i == 0 else ",caliper 1") for i, line in enumerate(comb_lines())]
    told = json.loads(run(with_caliper, "--database", database, "--json")[1])
    assert "instrument" not in {row["name"] for row in told["diagnostics"]}


@pytest.mark.parametrize(
    ("column", "arguments", "words"),
    [
        ("", ["--machine", "new bed"], "There is no machine “new bed” in the database; it knows old bed."),
        ("lot", [], "There is no lot “odd” in the database; it knows grey 7."),
        ("instrument", [], "There is no instrument “odd” in the database; it knows caliper 1."),
        ("", ["--tolerance", "rough"], "is not a tolerance class"),
        ("", ["--picture", "no/such/folder/out.png"], "cannot be written"),
    ],
)
def test_nothing_is_half_kept(run, database, column, arguments, words, qapp):
    lines = comb_lines()
    if column:
        lines = [line + ("," + column if i == 0 else ",odd") for i, line in enumerate(lines)]
    code, out, err = run(lines, "--database", database, *arguments)
    assert (code, out) == (2, "") and words in err and err.count("\n") == 1
    assert kept_in(database) == []


def test_names_looked_up_in_an_empty_database(run, tmp_path):
    open_store(tmp_path / "new.db").close()
    code, _, err = run(comb_lines(), "--database", tmp_path / "new.db", "--machine", "any")
    assert code == 2 and "it knows none" in err


def test_a_database_that_cannot_be_opened(run, tmp_path):
    broken = tmp_path / "broken.db"
    broken.write_bytes(b"this is no database, but long enough to be taken for one " * 40)
    code, out, err = run(comb_lines(), "--database", broken)
    assert (code, out) == (3, "") and err.count("\n") == 1 and "broken.db" in err
    assert broken.read_bytes().startswith(b"this is no database")


# As a process of its own


def process(*arguments, **beside):
    bare = {
        key: value for key, value in os.environ.items() if key not in ("QT_QPA_PLATFORM", "DISPLAY", "WAYLAND_DISPLAY")
    }
    command = [sys.executable, "-m", "app", "analyse", *map(str, arguments)]
    env = bare | beside.pop("env", {})
    return subprocess.run(command, check=False, cwd=ROOT, env=env, capture_output=True, timeout=100, **beside)


@pytest.fixture
def file(tmp_path):
    path = tmp_path / "readings.csv"
    path.write_text("\n".join(comb_lines("xy", wall_outset_mm=0.06)), encoding="utf-8")
    return path


def test_a_picture_is_drawn_without_a_window_system(file, tmp_path):
    picture = tmp_path / "out.png"
    done = process(file, "--picture", picture, "--axis", "y", "--json")
    assert (done.returncode, done.stderr) == (0, b"")
    assert json.loads(done.stdout)["verdict"][0]["setting"] == "check_flow"
    from PySide6.QtGui import QImage

    image = QImage(str(picture))
    assert image.width() >= 1000 and image.height() >= 600
    seen = {image.pixel(x, y) for x in range(0, image.width(), 4) for y in range(0, image.height(), 4)}
    assert len(seen) > 20  # points, lines and bands in their colours, text


def test_a_reader_that_has_seen_enough_is_no_error(file, database):
    command = [sys.executable, "-m", "app", "analyse", str(file), "--database", str(database)]
    running = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    running.stdout.close()
    said = running.stderr.read()
    running.stderr.close()
    assert (running.wait(60), said) == (0, b"")
    assert len(kept_in(database)) == 1  # kept before it was told


def test_a_code_page_without_a_typographic_minus_is_no_error(file):
    for arguments in ([], ["--json"]):
        done = process(file, *arguments, env={"PYTHONIOENCODING": "cp1252"})
        assert (done.returncode, done.stderr) == (0, b"")
        assert done.stdout.decode("cp1252")


def test_the_verdict_comes_before_the_word_that_it_is_kept(file, database, tmp_path):
    both = tmp_path / "told.txt"
    with both.open("wb") as out:
        command = [sys.executable, "-m", "app", "analyse", str(file), "--database", str(database)]
        assert subprocess.run(command, check=False, cwd=ROOT, stdout=out, stderr=out, timeout=100).returncode == 0
    lines = both.read_text(encoding="utf-8").splitlines()
    assert lines[0].startswith("Check the flow: ") and lines[-1].startswith("Kept as trial 1 in ")


def test_the_readings_of_the_demo_give_back_what_was_planted(capsys):
    demo = Path(__file__).parents[2] / "resources" / "demo" / "comb_x.csv"
    assert analyse.main([str(demo), "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    found = {estimate["name"]: estimate for estimate in answer["estimates"]}
    for name, planted in (("scale_x", -0.0034), ("wall_outset", 0.04), ("lost_motion_x", 0.01)):
        assert abs(found[name]["value"] - planted) <= found[name]["U"]
    assert [said["setting"] for said in answer["verdict"]] == ["check_flow", "contour_offset", "shrink_allowance"]


def test_an_outlier_is_named_with_its_line(run):
    lines = comb_lines()
    words = lines[4].split(",")
    lines[4] = ",".join([*words[:3], f"{float(words[3]) + 0.6:.2f}"])
    code, out, _ = run(lines)
    assert code == 0
    assert "Line 5 stands out from the others" in out
    _, out, _ = run(lines, "--json")
    assert json.loads(out)["outlier_lines"] == [5]


def test_names_are_not_looked_up_in_a_database_that_is_not_there(run, tmp_path):
    where = tmp_path / "new.db"
    code, _, err = run(comb_lines(), "--machine", "old bed", "--database", where)
    assert code == 2
    assert "There is no database" in err
    assert not where.exists()

"""The benchmarks run: every subject in small, its JSON whole, its peers held to the same numbers. No time is judged."""

import json
import math

import pytest

from tests.benchmarks.__main__ import SUBJECTS, main
from tests.benchmarks.floors import FLOORS
from tests.benchmarks.sidebyside import Contest, DifferentAnswersError, Way, relative, side_by_side, spread

ONLY_WHOLE = {("coldstart", "drive"), ("keystroke", "of_200"), ("piece", "stl")}  # contests that --quick leaves out
ALONE = {("board", "walk"), ("board", "complete"), ("board", "wait")}  # no peer does the job


@pytest.mark.parametrize("subject", SUBJECTS)
def test_a_subject_runs_in_small_and_tells_every_number(subject, qapp, tmp_path, capsys):
    path = tmp_path / "told.json"
    assert main(["--quick", "--only", subject, "--json", str(path)]) == 0
    told = json.loads(path.read_text(encoding="utf-8"))
    assert told["versions"]["numpy"] and told["processor"] and told["date"] and told["quick"] is True
    shown = capsys.readouterr().out
    for contest in told["contests"]:
        ways = [contest["ours"], *(peer["name"] for peer in contest["peers"])]
        assert contest["subject"] == subject and list(contest["seconds"]) == ways
        assert contest["job"] in shown and all(way in shown for way in ways)
        assert all(value > 0.0 for values in contest["seconds"].values() for value in values)
        for peer in contest["peers"]:
            ratio = contest["median_s"][contest["ours"]] / contest["median_s"][peer["name"]]
            assert peer["ratio"] == pytest.approx(ratio) and peer["at_most"] > 0.0
            assert peer["apart"] is None or peer["apart"] <= contest["tolerance"]["largest"]
    run = {(subject, contest["key"]) for contest in told["contests"]}
    assert run - ALONE == {key for key in FLOORS if key[0] == subject} - ONLY_WHOLE


def test_json_alone_goes_to_the_standard_output(capsys):
    assert main(["--quick", "--only", "onefit", "--json", "-"]) == 0
    assert [contest["key"] for contest in json.loads(capsys.readouterr().out)["contests"]] == ["line", "print"]


def test_the_subjects_are_listed(capsys):
    assert main(["--list"]) == 0
    assert [line.split()[0] for line in capsys.readouterr().out.splitlines()] == list(SUBJECTS)


def test_no_ratio_is_told_of_different_numbers():
    wrong = Way("wrong", lambda: [1.0, 2.1], relative)
    with pytest.raises(DifferentAnswersError, match="sum: wrong lies 0.048 of the largest from ours, 1e-09"):
        side_by_side(Contest("sum", "sum", Way("ours", lambda: [1.0, 2.0]), (wrong,), (1e-9, "of the largest")), 3)


def test_an_answer_that_is_no_number_is_not_the_same():
    wrong = Way("wrong", lambda: [math.nan], relative)
    with pytest.raises(DifferentAnswersError):
        side_by_side(Contest("sum", "sum", Way("ours", lambda: [1.0]), (wrong,), (1e-9, "of the largest")), 3)


def test_the_ways_take_turns_and_each_round_begins_with_another():
    order = []
    ways = [Way(name, lambda name=name: order.append(name) or 1.0, tells=True) for name in "abc"]
    told = side_by_side(Contest("turns", "turns", ways[0], tuple(ways[1:])), 3)
    assert "".join(order) == "abc" + "abc" + "bca" + "cab"
    assert told.ratio("b").median == 1.0 and told.seconds == {name: [1.0] * 3 for name in "abc"}


def test_the_spread_is_median_and_quartiles():
    found = spread([5.0, 1.0, 2.0, 3.0, 4.0])
    assert (found.low, found.median, found.high) == (2.0, 3.0, 4.0)

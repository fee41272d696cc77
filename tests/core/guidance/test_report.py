"""The judgement as text and as JSON."""

import json
import math

import numpy as np
import pytest

from core.guidance.report import as_json, remark, text_lines, untouched
from core.guidance.sizetrial import SizeReadings, judge_size_trial
from core.quantity import Estimate
from tests.core.part_size.printouts import Faults, Print


def judged(only=None, **faults):
    piece, rng = Print("x", **({"only": only} if only else {})), np.random.default_rng(1)
    sizes = piece.size_mm(Faults(**faults)) + 0.008 * rng.standard_normal(piece.nominal_mm.size)
    return judge_size_trial(SizeReadings(piece.nominal_mm, sizes, piece.kind, piece.axis, piece.feature))


@pytest.mark.parametrize(
    ("estimate", "words"),
    [
        (
            Estimate("scale_x", -0.0025, 0.0001, math.inf, "1"),
            "−0.250 ± 0.020 mm per 100 mm, k 1.96, degrees of freedom many",
        ),
        (
            Estimate("squareness_xy", 0.00024, 0.00005, math.inf, "rad"),
            "+0.0240 ± 0.0098 mm per 100 mm, k 1.96, degrees of freedom many",
        ),
        (Estimate("wall_outset", 0.04, 0.002, 8, "mm"), "k 2.31, degrees of freedom 8"),
        (Estimate("flow_ratio", 0.94, 0.005, 8, "1"), "k 2.31, degrees of freedom 8"),
        (Estimate("drying_loss", 0.004, 0.001, 8, "1"), "k 2.31, degrees of freedom 8"),
        (Estimate("scale", 0.0016, 0.0001, 8, "1"), "k 2.31, degrees of freedom 8"),  # of a balance too
    ],
)
def test_what_an_estimate_means(estimate, words):
    assert remark(estimate) == words


def test_the_text_has_verdict_estimates_with_U_and_unmet_checks_in_this_order():
    lines = text_lines(judged(scale=(-0.005, 0)))
    assert lines[0].startswith("Shrink allowance: Draw parts of this filament 1.005")
    assert lines[1] == "  Do not touch: Steps per millimetre, flow factor."
    assert lines[2].startswith("  scale error X: −0.4") and " ± " in lines[2] and "k 2.31" in lines[2]
    assert [line.partition(":")[0] for line in lines[3:]] == [
        "  wall outset per side", "  lost motion X", "  Check", "  Check",
    ]  # fmt: skip


def test_the_text_names_what_is_not_told():
    lines = text_lines(judged(only=("outside", "tooth")))
    assert any(line.startswith("  lost motion X: ") for line in lines)
    alone = text_lines(judge_size_trial(SizeReadings([20.0], [20.1], ["outside"], ["x"], [""])))
    assert "  scale error X: not told; measure one length of about 120 mm along x (outside)" in alone


def test_a_proved_finding_speaks_louder_than_an_open_one():
    proved = judged(wall_outset_mm=0.06, only=("tooth", "notch"))
    assert [str(a.setting) for a in proved.advice] == ["check_flow", "contour_offset", "undecided"]
    assert untouched(proved) == ["Steps per millimetre: a constant error is not a scale."]
    cube = judge_size_trial(SizeReadings([20.0], [20.1], ["outside"], ["x"], [""]))
    assert untouched(cube) == ["Everything: nothing is proved yet."]


KEYS = {
    "estimates": {"name", "value", "u", "dof", "unit", "k", "U"},
    "not_estimable": {"name", "needs"},
    "diagnostics": {"name", "value", "limit", "ok", "says"},
    "verdict": {"setting", "action", "amount", "unit", "because", "do_not_touch"},
}


@pytest.mark.parametrize(
    "judgement",
    [
        judged(wall_outset_mm=0.06),
        judged(only=("outside", "closed_hole")),
        judge_size_trial(SizeReadings([20.0], [20.1], ["outside"], ["x"], [""])),
    ],
)
def test_json_is_strict_and_has_these_keys(judgement):
    told = as_json(judgement)
    text = json.dumps(told, allow_nan=False)
    assert json.loads(text) == told
    assert set(told) == {*KEYS, "line_refused"} and told["line_refused"] is False
    for name, keys in KEYS.items():
        assert all(set(row) == keys for row in told[name])
    assert all(type(row["ok"]) is bool for row in told["diagnostics"])
    assert all(type(text) is str for row in told["verdict"] for text in (row["setting"], row["because"], row["action"]))


def test_what_has_no_number_is_none_in_json():
    told = as_json(judge_size_trial(SizeReadings([20.0], [20.1], ["outside"], ["x"], [""])))
    scatter = next(row for row in told["diagnostics"] if row["name"] == "scatter_mm")
    assert (scatter["value"], scatter["limit"]) == (None, None)
    assert told["verdict"][0]["amount"] is None

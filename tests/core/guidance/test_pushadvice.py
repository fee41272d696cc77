"""The verdict on a push: what 5 N move against the limits of a reversal; both common practice, no source."""

import pytest

from core.guidance.chartevents import marked_events
from core.guidance.names import is_magnitude, parameter_words
from core.guidance.reversaladvice import ReversalReadings, Way, judge_reversal
from core.guidance.verdict import Setting
from core.machine_geometry.stiffness import Push

NONE = float("nan")


def judged(along, sideways=None, axis="x", resolution_mm=0.001):
    """Five pushes of 10 N a side, in mm per newton."""
    place, hold, reading = [], [], []
    for side, mm_per_n in (("along", along), ("sideways", sideways)):
        if mm_per_n is not None:
            place += [side] * 10
            hold += ["rest", "pushed"] * 5
            reading += [0.5, 0.5 + 10 * mm_per_n] * 5
    readings = ReversalReadings(axis, Way.PUSH, resolution_mm, place, hold, [NONE] * len(place), reading, Push(10, 0.5))
    return judge_reversal(readings)


@pytest.mark.parametrize(
    ("along", "axis", "setting", "action"),
    [
        (0.002, "x", Setting.LEAVE, "Change nothing."),
        (0.007, "x", Setting.LEAVE, "Change nothing now; push again at the next upkeep."),
        (0.010, "x", Setting.UNDECIDED,
         "Push harder, up to 20 N, read more pairs, or take a dial of finer graduation."),
        (0.020, "y", Setting.MEND_MECHANICS,
         "Tighten the belt of Y; look for what bends: bracket, idler, arm. Then push again."),
        (0.020, "z", Setting.MEND_MECHANICS, "Look at nut, coupling and the arm that carries Z. Then push again."),
    ],
)  # fmt: skip
def test_a_push_along_tells_belt_and_frame(along, axis, setting, action):
    (advice,) = judged(along, axis=axis).advice
    assert (advice.setting, str(advice.action)) == (setting, action)
    assert advice.do_not_touch == "Steps per millimetre, flow factor, contour offset: none of them makes an axis stiff."


def test_a_push_sideways_tells_the_slide():
    soft, stiff = judged(0.002, 0.02).advice  # what is to be mended comes first
    assert (stiff.setting, soft.setting) == (Setting.LEAVE, Setting.MEND_MECHANICS)
    assert soft.action == "Take the play out of the slide of X: rollers, bearings, rail screws. Then push again."
    assert soft.because.startswith("Sideways to X it gives way by 0.0200 ± 0.0011 mm/N: 5 N move it by 0.1000 ± 0.0057")
    assert soft.because.endswith("Proved above 0.05 mm: every drag bends it.")
    assert (soft.amount, soft.unit) == (pytest.approx(0.1), "mm")
    assert stiff.because.endswith("Stiff.") and stiff.amount is None


def test_what_is_kept_has_its_words():
    found = judged(0.002, 0.002).estimates()
    assert [str(parameter_words(e.name)) for e in found] == ["compliance X", "side compliance X"]
    assert all(is_magnitude(e.name) for e in found) and judged(0.002).method == "reversal 1"
    assert marked_events([], "compliance_x") == ()

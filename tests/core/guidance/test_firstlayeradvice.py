"""Each planted cause is named and no other; each answer says what to do, how well it is known, and what to leave."""

import math

import numpy as np
import pytest

from core.guidance.firstlayeradvice import BesidePads, FlowBeside, PadReadings, judge_first_layer
from core.guidance.names import is_magnitude, parameter_words
from core.guidance.verdict import Setting, setting_words
from core.machine_geometry.firstlayer import Printed
from core.measuring.gauge import GaugeKind
from core.quantity import Estimate
from core.records.rows import Instrument

MICROMETER = Instrument("Micrometer 1", "micrometer", 0.001, 0.002)
X, Y = (110.0, 40.0, 180.0, 180.0, 40.0), (110.0, 40.0, 40.0, 180.0, 180.0)
FLAT = Estimate("bed_flatness", 0.03, 0.008, 8.0, "mm")
NOISE = np.array([0.003, -0.004, 0.002, -0.002, 0.001])


def factor(value, in_force=0.96, u=0.004):
    return FlowBeside(Estimate("flow_ratio", value, u, 12.0, "1"), in_force)


RIGHT = BesidePads(FLAT, factor(0.96), (3, 4))


def pads(low_mm=0.0, tilt_mm=0.0, n=5, places=True, noise=NOISE, **changes):
    """Pads of a machine whose nozzle stands too low, over a bed that rises to the right."""
    t = 0.2 - low_mm - tilt_mm * (np.array(X) - 110.0) / 140.0 + noise
    at = {"x_mm": X[:n], "y_mm": Y[:n]} if places else {}
    return PadReadings(**{"thickness_mm": t[:n].tolist(), "printed": Printed(0.2, -0.15, 0.4), **at, **changes})


@pytest.mark.parametrize(
    ("readings", "beside", "setting", "words"),
    [
        (pads(), RIGHT, Setting.LEAVE, "Change nothing."),
        (pads(0.05), RIGHT, Setting.HEIGHT_OFFSET, "from −0.15 to −0.1000 ± 0.0051 mm, which raises the nozzle by"),
        (pads(-0.05), RIGHT, Setting.HEIGHT_OFFSET, "from −0.15 to −0.2000 ± 0.0051 mm, which lowers the nozzle by"),
        (pads(0.05, 0.1), RIGHT, Setting.LEVEL_BED, "Bed plane first"),
        (pads(0.05), BesidePads(FLAT, factor(0.96, 1.0)), Setting.CHECK_FLOW, "from 1 to 0.9600 first"),
        (pads(0.05, warm=True), RIGHT, Setting.UNDECIDED, "Let the pads cool"),
        (pads(0.05, inside_mm=1.0), RIGHT, Setting.UNDECIDED, "3 mm or more inside"),
        (pads(0.03, noise=12 * NOISE), RIGHT, Setting.UNDECIDED, "Keep the height offset of −0.15 mm and read more"),
    ],
)
def test_the_planted_cause_is_named_and_no_other(readings, beside, setting, words):
    found = judge_first_layer(readings, MICROMETER, beside)
    (advice,) = found.advice
    assert advice.setting is setting and words in advice.action
    assert (found.new_offset_mm is not None) == (setting is Setting.HEIGHT_OFFSET)
    assert (advice.amount is not None) == (setting is Setting.HEIGHT_OFFSET)
    assert "Z steps per millimetre" in advice.do_not_touch
    assert found.method == "firstlayer 1" and found.used == beside.used


def test_a_change_says_what_to_expect_and_which_way_the_sign_goes():
    (advice,) = judge_first_layer(pads(0.05), MICROMETER, RIGHT).advice
    assert "expect 0.2 ± 0.02 mm" in advice.action
    assert "5 places: −0.0500 ± 0.0051 mm against the 0.2 mm commanded" in advice.because
    assert "A larger offset holds the nozzle farther" in advice.because
    assert "no more than the flatness of the bed makes" in advice.because
    assert judge_first_layer(pads(0.05), MICROMETER, RIGHT).new_offset_mm == pytest.approx(-0.1)


def test_good_without_proof_says_so():
    (wide,) = judge_first_layer(pads(0.012, noise=3 * NOISE), MICROMETER, RIGHT).advice
    (near,) = judge_first_layer(pads(), MICROMETER, RIGHT).advice
    assert wide.setting is Setting.LEAVE and "The interval reaches beyond" in wide.because
    assert "The interval reaches beyond" not in near.because


def test_a_flow_within_its_uncertainty_does_not_stop_the_pads():
    for flow in (factor(0.96, 0.97), factor(0.96, 1.0, u=0.05)):
        assert judge_first_layer(pads(0.05), MICROMETER, BesidePads(FLAT, flow)).advice[0].setting is not (
            Setting.CHECK_FLOW
        )
    assert factor(0.96, 1.0).off.value == pytest.approx(1.0 / 0.96 - 1.0)
    assert factor(0.96, 1.0).off.u == pytest.approx(0.004 / 0.96**2)


def minds(readings, beside=RIGHT, instrument=MICROMETER):
    return " ".join(str(says) for says in judge_first_layer(readings, instrument, beside).mind)


def test_what_is_in_order_is_not_minded():
    assert minds(pads(0.05)) == ""


@pytest.mark.parametrize(
    ("readings", "beside", "instrument", "words"),
    [
        (pads(), RIGHT, None, "A usual micrometer is taken"),
        (pads(gauge=GaugeKind.CALIPER), RIGHT, MICROMETER, "The jaws of a caliper tilt on a thin pad"),
        (pads(), BesidePads(FLAT), MICROMETER, "taken to be right within 5 %"),
        (pads(n=4), RIGHT, MICROMETER, "Only 4 places"),
        (pads(), BesidePads(None, RIGHT.flow), MICROMETER, "page Bed plane tells"),
        (pads(noise=15 * NOISE), RIGHT, MICROMETER, "more than the flatness of the bed explains"),
        (pads(places=False), RIGHT, MICROMETER, "type X and Y of four places"),
        (pads(tilt_mm=0.03), RIGHT, MICROMETER, "a tilt too small to matter"),
    ],
)
def test_what_is_to_be_minded_is_said(readings, beside, instrument, words):
    assert words in minds(readings, beside, instrument)


def test_an_unknown_flow_widens_the_interval():
    known = judge_first_layer(pads(), MICROMETER, RIGHT).pads.error
    unknown = judge_first_layer(pads(), MICROMETER).pads.error
    assert unknown.u**2 - known.u**2 == pytest.approx(0.2**2 * (0.05**2 / 3 - (0.004 / 0.96) ** 2))


def test_every_estimate_has_its_words():
    found = judge_first_layer(pads(), MICROMETER, RIGHT)
    assert all(str(parameter_words(e.name)) and math.isfinite(e.U) for e in found.estimates())
    assert not is_magnitude("height_offset") and is_magnitude("first_layer_fall")
    assert str(setting_words(Setting.HEIGHT_OFFSET)) == "Height offset"

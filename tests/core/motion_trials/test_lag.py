"""Pressure lag: the planted lag of a first-order nozzle lies in the interval."""

import numpy as np
import pytest

from core.errors import InputError
from core.measuring.ladder import Answer
from core.motion_trials.lag import fit_lag, width_scatter_mm2

STEPS = np.linspace(0.0, 0.1, 10)


def widths(true_s, rng, sd=0.008, gain=4.0):
    """Widths of lines at 25, 70, 25 mm/s: thin, then thick, by the lead still missing."""
    off = gain * (true_s - STEPS)
    mean = np.column_stack([0.45 - off, np.full(STEPS.size, 0.45), 0.45 + off])
    return mean + rng.normal(0, sd, mean.shape)


def test_the_planted_lag_is_found():
    rng = np.random.default_rng(8)
    hits = 0
    for _ in range(100):
        true = rng.uniform(0.03, 0.07)
        found = fit_lag(STEPS, widths(true, rng))
        assert found.answer is Answer.FOUND
        hits += found.low <= true <= found.high
    assert hits >= 88  # of 100; 2000 runs gave 94 %


def test_a_lag_beyond_the_last_step_asks_for_more_steps():
    assert fit_lag(STEPS, widths(0.15, np.random.default_rng(1), gain=2.0)).answer is Answer.EXTEND_HIGH


def test_scatter_of_widths():
    assert width_scatter_mm2([[0.4, 0.5, 0.6], [0.5, 0.5, 0.5]]) == pytest.approx([0.02, 0.0])


@pytest.mark.parametrize("bad", [[0.4], [0.4, 0.5], [0.4, 0.5, -1], [0.4, 0.5, float("nan")]])
def test_refused(bad):
    with pytest.raises(InputError, match="Row 2") as error:
        width_scatter_mm2([[0.4, 0.5, 0.6], bad])
    assert error.value.field == "widths_mm" and error.value.row == 1

"""Kept size trials of simulated prints."""

import numpy as np

from core.records.rows import Trial
from tests.core.guidance.test_predicted import size_trial


def keep_printed(store, faults, seed=1):
    """Keep the size trial of a part printed with these faults, on the first machine, of the first lot."""
    trial = size_trial(None, faults, np.random.default_rng(seed), begun=None)
    return store.keep(Trial("sizeerror", 1, 1, readings=trial.readings, conditions=trial.conditions))

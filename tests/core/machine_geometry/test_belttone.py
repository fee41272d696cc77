"""Tension from the tone of a belt: against an independent solution of the string, and its refusals."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.machine_geometry.belttone import belt_tension, tones_alike


def lowest_tone_hz(tension_n, mass_kg_m, span_m, elements=400):
    """The lowest eigenfrequency of a stretched string cut into elements: no formula of the string in it."""
    h = span_m / elements
    stiffness = tension_n / h * (2 * np.eye(elements - 1) - np.eye(elements - 1, k=1) - np.eye(elements - 1, k=-1))
    return math.sqrt(np.linalg.eigvalsh(stiffness / (mass_kg_m * h))[0]) / (2 * math.pi)


@pytest.mark.parametrize(
    ("tension", "mass_g_m", "span_mm"), [(30.0, 8.4, 150.0), (12.0, 8.4, 300.0), (60.0, 14.0, 200.0)]
)
def test_the_tension_is_that_of_a_string_with_this_tone(tension, mass_g_m, span_mm):
    tone = lowest_tone_hz(tension, mass_g_m / 1000, span_mm / 1000)
    assert belt_tension(tone, span_mm, mass_g_m).value == pytest.approx(tension, rel=1e-4)


def test_its_uncertainty_is_that_of_the_tone_the_span_and_the_mass():
    rng = np.random.default_rng(1)
    drawn = 4 * (8.4e-3 * (1 + 0.05 * rng.standard_normal(200_000)))
    drawn *= (0.15 + 0.001 * rng.standard_normal(200_000)) ** 2 * (200 + 2 * rng.standard_normal(200_000)) ** 2
    found = belt_tension(200.0, 150.0, u_tone_hz=2.0)
    assert (found.name, found.unit, found.dof) == ("belt_tension", "N", math.inf)
    assert found.u == pytest.approx(drawn.std(), rel=0.02)


@pytest.mark.parametrize(
    ("arguments", "field", "words"),
    [
        ((200.0, 0.0), "span_mm", "Span and mass of a belt are above zero"),
        ((200.0, math.nan), "span_mm", "above zero"),
        ((200.0, 150.0, -1.0), "mass_g_m", "above zero"),
        ((5.0, 150.0), "tone_hz", "5 Hz is no tone of a belt, which lies between 10 and 1000 Hz"),
        ((math.nan, 150.0), "tone_hz", "listen again"),
    ],
)
def test_what_is_no_belt_is_refused(arguments, field, words):
    with pytest.raises(InputError, match=words) as caught:
        belt_tension(*arguments)
    assert caught.value.field == field


def test_two_belts_sound_alike_within_a_twentieth():
    assert tones_alike(100.0, 105.0)
    assert tones_alike(105.0, 100.0)
    assert not tones_alike(100.0, 105.1)

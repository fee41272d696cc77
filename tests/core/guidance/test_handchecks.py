"""Checks by hand: in order, or a fault to be written down."""

import pytest

from core.errors import InputError
from core.guidance.handchecks import findings_of, tension_words, tensions_of

TONES = {"tone_x_hz": 100.0, "tone_y_hz": 103.0, "span_mm": 150.0, "mass_g_m": 8.4}


def test_what_is_in_order_is_kept_with_its_numbers():
    found = findings_of(["slides", "belt_tone"], {"slides", "belt_tone"}, TONES)
    tension = found.pop("tension_x")
    assert found.pop("tension_y")["value"] > tension["value"]
    assert (tension["unit"], round(tension["value"], 2), round(tension["U"], 2)) == ("N", 7.56, 0.82)
    assert found == {"items": ["slides", "belt_tone"], **TONES}


def test_a_belt_may_be_judged_by_hand_alone():
    assert findings_of(["belt_tone"], {"belt_tone"}, {"mass_g_m": 8.4}) == {"items": ["belt_tone"]}
    one = findings_of(["belt_tone"], {"belt_tone"}, {"tone_x_hz": 90.0, "mass_g_m": 8.4})
    assert one == {"items": ["belt_tone"], "tone_x_hz": 90.0}


def test_the_travel_on_a_rule_is_kept():
    found = findings_of(["hundred_mm"], {"hundred_mm"}, {"read_mm": 100.5})
    assert found == {"items": ["hundred_mm"], "commanded_mm": 100.0, "read_mm": 100.5}
    assert findings_of([], set(), {}) == {}


@pytest.mark.parametrize(
    ("items", "ticked", "typed", "field", "words"),
    [
        (["slides", "fans"], {"slides"}, {}, "items", "Not ticked: Fans run and are clean. Look at it too"),
        (["belt_tone"], {"belt_tone"}, {**TONES, "tone_y_hz": 106.0}, "tone_y_hz", "differ by more than 5 %"),
        (["belt_tone"], {"belt_tone"}, {**TONES, "tone_x_hz": 1.0, "tone_y_hz": 1.0}, "tone_hz", "no tone of a belt"),
        (["hundred_mm"], {"hundred_mm"}, {}, "read_mm", "type what the rule reads"),
        (["hundred_mm"], {"hundred_mm"}, {"read_mm": 99.4}, "read_mm", "a wrong part, not a setting"),
    ],
)
def test_what_is_not_in_order_is_a_fault(items, ticked, typed, field, words):
    with pytest.raises(InputError, match=words) as caught:
        findings_of(items, ticked, typed)
    assert caught.value.field == field


def test_the_tension_is_said_with_its_uncertainty():
    assert "7.56 ± 0.82 N, Y 8.02 ± 0.87 N" in tension_words(tensions_of(TONES))
    assert "Pluck the free span" in tension_words(tensions_of({"tone_x_hz": 90.0}))
    assert list(tensions_of({"tone_y_hz": 90.0, "span_mm": 150.0, "mass_g_m": 8.4})) == ["y"]

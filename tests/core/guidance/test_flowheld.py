"""What a flow trial says to a size trial: where it holds, and that nobody knows whether the piece was printed so."""

from core.guidance.flowheld import flow_held_words

HELD = {
    "width_mm": 0.45,
    "height_mm": 0.2,
    "bead_model": "obround",
    "nozzle_mm": 0.4,
    "temperature_c": 215.0,
    "rate_mm3_s": 4.0,
    "in_force_ratio": 1.0,
    "hot_end_limit_c": 240.0,
}


def test_temperature_rate_and_bore_are_told():
    """± 5 K: common practice, no source."""
    says = flow_held_words(HELD)
    assert "within 5 K of 215 °C, to 4 mm³/s, bore 0.4 mm" in says
    assert "does not know yours" in says


def test_a_trial_without_its_conditions_says_so():
    assert flow_held_words({}) == "does not say for which nozzle temperature"

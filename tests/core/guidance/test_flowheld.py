"""What a flow trial says to a size trial: where it holds, and whether the piece was printed so, where it is known."""

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


def test_the_temperature_of_the_piece_is_held_against_it():
    assert "this piece was printed at 220 °C" in flow_held_words(HELD, 220.0)
    assert flow_held_words(HELD, 221.0) == (
        "was found at 215 °C, this piece printed at 221 °C: it does not hold beyond 5 K, measure the flow again"
    )


def test_a_trial_without_its_conditions_says_so():
    assert flow_held_words({}, 215.0) == flow_held_words({}) == "does not say for which nozzle temperature"

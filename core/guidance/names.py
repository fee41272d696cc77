"""Names of estimates for people. An estimate has one name in code, store and chart; here are its words."""

from __future__ import annotations

from core.quantity import Estimate, size_text, value_text
from core.words import Words, tr

_MAGNITUDES = {
    "diameter",
    "area_ratio",
    "drying_loss",
    "ovality",
    "diameter_sd",
    "mass_per_length",
    "path_filament",
    "density",
    "stock",
    "feed_ratio",
    "feed_steps_mm",
    "loaded_share",
    "slip_rate",
    "highest_speed",
    "sd_hand",
    "probe_sd",
    "bed_flatness",
    "bed_flatness_cold",
    "bed_soak",
    "first_layer_spread",
    "first_layer_fall",
}
_SIZES = (
    "frequency_", "damping_", "wavelength_", "acceleration_limit_", "peak_", "ladder_", "trial_", "layer_",
    "flow_ceiling", "flow_ratio", "reversal_", "mean_deviation_", "systematic_", "repeatability_", "accuracy_", "play_",
    "spread_", "promise_", "prediction_", "compliance_", "side_compliance_",
)  # fmt: skip
AXES_AND_PLANES = ("x", "y", "z", "xy", "xz", "yz")


def parameter_words(name: str) -> Words:
    """Return the name of an estimate for people.

    Raises:
        KeyError: no estimate of this version has that name.
    """
    stem, _, axis = name.rpartition("_")
    if axis in AXES_AND_PLANES and stem in (along := _along(axis.upper())):
        return along[stem]
    if stem == "flow_ceiling":
        return tr("flow ceiling at {temperature} °C", temperature=axis.removesuffix("c"))
    return _WORDS[name]


def name_words(name: str) -> Words:
    """Return the name of a kept estimate for people; a name of another version of this program stays as it is."""
    try:
        return parameter_words(name)
    except KeyError:
        return tr("{name}", name=name)


def estimate_text(estimate: Estimate) -> str:
    """Return value ± U with its unit, without a plus where it is a size."""
    return size_text(estimate) if is_magnitude(estimate.name) else value_text(estimate)


def is_magnitude(name: str) -> bool:
    """Whether an estimate is a size, written without a plus, and not a deviation from zero."""
    return name in _MAGNITUDES or name.startswith(_SIZES)


def _along(axis: str) -> dict[str, Words]:
    return {
        "scale": tr("scale error {axis}", axis=axis),
        "lost_motion": tr("lost motion {axis}", axis=axis),
        "constant": tr("constant of outside lengths {axis}", axis=axis),
        "hole_constant": tr("constant of closed windows {axis}", axis=axis),
        "squash": tr("first-layer squash"),
        "origin": tr("origin {axis}", axis=axis),
        "reversal": tr("reversal error {axis}", axis=axis),
        "mean_reversal": tr("mean reversal {axis}", axis=axis),
        "mean_deviation": tr("deviation M {axis}", axis=axis),
        "systematic": tr("deviation E {axis}", axis=axis),
        "systematic_up": tr("E {axis} from −", axis=axis),
        "systematic_down": tr("E {axis} from +", axis=axis),
        "repeatability": tr("repeatability R {axis}", axis=axis),
        "repeatability_up": tr("R {axis} from −", axis=axis),
        "repeatability_down": tr("R {axis} from +", axis=axis),
        "accuracy": tr("accuracy A {axis}", axis=axis),
        "accuracy_up": tr("A {axis} from −", axis=axis),
        "accuracy_down": tr("A {axis} from +", axis=axis),
        "play": tr("play {axis}", axis=axis),
        "windup": tr("wind-up {axis}", axis=axis),
        "compliance": tr("compliance {axis}", axis=axis),
        "side_compliance": tr("side compliance {axis}", axis=axis),
        "squareness": tr("squareness {axis}", axis=axis),
        "bed_tilt": tr("bed tilt along {axis}", axis=axis),
        "frequency": tr("ringing {axis}", axis=axis),
        "damping": tr("damping {axis}", axis=axis),
        "wavelength": tr("mark repeats along {axis}", axis=axis),
        "acceleration_limit": tr("acceleration by ripple {axis}", axis=axis),
        **{f"peak_{n}": tr("peak {number} {axis}", number=n, axis=axis) for n in range(1, 7)},
        **{f"peak_damping_{n}": tr("damping of peak {number} {axis}", number=n, axis=axis) for n in range(1, 7)},
        "machine_scale": tr("machine's share {axis}", axis=axis),
        "shrinkage": tr("shrinkage {axis}", axis=axis),
    }


_WORDS = {
    "bias_outside": tr("mean error, outside"),
    "bias_inside": tr("mean error, inside"),
    "bias_hole": tr("mean error, bores"),
    "bias_height": tr("mean error, heights"),
    "spread_outside": tr("spread, outside"),
    "spread_inside": tr("spread, inside"),
    "spread_hole": tr("spread, bores"),
    "spread_height": tr("spread, heights"),
    "promise_outside": tr("promise, outside"),
    "promise_inside": tr("promise, inside"),
    "promise_hole": tr("promise, bores"),
    "promise_height": tr("promise, heights"),
    "prediction_inside": tr("predictions that held"),
    "prediction_outside": tr("predictions that did not hold"),
    "prediction_factor": tr("factor on our U"),
    "wall_outset": tr("wall outset per side"),
    "boss_constant": tr("constant of round bosses"),
    "bore_constant": tr("constant of round bores"),
    "first_layer_flare": tr("first-layer flare per side"),
    "first_layer_error": tr("pads less height commanded"),
    "first_layer_spread": tr("spread between places"),
    "first_layer_fall": tr("fall over the places"),
    "height_offset": tr("height offset"),
    "bed_flatness": tr("bed flatness"),
    "probe_sd": tr("repeatability of the probe"),
    "bed_tilt_x_cold": tr("bed tilt along X, cold"),
    "bed_tilt_y_cold": tr("bed tilt along Y, cold"),
    "bed_flatness_cold": tr("bed flatness, cold"),
    "bed_twist": tr("twist on four screws"),
    "bed_soak": tr("soak time"),
    "diameter": tr("equivalent diameter"),
    "ovality": tr("ovality"),
    "diameter_sd": tr("spread of the diameter"),
    "area_ratio": tr("area against nominal"),
    "mass_per_length": tr("mass per length"),
    "density": tr("density"),
    "path_filament": tr("path of a mass box"),
    "drying_loss": tr("loss in drying"),
    "stock": tr("filament left"),
    "feed_ratio": tr("fed of commanded"),
    "feed_steps_mm": tr("steps for 100 %"),
    "loaded_share": tr("fed under load"),
    "slip_rate": tr("0.5 % slip at"),
    "flow_ratio_wall": tr("flow factor by walls"),
    "flow_ratio_mass": tr("flow factor by mass"),
    "flow_ratio_top": tr("flow factor by top pads"),
    "flow_ratio": tr("flow factor"),
    "flow_ceiling": tr("flow ceiling"),
    "highest_speed": tr("speed it allows"),
    "trial_speed": tr("speed to print at"),
    "trial_acceleration": tr("acceleration to print at"),
    "trial_score": tr("its mean score"),
    "trial_time": tr("time of the part"),
    "layer_floor": tr("a layer waits from"),
    "ladder_temperature": tr("nozzle temperature"),
    "ladder_retraction": tr("retraction"),
    "ladder_lag": tr("pressure lag"),
    "ladder_cornering": tr("corner speed"),
    "ladder_cooling": tr("cooling"),
    "ladder_gap": tr("first-layer gap"),
    "sd_hand": tr("hand, one reading"),
    "operator_offset": tr("second person"),
    "zero": tr("zero"),
    "zero_outside": tr("zero, outside jaws"),
    "zero_inside": tr("zero, inside jaws"),
    "zero_depth": tr("zero, depth rod"),
    "light_gap": tr("wear of the jaws"),
    "scale": tr("instrument scale"),
}

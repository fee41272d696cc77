"""Lengths of parts, what is fitted to them, and a shop of them."""

from __future__ import annotations

from typing import Any

import numpy as np

from core.part_size.features import FeatureKind, Terms
from core.part_size.missing import Candidate
from core.part_size.pegfit import Mate
from core.part_size.prediction import Changes, Prediction, predict, verify
from core.part_size.scatter import FeatureMeans, ScatteredFit
from core.part_size.shop_links import islands
from core.part_size.shop_split import Priors, Seen, split_shop
from core.part_size.sizeerror import SizeError, fit_size_error
from core.part_size.spread import Spread, fit_spread
from tests.properties import shapes
from tests.properties.kinds import Hand, Recipe
from tests.properties.recipes.records import estimate


def on_axis_of_fit(hand: Hand) -> dict[str, Any]:
    """Return a fit and what there is in it."""
    fit = hand.of(SizeError)
    axis, names = hand.pick(*fit.axes), fit.terms.names
    kind = hand.pick(*(kind for kind, along in zip(fit.kinds, fit.axes, strict=True) if along == axis))
    return {
        "fit": fit,
        "self": fit,
        "axis": axis,
        "axes": [axis],
        "kind": kind,
        "constant": estimate(hand),
        "first_name": hand.pick(*names),
        "second_name": hand.pick(*names),
    }


def good_columns(hand: Hand) -> dict[str, Any]:
    """Return lengths that tell scale from offset."""
    kind = [str(one) for one in (FeatureKind.TOOTH, FeatureKind.NOTCH, FeatureKind.OUTSIDE) for _ in range(4)]
    nominal = [10.0, 30.0, 60.0, 100.0] * 3
    measured = [n + hand.number("", -0.1, 0.1) for n in nominal]
    return {"nominal_mm": nominal, "measured_mm": measured, "kind": kind, "axis": ["x"] * 12}


def good_prediction(hand: Hand) -> Prediction:
    """Return a prediction of some lengths."""
    nominal = hand.numbers("_mm", 4)
    return predict(
        fit_size_error(**good_columns(hand)),
        ["x"] * 4,
        ["tooth", "notch", "tooth", "notch"],
        nominal,
        Changes(0.01, {"x": 1.001}),
    )


def against_readings(hand: Hand) -> dict[str, Any]:
    """Return a prediction and readings of what it predicts."""
    return {"prediction": good_prediction(hand), "place": [0, 1, 3], "error_mm": hand.numbers("u_", 3), "u_mm": 0.01}


def two_of_three(hand: Hand) -> dict[str, Any]:
    """Return a shop of three machines and three lots, and two numbers of them."""
    return {
        "self": split_shop(shop_seen(hand), shop_priors(hand)),
        "first": hand.between(0, 2),
        "second": hand.between(0, 2),
        "machine": hand.between(0, 2),
        "lot": hand.between(0, 2),
    }


def spread_of_many(hand: Hand) -> Spread:
    """Return the spread of so many pieces that a promise can be made."""
    piece = [number for number in range(12) for _ in range(3)]
    rng = np.random.default_rng(hand.between(0, 99))
    bias = max(min(hand.number("", -0.1, 0.1), 1e300), -1e300)
    error = bias + min(abs(hand.number("", 0.01, 0.1)), 1e300) * rng.normal(size=len(piece))
    return fit_spread(piece, [20.0, 50.0, 90.0] * 12, error)


def mate(hand: Hand) -> Mate:
    """Return a hole or a peg."""
    return Mate(hand.number("", -0.2, 0.2), hand.number("sd_"), hand.number("u_"), hand.pick(np.inf, 1.0, 12.0))


def changes(hand: Hand) -> Changes:
    """Return what is set otherwise."""
    return Changes(hand.number("", -0.2, 0.2), {axis: hand.number("_ratio") for axis in hand.pick("", "x", "xyz")})


def shop_seen(hand: Hand) -> Seen:
    """Return prints of a shop."""
    count = hand.many()
    index = [np.array([hand.pick(0, 1, 2) for _ in range(count)], dtype=int) for _ in range(2)]
    scale = np.array([hand.number("", -0.01, 0.01) for _ in range(count)])
    return Seen(index[0], index[1], scale, np.array([hand.number("u_ratio", 1e-4, 1e-3) for _ in range(count)]))


def shop_priors(hand: Hand) -> Priors:
    """Return what is known of three machines and three lots beforehand."""
    few = [np.array([hand.number("", 0.0005, 0.01) for _ in range(3)]) for _ in range(3)]
    return Priors(*few, common_u_ratio=hand.number("", 0.0005, 0.01))


RECIPES: dict[Any, Recipe] = {
    Seen: shop_seen,
    Priors: shop_priors,
    Mate: mate,
    Changes: changes,
    Spread: spread_of_many,
    Terms: lambda hand: shapes.lengths(hand)["terms"],
    FeatureMeans: lambda hand: shapes.lengths(hand)["means"],
    ScatteredFit: lambda hand: shapes.run_checks(hand)["scattered"],
}


ARGUMENTS: dict[str, Recipe] = {
    "part_size.sizeerror.fit_size_error": shapes.fit_size_error,
    "part_size.checks.run_checks": shapes.run_checks,
    "part_size.features.parameter_names": shapes.lengths,
    "part_size.features.travel_centres": shapes.lengths,
    "part_size.features.design_terms": shapes.lengths,
    "part_size.features.Terms.combination": shapes.terms_of,
    "part_size.features.Terms.coefficients": shapes.terms_of,
    "part_size.lengths.fixed_effects": shapes.lengths,
    "part_size.missing.telling_readings": shapes.telling,
    "part_size.missing.missing_parameters": shapes.run_checks,
    "part_size.scatter.feature_means": shapes.lengths,
    "part_size.scatter.fit_with_scatter": shapes.with_scatter,
    "part_size.sizeerror.reported": shapes.reported,
    "part_size.shop_links.axis_contrasts": shapes.shop_cells,
    "part_size.planner.choose_times": lambda _: {"wanted": ()},
    "part_size.missing.reading_list": lambda hand: {
        "readings": [hand.of(Candidate) for _ in range(hand.between(1, 3))]
    },
    "part_size.prediction.verify": against_readings,
    "part_size.prediction.Prediction.place": lambda hand: {"self": good_prediction(hand)},
    "part_size.prediction.Verification.mean_mm": lambda hand: {
        "self": verify(**against_readings(hand)),
        "mine": np.array([True, False, True]),
    },
    "part_size.promise.cpk_lower": lambda hand: {
        "cpk_ratio": hand.number("_ratio"),
        "n_ratio": hand.number("", 1.5, 40.0),
    },
    "part_size.spread.fit_spread": shapes.pieces,
    "part_size.shop_links.islands": lambda _: {"machine_count": 3, "lot_count": 3},
    "part_size.shop_links.joining_prints": lambda hand: {"apart": islands(shop_seen(hand), 3, 3)},
    "part_size.shop_split.ShopSplit.machine_difference": two_of_three,
    "part_size.shop_split.ShopSplit.lot_difference": two_of_three,
    "part_size.shop_split.ShopSplit.cross_covariance": two_of_three,
    "part_size.sizeerror.SizeError.covariance": on_axis_of_fit,
    "part_size.promise.Promise.factor_at": lambda hand: {"length_mm": hand.numbers("_mm", 3)},
    "part_size.promise.Promise.tolerance_at": lambda hand: {"length_mm": hand.numbers("_mm", 3)},
    "part_size.prediction.Changes.effect_mm": lambda hand: {"self": changes(hand)},
}

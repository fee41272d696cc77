"""Good enough, stop: by value and uncertainty. The limits are common practice, no source."""

import math

import pytest

from core.guidance.names import parameter_words
from core.guidance.walkplan import Enough, shop_plan
from core.guidance.walkstop import Stop, stop_of, stop_sentences
from core.quantity import Estimate

K = 1.959964  # JCGM 100:2008 table G.2, 95 %, infinite degrees of freedom


def estimate(name, value, U, unit="mm"):
    return Estimate(name, value, U / K, math.inf, unit)


@pytest.mark.parametrize(
    ("value", "U", "expected"),
    [(0.03, 0.01, "enough"), (-0.03, 0.01, "enough"), (0.045, 0.01, "unclear"), (0.055, 0.01, "unclear"),
     (0.09, 0.01, "not_enough"), (-0.09, 0.01, "not_enough")],
)  # fmt: skip
def test_the_whole_interval_decides(value, U, expected):
    assert stop_of(estimate("reversal_x", value, U), Enough(most=0.05)) == expected


def test_a_ratio_is_held_against_one():
    limit = shop_plan().enough["feed_ratio"]
    assert stop_of(estimate("feed_ratio", 0.998, 0.002, "1"), limit) is Stop.ENOUGH
    assert stop_of(estimate("feed_ratio", 0.98, 0.002, "1"), limit) is Stop.NOT_ENOUGH


def test_it_is_said_in_words_with_the_limit():
    found = stop_sentences(
        [
            estimate("reversal_x", 0.012, 0.004),
            estimate("reversal_y", 0.09, 0.004),
            estimate("feed_ratio", 0.994, 0.002, "1"),
            estimate("scale_x", 0.0, 0.0004, "1"),
            estimate("scale_y", 0.0, 0.004, "1"),
            estimate("mean_reversal_x", 0.012, 0.004),
        ],
        shop_plan().enough,
    )
    assert [(stop.value, str(words)) for stop, words in found] == [
        ("enough", "reversal error X 0.0120 ± 0.0040 mm: within 0.05 mm, stop."),
        ("not_enough", "reversal error Y 0.0900 ± 0.0040 mm: beyond 0.05 mm; mend it before you go on."),
        ("unclear", "fed of commanded 99.40 ± 0.20 %: not told against 0.5 %; more readings tell."),
        ("enough", "scale error X +0.000 ± 0.040 %: known well enough, stop."),
        ("not_enough", "scale error Y +0.00 ± 0.40 %: to be known to 0.03 % (standard uncertainty); read more."),
    ]


def test_every_limit_is_of_an_estimate_that_has_a_name():
    for name, limit in shop_plan().enough.items():
        assert parameter_words(name)
        assert (limit.most is None) is not (limit.u is None)

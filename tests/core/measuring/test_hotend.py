"""A hot end's stated limit; that linings give off toxic fume above theirs is common practice, no source."""

from __future__ import annotations

import math

import pytest

from core.errors import InputError
from core.measuring.hotend import refuse_hotter


@pytest.mark.parametrize("temperature_c", [240.0, 20.0])
def test_up_to_the_limit_is_worked_with(temperature_c):
    refuse_hotter(temperature_c, 240.0)


@pytest.mark.parametrize(("temperature_c", "limit_c"), [(240.1, 240.0), (240.0, math.nan), (math.nan, 240.0)])
def test_above_it_or_without_one_is_refused(temperature_c, limit_c):
    with pytest.raises(InputError, match="stated limit") as refused:
        refuse_hotter(temperature_c, limit_c)
    assert refused.value.field == "temperature_c"

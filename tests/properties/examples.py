"""How many examples: few by default and always the same ones; SLIPGAUGE_EXAMPLES=2000 tries as many, new each time."""

import os

from hypothesis import HealthCheck, Phase, settings

_MANY = int(os.environ.get("SLIPGAUGE_EXAMPLES", "0"))
_QUIET = list(HealthCheck)
_PHASES = [Phase.explicit, Phase.generate, Phase.shrink]

examples = settings(
    max_examples=_MANY or 5,
    deadline=None,
    database=None,
    derandomize=not _MANY,
    suppress_health_check=_QUIET,
    phases=_PHASES,
)

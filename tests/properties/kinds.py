"""An argument of any type the core takes: plausible, or any finite number there is."""

from __future__ import annotations

import dataclasses
import enum
import random
import types
import typing
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from datetime import UTC, datetime, timedelta
from typing import Any, Literal, Union

import numpy as np
from hypothesis import reject
from hypothesis import strategies as st
from numpy.typing import ArrayLike

from core.errors import InputError
from core.part_size.features import FeatureKind
from core.words import Words, tr

NASTY = (
    0.0,
    -0.0,
    5e-324,
    -1e-320,
    1e-310,
    2.3e-308,
    1e-200,
    1e-154,
    1e-100,
    1e-30,
    1e-16,
    1.0,
    -1.0,
    1e5,
    1e16,
    1e77,
    1e100,
    1e154,
    1e200,
    -1e200,
    1e300,
    1e308,
    -1e308,
    1.7976931348623157e308,
)
_ANY = st.one_of(st.sampled_from(NASTY), st.floats(allow_nan=False, allow_infinity=False))
_TEXTS = ("", "x", "Ärmel", "12.5", "{0}", "%s", "\x00", "\ud800", "=1+1", "9" * 400, "x\ny", "\u202e")
# The end of a name and the range a workshop meets.
_RANGES = (
    ("mm3_s", 0.5, 30.0),
    ("mm_s2", 100.0, 20_000.0),
    ("mm_s3", 1e3, 1e6),
    ("mm_s", 1.0, 300.0),
    ("g_cm3", 0.8, 2.0),
    ("g_m", 0.5, 12.0),
    ("g_mm3", 0.0008, 0.002),
    ("steps_mm", 10.0, 800.0),
    ("_um", 1.0, 200.0),
    ("_c", 15.0, 280.0),
    ("_ratio", 0.7, 1.3),
    ("_hz", 5.0, 200.0),
    ("_deg", 0.0, 180.0),
    ("_n", 1.0, 40.0),
    ("level", 0.5, 0.999),
    ("dof", 1.0, 50.0),
    ("content", 0.5, 0.99),
    ("confidence", 0.5, 0.99),
    ("_g", 0.05, 900.0),
    ("_s", 0.01, 900.0),
    ("_px", 20.0, 300.0),
    ("_mm", 0.05, 220.0),
    ("score", 1.0, 5.0),
    ("speed", 1.0, 300.0),
)
_CHOICES = {
    "axis": ("x", "y", "z"),
    "axes": ("x", "y", "z"),
    "judge": ("A", "B", "C"),
    "placing": ("face down", "face up"),
    "klass": ("f", "m", "c", "IT7", "IT12"),
    "tolerance": ("f", "m", "c", "v", "IT9"),
    "unit": ("mm", "1", "g"),
    "approach": ("up", "down"),
    "plane": ("xy", "xz", "yz"),
    "side": ("along", "sideways"),
    "hold": ("rest", "pushed"),
    "place": ("a", "b"),
    "kind": tuple(FeatureKind),
    "of": ("speed", "acceleration"),
    "diagonal": ("1", "2"),
    "part": ("outer", "inner", "drawn"),
    "run": ("usual", "half_speed"),
}


def _meant(hint: Any) -> Any:
    """Return what a named type stands for: NDArray and ArrayLike are such names since numpy 2.5."""
    named, inside = typing.get_origin(hint) or hint, typing.get_args(hint)
    meant = getattr(named, "__value__", None)
    return hint if meant is None else meant[inside] if inside else meant


_ARRAY_LIKE = set(typing.get_args(_meant(ArrayLike)))
_NOON = datetime(2026, 5, 4, 12, tzinfo=UTC)


class Hand:
    """Draws one argument after the other; `wild` is the share of numbers that may be anything finite."""

    def __init__(self, draw: Callable[[st.SearchStrategy[Any]], Any], wild: float, recipes: Mapping[Any, Any]) -> None:
        self.draw, self.wild, self.recipes = draw, wild, recipes
        self.length = draw(st.integers(0, 12))
        self.ragged = wild > 0 and draw(st.booleans())
        self.depth = 0

    def chance(self, share: float) -> bool:
        """Return True about so often; the simplest example is a plain one."""
        return share > 0 and self.draw(st.integers(0, 99)) >= 100 - 100 * share

    def pick(self, *values: Any) -> Any:
        """Return one of the values."""
        return self.draw(st.sampled_from(values))

    def word(self, *values: Any) -> Any:
        """Return one of the values; where anything goes, sometimes a word that is none of them."""
        return self.pick(*_TEXTS) if self.chance(self.wild / 4) else self.pick(*values)

    def number(self, name: str = "", low: float | None = None, high: float | None = None) -> float:
        """Return a float of the kind its name tells; sometimes any other."""
        if self.chance(self.wild):
            return self.draw(_ANY)
        if low is None or high is None:
            low, high = _range_of(name)
        return round(low + (high - low) * self.between(0, 500) / 500, 4)

    def count(self, name: str = "") -> int:
        """Return a whole number, small ones mostly."""
        return self.between(-3, 400) if self.chance(self.wild) else self.between(1, 6)

    def between(self, low: int, high: int) -> int:
        """Return a whole number of the range."""
        return self.draw(st.integers(low, high))

    def reject(self) -> Any:
        """Give up this example: it is no input."""
        reject()

    def text(self, name: str = "") -> str:
        """Return a word that fits the name, or any text."""
        if name in _CHOICES:
            return self.pick(*_CHOICES[name])
        return self.pick(*_TEXTS) if self.chance(0.7) else self.draw(st.text(max_size=8))

    def content(self) -> bytes:
        """Return the content of a file."""
        return self.draw(st.binary(max_size=200))

    def numbers(self, name: str = "", count: int | None = None) -> list[float]:
        """Return a list; of one length for all lists of a call, unless they are ragged."""
        count = self.many() if count is None else count
        if self.chance(0.1):
            return [self.number(name)] * count
        return [self.number(name) for _ in range(count)]

    def alike(self, values: Iterable[float]) -> list[float]:
        """Return the values as they are; now and then all as the first: nothing scatters."""
        drawn = list(values)
        return [drawn[0]] * len(drawn) if drawn and self.chance(0.1) else drawn

    def short(self, values: list[Any]) -> list[Any]:
        """Return a column; now and then the last entry of it is missing."""
        return values[:-1] if self.ragged and self.chance(0.2) else values

    def many(self) -> int:
        """Return how long a list is."""
        return self.between(0, 5) if self.ragged else self.length

    def of(self, hint: Any, name: str = "") -> Any:
        """Return a value of a type."""
        if typing.get_origin(hint) is Callable:
            return self.recipes.get(str(hint), lambda _: lambda *_: None)(self)
        if hint in self.recipes:
            return self.made(self.recipes[hint])
        if hint == ArrayLike or (set(typing.get_args(hint)) >= _ARRAY_LIKE and self.chance(0.8)):
            return np.array(self.numbers(name)) if self.chance(0.5) else self.numbers(name)
        hint = _meant(hint)
        origin, inside = typing.get_origin(hint), typing.get_args(hint)
        if set(inside) >= _ARRAY_LIKE:
            return None
        if origin in (Union, types.UnionType):
            return self.of(self.pick(*(inside[::-1] if type(None) in inside else inside)), name)
        if origin is Literal:
            return self.pick(*inside)
        if origin is np.ndarray:
            return self._array(typing.get_args(inside[1])[0], name)
        if origin is tuple and (len(inside) != 2 or inside[1] is not Ellipsis):
            return tuple(self.of(one, name) for one in inside)
        if origin in (Mapping, dict):
            return {self.of(inside[0], "axis"): self.of(inside[1], name) for _ in range(min(self.many(), 4))}
        if origin in (Sequence, Iterable, Collection, list, tuple, frozenset):
            return self._several(origin, inside[0], name)
        return self._plain(hint, name)

    def _several(self, origin: Any, inside: Any, name: str) -> Any:
        many = self.many() if inside in (float, str, int, float | None) else min(self.many(), 3)
        values = self.numbers(name) if inside is float else [self.of(inside, name) for _ in range(many)]
        return {tuple: tuple, frozenset: frozenset}.get(origin, list)(values)

    def _array(self, kind: type, name: str) -> Any:
        if kind is np.float64:
            return np.array(self.numbers(name), dtype=float)
        many = self.many()
        return np.array([self.between(0, 1 if kind is np.bool_ else 3) for _ in range(many)], dtype=kind)

    def _plain(self, hint: Any, name: str) -> Any:
        plain = {float: self.number, int: self.count, str: self.text}
        if hint in plain:
            return plain[hint](name)
        if hint is bool:
            return self.pick(False, True)
        if hint in (type(None), None):
            return None
        if hint is Words:
            return tr("Words {number}", number=self.between(0, 9))
        if hint is datetime:
            return _NOON + timedelta(hours=self.between(-5000, 5000))
        if hint is np.random.Generator:
            return np.random.default_rng(self.between(0, 9))
        if hint is bytes:
            return self.content()
        if hint in (Any, object):
            return self.pick(None, 1, 2.5, "text", [1.0], {"a": 1})
        if isinstance(hint, type) and issubclass(hint, enum.Enum):
            return self.pick(*hint)
        if dataclasses.is_dataclass(hint):
            return self.build(hint)
        raise NotImplementedError(f"no strategy for {hint} of {name}")

    def build(self, kind: Any, **given: Any) -> Any:
        """Return a dataclass of drawn fields; what it refuses was no input."""
        hints = typing.get_type_hints(kind)
        drawn = {
            field.name: self.of(hints[field.name], field.name)
            for field in dataclasses.fields(kind)
            if field.init and field.name not in given
        }
        return self.made(lambda _: kind(**drawn, **given))

    def made(self, recipe: Callable[[Hand], Any]) -> Any:
        """Return what a recipe gives; what it refuses was no input."""
        try:
            return recipe(self)
        except InputError:
            self.reject()


class PlainHand(Hand):
    """Draws what a workshop reads, from a seed of its own: nothing odd, and no list shorter than six."""

    def __init__(self, seed: int, recipes: Mapping[Any, Any]) -> None:
        self.random, self.recipes = random.Random(seed), recipes
        self.wild, self.ragged, self.length = 0.0, False, 6

    def chance(self, share: float) -> bool:
        """Return True about so often."""
        return self.random.random() < share

    def pick(self, *values: Any) -> Any:
        """Return one of the values."""
        return self.random.choice(values)

    def between(self, low: int, high: int) -> int:
        """Return a whole number of the range."""
        return self.random.randint(low, high)

    def text(self, name: str = "") -> str:
        """Return a word that fits the name, or a name of any kind."""
        return self.pick(*_CHOICES.get(name, ("a", "Ärmel", "12.5")))

    def content(self) -> bytes:
        """Return the content of a file."""
        return b"G1 X10 Y10 E1 F3000\n" * self.length

    def reject(self) -> Any:
        """Give up this try."""
        raise Rejected


class Rejected(Exception):
    """What was drawn is no input."""


def _range_of(name: str) -> tuple[float, float]:
    if name.startswith(("u_", "sd_", "half_width")):
        return 0.001, 0.05
    for end, low, high in _RANGES:
        if name.endswith(end):
            return low, high
    return 0.1, 60.0


Recipe = Callable[[Hand], Any]

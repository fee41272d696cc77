"""Arguments that cannot be put together field by field: answers of other calls, and what must fit together.

Each room of the core has its own. An answer of another call is made by that call: the shapes inside it are its promise,
so none is made up here.

    RECIPES: by type.
    ARGUMENTS: by call, those that fit one another or come from a closed list of the program's own; the rest is drawn.
"""

from __future__ import annotations

import dataclasses
import types
import typing
from collections.abc import Callable, Sequence
from typing import Any, Union

from tests.properties import workshop
from tests.properties.kinds import Hand, Recipe
from tests.properties.listing import functions as listed
from tests.properties.reasons import reason_of
from tests.properties.recipes import (
    filament,
    flow_trials,
    guidance,
    machine_geometry,
    measuring,
    motion_trials,
    part_size,
    pieces,
    records,
)

_WITH_ARGUMENTS = (filament, flow_trials, guidance, machine_geometry, measuring, motion_trials, part_size, pieces)

RECIPES: dict[Any, Recipe] = dict(workshop.RECIPES)
for _room in (*_WITH_ARGUMENTS, records):
    RECIPES |= _room.RECIPES
ARGUMENTS: dict[str, Recipe] = {
    f"core.{name}": recipe for room in _WITH_ARGUMENTS for name, recipe in room.ARGUMENTS.items()
} | workshop.ARGUMENTS


def call(hand: Hand, function: Callable[..., Any]) -> Any:
    """Return the answer of a call to drawn arguments."""
    hints = typing.get_type_hints(function)
    hints.pop("return", None)
    fitting = ARGUMENTS.get(f"{function.__module__}.{function.__name__}")
    given = {name: value for name, value in (fitting(hand) if fitting else {}).items() if name in hints}
    for name, hint in hints.items():
        if name not in given:
            given[name] = hand.of(hint, name)
    return function(**given)


def made_by(functions: Sequence[Callable[..., Any]]) -> Recipe:
    """Return the recipe for what these calls answer."""

    def recipe(hand: Hand) -> Any:
        answer = call(hand, hand.pick(*functions))
        return hand.reject() if answer is None else answer

    return recipe


def enter_makers() -> None:
    """Enter for each dataclass that calls answer the calls that make it."""
    makers: dict[Any, list[Callable[..., Any]]] = {}
    for one in listed():
        kinds = [kind for kind in (one.answer, *typing.get_args(one.answer)) if dataclasses.is_dataclass(kind)]
        many = typing.get_origin(one.answer) not in (None, Union, types.UnionType)
        if len(kinds) != 1 or many or kinds[0] in RECIPES or reason_of(one.name):
            continue
        if kinds[0].__name__ not in str(one.hints):
            makers.setdefault(kinds[0], []).append(one.function)
    RECIPES.update({kind: made_by(entered) for kind, entered in makers.items()})


enter_makers()

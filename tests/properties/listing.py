"""Every public function of the core, and every public method of its dataclasses that takes something."""

from __future__ import annotations

import dataclasses
import importlib
import inspect
import pkgutil
import typing
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import ModuleType
from typing import Any

import core


@dataclass(frozen=True)
class Call:
    """A function or method by its full name, and the type of each argument."""

    name: str
    function: Callable[..., Any]
    hints: dict[str, Any]
    answer: Any

    def __str__(self) -> str:
        return self.name.removeprefix("core.")


def modules() -> list[ModuleType]:
    """Return every module of the core but the steps of its schema."""
    found = pkgutil.walk_packages(core.__path__, "core.")
    return [importlib.import_module(module.name) for module in found if ".migrations" not in module.name]


def own(module: ModuleType, kind: Callable[[Any], bool]) -> Iterator[tuple[str, Any]]:
    """Yield what a module itself defines under a public name."""
    for name, thing in vars(module).items():
        if not name.startswith("_") and kind(thing) and thing.__module__ == module.__name__:
            yield name, thing


def functions() -> list[Call]:
    """Return the public functions."""
    found = []
    for module in modules():
        found += [_call(f"{module.__name__}.{name}", function) for name, function in own(module, inspect.isfunction)]
    return found


def methods() -> list[Call]:
    """Return the public methods of dataclasses that take an argument besides their own object."""
    found = []
    for kind in dataclass_types():
        for name, method in vars(kind).items():
            if name.startswith("_") or not inspect.isfunction(method) or len(inspect.signature(method).parameters) < 2:
                continue
            call = _call(f"{kind.__module__}.{kind.__name__}.{name}", method)
            found.append(dataclasses.replace(call, hints={"self": kind, **call.hints}))
    return found


def dataclass_types() -> list[type]:
    """Return the public dataclasses."""
    return [kind for module in modules() for _, kind in own(module, inspect.isclass) if dataclasses.is_dataclass(kind)]


def _call(name: str, function: Callable[..., Any]) -> Call:
    hints = typing.get_type_hints(function)
    answer = hints.pop("return", None)
    return Call(name, function, hints, answer)

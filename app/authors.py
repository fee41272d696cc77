"""Who is at work: the names that the shop knows, offered where somebody signs, and remembered once somebody has."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCompleter, QLineEdit

from app.context import Context, Level
from app.words import shown
from core.errors import InputError, StoreError

_AUTHORS = "authors"


def author_completer(context: Context, field: QLineEdit) -> QCompleter:
    """Return a completer of the names that the shop knows."""
    try:
        known = context.store.shop_value(_AUTHORS)
    except StoreError as error:
        context.say(shown(error.message), Level.ERROR)
        known = None
    completer = QCompleter([str(name) for name in known.value.get("names", ())] if known else [], field)
    completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
    return completer


def sign_as(context: Context, typed: str) -> None:
    """Sign with a name from now on, and remember it; an empty one, or who has signed already, changes nothing."""
    name = typed.strip()
    if name and name != context.store.author:
        context.sign(name)
        remember_author(context, name)


def remember_author(context: Context, name: str) -> None:
    """Add a name to those that the shop knows."""
    try:
        known = context.store.shop_value(_AUTHORS)
        names = list(known.value.get("names", ())) if known else []
        if name not in names:
            context.store.set_shop_value(_AUTHORS, {"names": sorted([*names, name])}, known)
    except (InputError, StoreError) as error:
        context.say(shown(error.message), Level.WARNING)

"""Whether lengths are shown in inch: apart from `app.units`, whose patterns the first paint need not wait for."""

from __future__ import annotations

_inches = [False]  # as Qt's default locale, one for the program


def show_inches(inches: bool) -> None:
    """Show and read lengths in inch from now on, or in mm."""
    _inches[0] = inches


def inches_shown() -> bool:
    """Whether lengths are shown and read in inch."""
    return _inches[0]

"""Which version of the program runs, as its help and its reports say."""

from __future__ import annotations

from core.words import tr


def our_version() -> str:
    """Return the version of the installed program."""
    from importlib import metadata  # slow to import: not before somebody asks

    try:
        return metadata.version("slipgauge")
    except metadata.PackageNotFoundError:
        return tr("from source")

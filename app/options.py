"""What may be said on the command line of the window."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Options:
    """What may be said on the command line; None leaves it to the settings of last time."""

    database: str | None = None
    theme: str | None = None
    page: str | None = None
    machine: str | None = None


def parsed(arguments: list[str]) -> Options:
    """Return what the arguments say; leave the program where they cannot be read or ask for help."""
    import argparse

    parser = argparse.ArgumentParser(
        prog="python -m app",
        description="Slipgauge: tells a constant error of printed parts from a proportional one.",
        epilog="Without a window: python -m app analyse readings.csv (see python -m app analyse --help).",
    )
    parser.add_argument("--database", metavar="PATH|URL", help="file or SQLAlchemy URL; default: in your data folder")
    parser.add_argument("--theme", choices=("light", "dark"), help="for this run")
    parser.add_argument("--page", metavar="KEY", help="the page to show first: drive, sizeerror, …")
    parser.add_argument("--machine", metavar="NAME", help="the machine to pick")
    return Options(**vars(parser.parse_args(arguments)))

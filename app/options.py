"""What may be said on the command line of the window."""

from __future__ import annotations

from dataclasses import dataclass

OPEN, ANEW, HOME = "open", "anew", "home"  # the ways into the demo shop and out of it


@dataclass(frozen=True, slots=True)
class Options:
    """What may be said on the command line; None leaves it to the settings of last time.

    `demo` opens the demo shop instead of `database`: OPEN or ANEW.
    """

    database: str | None = None
    theme: str | None = None
    page: str | None = None
    machine: str | None = None
    language: str | None = None
    lengths: str | None = None
    demo: str = ""


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
    parser.add_argument("--language", choices=("system", "en", "de"), help="for this run")
    parser.add_argument("--lengths", choices=("mm", "inch"), help="how lengths are shown, for this run")
    parser.add_argument("--demo", action="store_const", const=OPEN, default="", help="open the invented demo shop")
    return Options(**vars(parser.parse_args(arguments)))

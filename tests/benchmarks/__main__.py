"""How long things take, side by side with peers in one run: `python -m tests.benchmarks`.

    --list              the subjects
    --only NAME         one subject, may be repeated
    --rounds N          turns of each way (15)
    --quick             small sizes, one round: that everything runs; its ratios say nothing
    --cold              starts of the window with an empty page cache (Linux, root)
    --json FILE         the same as JSON with every measured number; `-` for the standard output instead of the table

Each subject is a module of its own with its peers beside ours. That a peer gives the same numbers is checked before any
ratio is told, and the run ends with code 1 where one does not. What a ratio may be is in `floors.py`; a ratio above it
is said, and is no error: a busy machine is not a fault of the program.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Sequence
from importlib import import_module
from pathlib import Path
from typing import Any

from tests.benchmarks import report
from tests.benchmarks.sidebyside import DifferentAnswersError, side_by_side

SUBJECTS = (
    "coldstart", "keystroke", "onefit", "manyfits", "shopsplit", "keeptrial", "board", "search", "piece", "gcode",
    "motion",
)  # fmt: skip
ROUNDS = 15


def main(arguments: Sequence[str] | None = None) -> int:
    options = parser().parse_args(arguments)
    if options.list:
        for subject in SUBJECTS:
            print(f"{subject:10} {import_module(f'tests.benchmarks.{subject}').TITLE}")
        return 0
    if options.cold:
        import_module("tests.benchmarks.coldstart").empty_page_cache = True
    rounds = 1 if options.quick else options.rounds
    around = report.surroundings()
    quiet = options.json == "-"
    if not quiet:
        report.print_head(around, rounds)
    found, code = [], 0
    for subject in options.only or SUBJECTS:
        try:
            found += run(subject, rounds, options.quick, quiet)
        except DifferentAnswersError as error:
            print(error, file=sys.stderr)
            code = 1
    whole = {**around, "quick": options.quick, "cold": options.cold, "rounds": rounds, "contests": found}
    if options.json:
        text = json.dumps(whole, indent=1) + "\n"
        sys.stdout.write(text) if quiet else Path(options.json).write_text(text, encoding="utf-8")
    return code


def drop_screen_words() -> None:
    """Drop what the platform without a screen says of window sizes among the lines of the table; pass on the rest."""
    from PySide6.QtCore import qInstallMessageHandler

    def hear(_kind: object, _context: object, says: str) -> None:
        if not says.startswith("This plugin does not support "):
            print(says, file=sys.stderr)

    qInstallMessageHandler(hear)


def parser() -> argparse.ArgumentParser:
    asked = argparse.ArgumentParser(description="Time the program side by side with its peers.")
    asked.add_argument("--list", action="store_true", help="name the subjects and end")
    asked.add_argument("--only", action="append", choices=SUBJECTS, metavar="NAME", help="this one; may be repeated")
    asked.add_argument("--rounds", type=int, default=ROUNDS, help=f"turns of each way ({ROUNDS})")
    asked.add_argument("--quick", action="store_true", help="small sizes, one round")
    asked.add_argument("--cold", action="store_true", help="empty the page cache before each start")
    asked.add_argument("--json", metavar="FILE", help="write every number as JSON; - for the standard output")
    return asked


def run(subject: str, rounds: int, quick: bool, quiet: bool) -> list[dict[str, Any]]:
    """Run the contests of a subject; print each as it is done unless `quiet`."""
    module = import_module(f"tests.benchmarks.{subject}")
    if not quiet:
        print(f"\n{module.TITLE} ({subject})", flush=True)
    found = []
    for contest in module.contests(quick):
        told = side_by_side(contest, rounds)
        found.append(report.as_json(subject, module.TITLE, told))
        if not quiet:
            print(report.as_text(subject, told, quick), flush=True)
    return found


if __name__ == "__main__":
    drop_screen_words()
    sys.exit(main())

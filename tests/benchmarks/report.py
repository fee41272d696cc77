"""What was measured, as a table for people and as JSON with every number."""

from __future__ import annotations

import math
import os
import platform
from datetime import UTC, datetime
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any

from tests.benchmarks.floors import FLOORS
from tests.benchmarks.sidebyside import Spread, Told

PACKAGES = (
    "PySide6-Essentials", "numpy", "scipy", "pyqtgraph", "SQLAlchemy", "manifold3d", "lib3mf", "statsmodels",
)  # fmt: skip
_NAME, _TIME = 50, 24


def surroundings() -> dict[str, Any]:
    """Versions, processor, load and date, as far as this system tells them."""
    versions = {"python": platform.python_version()}
    for package in PACKAGES:
        try:
            versions[package] = version(package)
        except PackageNotFoundError:
            versions[package] = ""
    return {
        "date": datetime.now(UTC).isoformat(timespec="seconds"),
        "processor": processor(),
        "processors": os.cpu_count(),
        "load": list(os.getloadavg()) if hasattr(os, "getloadavg") else [],
        "system": platform.platform(),
        "versions": versions,
    }


def processor() -> str:
    told = Path("/proc/cpuinfo")
    if told.exists():
        for line in told.read_text(encoding="utf-8").splitlines():
            if line.startswith("model name"):
                return line.partition(":")[2].strip()
    return platform.processor() or platform.machine()


def as_json(subject: str, title: str, told: Told) -> dict[str, Any]:
    """One contest, every measured number of it in seconds."""
    contest = told.contest
    most = FLOORS.get((subject, contest.key), {})
    return {
        "subject": subject,
        "title": title,
        "key": contest.key,
        "job": contest.name,
        "ours": contest.ours.name,
        "seconds": told.seconds,
        "calls_a_timing": told.calls,
        "median_s": {name: told.time_s(name).median for name in told.seconds},
        "tolerance": {"largest": contest.tolerance[0], "of": contest.tolerance[1]},
        "peers": [
            {
                "name": peer.name,
                "ratio": told.ratio(peer.name).median,
                "ratio_quartiles": [told.ratio(peer.name).low, told.ratio(peer.name).high],
                "at_most": most[peer.name],
                "within": told.ratio(peer.name).median <= most[peer.name],
                "apart": told.apart.get(peer.name),
            }
            for peer in contest.peers
        ],
    }


def as_text(subject: str, told: Told, quick: bool) -> str:
    """One contest: ours, then each peer with the ratio, its quartiles and, unless `quick`, what it may be."""
    contest = told.contest
    lines = [f"  {contest.name}", _line("ours", contest.ours.name, told.time_s(contest.ours.name))]
    for peer in contest.peers:
        ratio, most = told.ratio(peer.name), FLOORS[subject, contest.key][peer.name]
        says = f"{_digits(ratio.median)} ({_digits(ratio.low)} to {_digits(ratio.high)})"
        verdict = "" if quick else f"{'within' if ratio.median <= most else 'ABOVE'} {most:g}"
        apart = told.apart.get(peer.name)
        same = "" if apart is None else f"  apart {apart:.1g}, {contest.tolerance[0]:g} {contest.tolerance[1]} allowed"
        lines.append(f"{_line('peer', peer.name, told.time_s(peer.name))}  {says:26} {verdict:12}{same}")
    return "\n".join(lines)


def heading() -> str:
    return f"    {'':4} {'':{_NAME}} {'median (quartiles)':>{_TIME}}  {'ours/peer (quartiles)':26} at most"


def print_head(around: dict[str, Any], rounds: int) -> None:
    versions = ", ".join(f"{name} {number}" for name, number in around["versions"].items() if number)
    print(f"{around['processors']} x {around['processor']}, {around['system']}")
    print(versions)
    print(f"{around['date']}, at most {rounds} rounds, the ways taking turns in each")
    print(heading(), flush=True)


def _line(who: str, name: str, time_s: Spread) -> str:
    unit, factor = _unit(time_s.median)
    numbers = [_digits(factor * value) for value in (time_s.median, time_s.low, time_s.high)]
    took = f"{numbers[0]} ({numbers[1]} to {numbers[2]}) {unit}"
    return f"    {who:4} {name:{_NAME}} {took:>{_TIME}}"


def _unit(seconds: float) -> tuple[str, float]:
    for unit, factor in (("µs", 1e6), ("ms", 1e3)):
        if seconds * factor < 1000.0:
            return unit, factor
    return "s ", 1.0


def _digits(value: float) -> str:
    """Three digits."""
    places = 2 - math.floor(math.log10(value)) if value > 0.0 else 2
    return f"{value:.{max(places, 0)}f}"

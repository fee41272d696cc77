"""How slow ours may be beside each peer: the one table of it, read by the report.

A number is the largest ratio ours/peer. Where the peer does the same job it is near 1; where ours does more (judges,
checks, refuses, paints a picture, gives every uncertainty) it says how much that may cost; below 1, how much quicker
ours must be. Set on a server of two processors under CPython 3.11; ratios change little with the machine.
"""

from __future__ import annotations

_LINES = {"numpy lstsq and inv": 2.5, "statsmodels WLS": 0.75}
# refusals, scaled columns, a step of refinement and what the readings cannot tell apart cost as much again
_PRINTS = {"numpy lstsq and inv": 5.5, "statsmodels WLS": 0.75}
_STARTS = {"bare Qt and pyqtgraph plot": 2.0, "bare Qt and plot, SQLAlchemy imported": 1.25}
_TYPED = "bare QTableView, pyqtgraph plot, lstsq, sqlite3"
_SPLITS = {
    "scipy lsmr, effects alone": 5.0,
    "scipy conjugate gradients, effects alone": 8.0,
    "scipy sparse LU, effects and every sd": 2.0,
}

# by subject and key of the contest: the peer's name as the contest gives it, and the largest ratio
FLOORS: dict[tuple[str, str], dict[str, float]] = {
    ("coldstart", "paint"): {"empty QMainWindow": 1.7},
    ("coldstart", "sizeerror"): _STARTS,
    ("coldstart", "drive"): _STARTS,
    ("keystroke", "of_11"): {_TYPED: 3.5},
    ("keystroke", "of_200"): {_TYPED: 4.0},
    ("onefit", "line"): _LINES,
    ("onefit", "print"): _PRINTS,
    ("manyfits", "lines"): {
        "numpy, closed form on a stack": 1.0,
        "numpy, normal equations on a stack": 1.0,
        "numpy, QR on a stack": 0.5,
        "statsmodels WLS in a loop": 0.01,
    },
    ("shopsplit", "scattered"): _SPLITS,
    ("shopsplit", "chained"): _SPLITS,
    ("keeptrial", "keep"): {"bare sqlite3": 6.0},
    ("keeptrial", "draft"): {"bare sqlite3": 7.0},
    ("board", "newest"): {"the same statement by sqlite3": 2.1},
    ("board", "records"): {"the same statements by sqlite3": 3.2},
    ("board", "page"): {"bare QTableView, sqlite3": 4.0},
    ("search", "series"): {"the same statement by sqlite3": 2.5},
    ("search", "newest"): {"the same statement by sqlite3": 100.0},  # half a millisecond, most of it the transaction
    ("piece", "3mf"): {"manifold3d and lib3mf directly": 3.0},
    ("piece", "stl"): {"manifold3d and lib3mf directly": 1.2},
    ("gcode", "moves"): {
        "raw disk: the same bytes, ready made": 3.0,
        "format strings, words aligned": 0.2,
        "format strings, shorter lines": 0.2,
    },
    ("motion", "moves"): {"plain loop in Python": 0.2},
}

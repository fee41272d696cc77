"""What a program does, as a general-purpose parser library reads it; it knows nothing of our writer and our check."""

from __future__ import annotations

import math

from gcodeparser import parse_gcode_lines


def laid_out(text: str) -> dict[str, list[float]]:
    """Follow a program with the library's reading of it: places, filament and speed of each move after homing."""
    at = {"X": math.nan, "Y": math.nan, "Z": math.nan}
    absolute, feed_absolute, feed = True, True, 0.0
    out: dict[str, list[float]] = {key: [] for key in ("X", "Y", "Z", "E", "F")}
    speed = math.nan
    for line in parse_gcode_lines(text):
        name = line.command_str
        if name in ("G90", "G91"):
            absolute = name == "G90"
        elif name in ("M82", "M83"):
            feed_absolute = name == "M82"
        elif name == "G92":
            feed = float(line.params["E"])
        elif name in ("G0", "G1"):
            for axis, before in at.items():
                if axis in line.params:
                    at[axis] = float(line.params[axis]) + (0.0 if absolute else before)
            now = float(line.params["E"]) if "E" in line.params else None
            fed = 0.0 if now is None else now - feed if feed_absolute else now
            feed += fed
            speed = float(line.params.get("F", speed))
            for key, value in (*at.items(), ("E", fed), ("F", speed)):
                out[key].append(value)
    return out

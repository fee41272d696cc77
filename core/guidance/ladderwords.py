"""What is said before a ladder is read: what to mind, what to print, what to look at or measure."""

from __future__ import annotations

from core.motion_trials.ladders import LadderKind, Read
from core.words import Words, side_by_side, tr


def caution_words(kind: LadderKind) -> Words:
    """Return what to mind before a ladder is printed."""
    return {
        "temperature": tr(
            "Caution: burns, fumes. Ventilate, stay with it, never above the hot end's or the material's limit. Be "
            "sure that heating is cut if the sensor fails; if that is not known, no ladder. Local rules come first."
        ),
        "cooling": tr(
            "Caution: hot nozzle, burns. A fan at full may cool the nozzle: watch its temperature. Stay with it; "
            "local rules come first."
        ),
        "cornering": tr(
            "Caution: fast corners shake the machine; hands, hair and cables out of the travel. Stay with it, stop at "
            "the first lost step; local rules come first."
        ),
        "gap": tr(
            "Caution: hot nozzle, burns. A gap too small scrapes the bed: hand on the switch; local rules come first."
        ),
    }.get(kind.key, tr(
        "Caution: hot nozzle, burns. Ventilate the fumes, never leave it unattended, stop at the first grinding; local "
        "rules come first."
    ))  # fmt: skip


def how_words(kind: LadderKind, read: Read = Read.SCORE) -> Words:
    """Return what to print, and what to look at or measure."""
    if read.is_of_any_kind:
        says = tr("Read one value of each specimen, all in the same way, and type its unit into “Value in”.")
        return side_by_side((_print_words(kind), says))
    if read is Read.WIDTHS:
        says = tr("Read the width of each line 5 mm after each change of speed, and in the middle.")
        return side_by_side((tr("A line at 25, 70, 25 mm/s for each step."), says))
    return {
        "temperature": tr(
            "Hot to cold, as “Show the steps” lists the letters; two minutes at each once the sensor is steady within "
            "1 K. Bridge, overhang, two thin posts, and for each judge a tab to snap last."
        ),
        "retraction": tr("Two posts 40 mm apart for each step, dry filament. Score the strings: 4 none, 0 a web."),
        "lag": tr("A line at 25, 70, 25 mm/s for each step; score how even its width is: 4 even, 0 useless."),
        "cornering": tr("Square posts with sharp corners; score bulge and ripple beside the corner: 4 none."),
        "cooling": tr("Overhang, bridge and a tab to snap for each step; score shape and bond together."),
        "gap": tr("A single first layer for each step; score the top: 4 closed and even, 0 gaps or ridges."),
    }.get(kind.key, tr("Change this setting only; 4 is without fault, 0 useless."))


def nothing_words(read: Read) -> tuple[Words, Words]:
    """Return the title of a picture without a reading, and what to do to get one."""
    if read.is_of_any_kind:
        return tr("Values of the steps"), tr(
            "No value yet. Read one value of each specimen, such as the force that snaps it, and type its unit into "
            "“Value in”, which stays empty for a count."
        )
    if read is Read.WIDTHS:
        return tr("Widths of the steps"), tr(
            "No width yet. Read three widths of the line of each step: after the change to faster, where it is "
            "steady, and after the change to slower."
        )
    return tr("Scores of the steps"), tr(
        "No score yet. One person prints and marks the specimens; two others score them, each alone, from 0 "
        "to 4; more is always better."
    )


def _print_words(kind: LadderKind) -> Words:
    """Return what to print of a ladder of which a value of any kind is read."""
    return {
        "temperature": tr("Hot to cold, two minutes at each step once the sensor is steady within 1 K."),
        "retraction": tr("Two posts 40 mm apart for each step, dry filament."),
        "lag": tr("A line at 25, 70, 25 mm/s for each step."),
        "cornering": tr("Square posts with sharp corners for each step."),
        "cooling": tr("Overhang, bridge and a tab to snap for each step."),
        "gap": tr("A single first layer for each step."),
    }.get(kind.key, tr("Change this setting only."))

"""Settings in force as lines for the controller, by a template, and a pasted listing held against them.

A template has one line a setting: its name, a colon, and the command with `{value}` in place of the number, or
`{value:2}` for two decimals: `steps_x: M92 X{value}`. Lines that begin with `#` are comments. Words of controllers are
a letter and a number, as ISO 6983-1 writes them. A listed number with decimals agrees when it is the value rounded to
them; one without any is taken to be whole.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from core.errors import InputError
from core.machine_geometry.drive import describe_drive, drive_from_parts
from core.records.rows import Machine, SettingInForce
from core.words import Words, tr

USUAL_TEMPLATE = """steps_x: M92 X{value}
steps_y: M92 Y{value}
steps_z: M92 Z{value}
extruder_steps_mm: M92 E{value}
"""
FIELD = "template"
_PLACE = re.compile(r"\{value(?::(\d))?\}")
_LINE = re.compile(r"\s*([A-Za-z_][A-Za-z0-9_]*)\s*:\s*(.+?)\s*")
_WORD = re.compile(r"(?<![A-Za-z])([A-Za-z])\s*([+-]?(?:\d+\.?\d*|\.\d+))")
_DECIMALS, _MOST_DECIMALS = 4, 9


@dataclass(frozen=True, slots=True)
class Value:
    """A value in force: its name and unit, and where it comes from; `setting` is None where the parts list gives it."""

    name: str
    value: float
    unit: str
    setting: SettingInForce | None = None


@dataclass(frozen=True, slots=True)
class TemplateLine:
    """One line of a template: `code` is its command, `letter` the word that carries the value."""

    name: str
    words: str
    code: str
    letter: str
    decimals: int

    def __post_init__(self) -> None:
        """Refuse decimals that no number has."""
        if not 0 <= self.decimals <= _MOST_DECIMALS:
            raise InputError("template", tr("A number has 0 to {most} decimals, not {count}.", most=_MOST_DECIMALS,
                                            count=self.decimals))  # fmt: skip

    def text(self, number: float) -> str:
        """Return the line with the number in it, with a decimal point in every language."""
        return _PLACE.sub(f"{number:.{self.decimals}f}", self.words)


@dataclass(frozen=True, slots=True)
class Difference:
    """What a pasted listing says other than what is in force; `found` is None where it says nothing."""

    name: str
    in_force: float | None
    found: float | None
    sentence: Words


def values_in_force(machine: Machine, settings: tuple[SettingInForce, ...]) -> tuple[Value, ...]:
    """Return the settings now in force, and for each axis without one what its parts give, by name."""
    found = {f"steps_{axis}": calculated for axis, calculated in _calculated_steps(machine).items()}
    values = {name: Value(name, steps_mm, "steps/mm") for name, steps_mm in found.items()}
    values |= {setting.name: Value(setting.name, setting.new, setting.unit, setting) for setting in settings}
    return tuple(values[name] for name in sorted(values))


def _calculated_steps(machine: Machine) -> dict[str, float]:
    found = {}
    for axis, parts in machine.drives.items():
        try:
            found[axis] = describe_drive(drive_from_parts(parts)).steps_mm
        except InputError:
            continue  # parts that give no value are the business of their own page
    return found


def lines_of_template(text: str) -> tuple[TemplateLine, ...]:
    """Read a template.

    Raises:
        InputError: field `template`: a line without name, command or place of the value, or a name twice.
    """
    found: dict[str, TemplateLine] = {}
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        read = _template_line(line)
        if read is None:
            raise InputError(
                FIELD,
                tr(
                    "Line {number} of the template: write a name, a colon, and a command with {place} behind its "
                    "letter, for example {example}.",
                    number=number,
                    place="{value}",
                    example="steps_x: M92 X{value}",
                ),
                row=number - 1,
            )
        if read.name in found:
            raise InputError(
                FIELD, tr("Line {number} of the template names {name} again.", number=number, name=read.name)
            )
        found[read.name] = read
    return tuple(found.values())


def _template_line(line: str) -> TemplateLine | None:
    named = _LINE.fullmatch(line)
    place = _PLACE.search(named[2]) if named else None
    if named is None or place is None:
        return None
    before = named[2][: place.start()]
    code = _WORD.search(before)
    letter = re.search(r"([A-Za-z])\s*$", before)
    if code is None or letter is None:
        return None
    return TemplateLine(named[1], named[2], _code(code), letter[1].upper(), int(place[1]) if place[1] else _DECIMALS)


def _code(word: re.Match[str]) -> str:
    return f"{word[1].upper()}{float(word[2]):g}"


def controller_lines(template: tuple[TemplateLine, ...], values: tuple[Value, ...]) -> tuple[str, ...]:
    """Return a line for each value in force that the template has one for, in the template's order."""
    known = {value.name: value.value for value in values}
    return tuple(line.text(known[line.name]) for line in template if line.name in known)


def for_slicing(template: tuple[TemplateLine, ...], values: tuple[Value, ...]) -> tuple[Value, ...]:
    """Return the values that go to no controller line: those of the slicing program."""
    lines = {line.name for line in template}
    return tuple(value for value in values if value.name not in lines)


def compare_listing(
    template: tuple[TemplateLine, ...], values: tuple[Value, ...], listing: str
) -> tuple[tuple[Difference, ...], int]:
    """Hold a pasted listing against what is in force; return the differences and how many values agree.

    Raises:
        InputError: field `listing`: it has none of the template's commands in it.
    """
    known = {value.name: value.value for value in values}
    found = _listed({line.code for line in template}, listing)
    if not any((line.code, line.letter) in found for line in template):
        raise InputError(
            "listing",
            tr("The listing has none of the commands of the template in it; paste what the controller answered."),
        )
    differences, agree = [], 0
    for line in template:
        difference = _difference(line, known.get(line.name), found.get((line.code, line.letter)))
        if difference is not None:
            differences.append(difference)
        elif line.name in known:
            agree += 1
    return tuple(differences), agree


def _listed(codes: set[str], listing: str) -> dict[tuple[str, str], str]:
    """Return the number text behind each letter of each command; the last one of a listing counts."""
    found: dict[tuple[str, str], str] = {}
    for line in listing.splitlines():
        code = ""
        for word in _WORD.finditer(line.partition(";")[0]):
            if _code(word) in codes:
                code = _code(word)
            elif code:
                found[code, word[1].upper()] = word[2]
    return found


def _difference(line: TemplateLine, in_force: float | None, text: str | None) -> Difference | None:
    found = None if text is None else float(text)
    command = f"{line.code} {line.letter}"
    if in_force is None:
        if text is None:
            return None
        sentence = tr("{command}: the controller has {found}; here nothing is on record.", command=command, found=text)
        return Difference(line.name, None, found, sentence)
    here = f"{in_force:.{line.decimals}f}"
    if text is None or found is None:
        sentence = tr("{command}: not in the listing; {here} is in force.", command=command, here=here)
        return Difference(line.name, in_force, None, sentence)
    decimals = min(len(text.partition(".")[2]) or line.decimals, line.decimals)
    if abs(found - in_force) <= 0.5 * 10.0**-decimals * (1 + 1e-9):
        return None
    sentence = tr("{command}: the controller has {found}, in force is {here}.", command=command, found=text, here=here)
    return Difference(line.name, in_force, found, sentence)


def template_of(templates: Mapping[str, str]) -> str:
    """Return the template of a machine; the usual one where it has none of its own."""
    return templates.get("settings") or USUAL_TEMPLATE

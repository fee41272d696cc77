"""Lengths in inch for people who measure so. All is stored and computed in mm; only what is shown and read changes.

Which lengths: those of parts and of their errors, which the person reads off an instrument (the subjects below). What
the trade names in mm everywhere stays in mm: filament, nozzle, bead and layer, drive parts, all that goes into
tool paths. Ratios ("mm in 100 mm") stay as they are, for they are the same in any unit.

What a verdict says to enter into a slicing program or a controller stays in mm as well: there it is entered in mm.

A text that says mm says a length: a sentence is converted number by number, its unit with it; a heading that ends in
mm speaks for the bare numbers below it. A no-break space before mm holds a text as it is, see `hold`.
"""

from __future__ import annotations

import re
from typing import Protocol

from PySide6.QtCore import QLocale

from app.inches import inches_shown
from core.quantity import MM_PER_INCH

SUBJECTS = frozenset({
    "reversal", "squareness", "bedplane", "sizeerror", "whose", "shop_split", "promise", "prediction", "instrument",
})  # fmt: skip
HELD = "\u00a0mm"
_MINUS = "−"
_FINEST, _FEWEST = 2, 4  # digits more than in mm, so that none is lost; at least so many, for nominal lengths
_NUMBER = r"\d+(?:[.,]\d+)?(?:e[+-]?\d+)?"
_SIGNED = rf"[+\-{_MINUS}±]?{_NUMBER}"
_BETWEEN = r" ± ?| to | and | or | by | ?× ?| – |–|…| bis | und | oder | mal | auf | zu "
_DECIMAL = rf"[+\-{_MINUS}]?\d+[.,]\d+"
_CHAIN = rf"(?:(?:{_DECIMAL}, )*|(?:{_SIGNED}(?:{_BETWEEN}))*){_SIGNED}(?: ± \?)?"
_UNIT = r"mm(?![\w²³/·])"
_RATIO = re.compile(rf"{_UNIT} (?:per|in|je|auf|pro) 100 mm")
_LENGTH = re.compile(rf"(?<![\w.,/№])({_CHAIN}) {_UNIT}")
_SENTENCES = re.compile(r"(?<=[.!?] )(?=[A-ZÄÖÜ])|(?<=\n)")
_PAIR = re.compile(rf"({_SIGNED})( ± )({_NUMBER})|({_SIGNED})")
_HEADING = re.compile(rf"(?<!\d )(?<=[ ,\n]){_UNIT}|^{_UNIT}$")
_TYPED = re.compile(r"[+\-−]?\s*(?:[\d.,]+|[\d\s/-]+/\d+)")


def inches_for(subject: str) -> bool:
    """Whether the lengths of this subject are shown and read in inch."""
    return inches_shown() and subject in SUBJECTS


class ShowsLengths(Protocol):
    """A part of a page that shows lengths in mm until it is told otherwise."""

    def show_inches(self) -> None:
        """Show them in inch from the next data on."""


def choose_unit(subject: str, *parts: ShowsLengths) -> None:
    """Have the parts of a subject's page show lengths in the unit that the person prefers."""
    if inches_for(subject):
        for part in parts:
            part.show_inches()


def hold(text: str) -> str:
    """Return a text whose lengths stay in mm: a name that a person typed, or what is entered elsewhere in mm."""
    return text.replace(" mm", HELD) if inches_shown() else text


def inch_sentence(text: str) -> str:
    """Return a text for people with every length in it in inch, but for sentences that say a ratio."""
    if "mm" not in text:
        return text
    return "".join(
        says if _RATIO.search(says) else _LENGTH.sub(lambda found: f"{_in_inch(found[1])} in", says)
        for says in _SENTENCES.split(text)
    )


def inch_heading(text: str) -> str:
    """Return a heading or label with inch where it says mm."""
    return _HEADING.sub("in", inch_sentence(text))


def is_length(heading: str) -> bool:
    """Whether a heading says that the bare numbers below it are lengths in mm."""
    return bool(_HEADING.search(inch_sentence(heading)))


def inch_numbers(text: str) -> str:
    """Return the bare numbers below a heading of lengths, such as `+0.040 ± 0.006`, in inch."""
    return _in_inch(text)


def _in_inch(chain: str) -> str:
    return _PAIR.sub(_one, chain)


def _one(found: re.Match[str]) -> str:
    value, between, spread, alone = found.groups()
    if alone is not None:
        return _nominal(alone, _number(alone, _places(alone)))
    U = _mm(spread) / MM_PER_INCH
    places = max(1 - int(f"{U:.1e}".partition("e")[2]), 0) if U else _places(spread)
    return f"{_number(value, places)}{between}{_number(spread, places)}"


def _places(text: str) -> int:
    mantissa, _, exponent = text.partition("e")
    digits = mantissa.replace(",", ".").partition(".")[2]
    return max(len(digits) - int(exponent or 0) + _FINEST, _FEWEST)


def _nominal(text: str, inches: str) -> str:
    """Return inches without the zeros that trail where hardly a decimal was given: such a number is nominal."""
    fine = len(text.replace(",", ".").partition(".")[2]) >= _FINEST
    return inches if fine or not re.search("[.,]", inches) else inches.rstrip("0").rstrip(".,")


def _number(text: str, places: int) -> str:
    """Return a number in inch with its sign and its decimal mark, that of the locale where it has none."""
    sign = text[0] if text[0] in f"+-{_MINUS}±" else ""
    inches = f"{_mm(text.lstrip(sign)) / MM_PER_INCH:.{places}f}"
    mark = next((mark for mark in ",." if mark in text), QLocale().decimalPoint())
    return sign + inches.replace(".", mark)


def _mm(text: str) -> float:
    return float(text.replace(",", "."))


def with_unit(text: str) -> str:
    """Return a typed length with its unit, so that it reads as the same length for ever: without one it is inch."""
    return f"{text}in" if _TYPED.fullmatch(text.strip()) else text


def inch_digits(length_mm: float, step_mm: float = 0.0) -> str:
    """Return a length in mm as the digits of inches: to 0.0001 in at least, or as fine as its last digit in mm.

    Args:
        length_mm: the length.
        step_mm: the worth of its last digit; 0 where it is exact.
    """
    places = _FEWEST
    while step_mm and 10.0**-places * MM_PER_INCH > step_mm and places < 7:
        places += 1
    text = f"{length_mm / MM_PER_INCH:.{places}f}"
    shown = text if step_mm else text.rstrip("0").rstrip(".")
    return "0" if shown in ("-0", "") else shown

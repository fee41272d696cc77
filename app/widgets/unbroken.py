"""Text whose lines do not break between a number, its ± and its unit, nor at the slash within a unit."""

from __future__ import annotations

import re

from PySide6.QtWidgets import QLabel

_JOINER = "\N{WORD JOINER}"
_UNIT = r"%|‰|°|[µmck]?m[²³]?\b|[mk]?g\b|rad\b|(?:steps|Schritte)/mm|(?:ms|min|[shKNVA]|k?Hz)\b"
_NUMBER_AND_UNIT = re.compile(rf"(?<=\d) (?={_UNIT})|(?<=[\w°]) (?=±)|(?<=[±×]) (?=\d)|(?<=\d) (?=×)")
_SLASH = re.compile(  # a line may end behind it
    r"(?<![A-Za-zäöüß/])((?:[µmc]?m[²³]?|k?g|steps|Schritte|rad|°C?|[%‰1KNUs])/)"
    r"(?=(?:[µmc]?m|k?g|ms|min|rev|[shKNU])(?![A-Za-zäöüß]))"
)


def unbroken(text: str) -> str:
    """Return a text to be shown, with what belongs together held in one line."""
    return _SLASH.sub(rf"\1{_JOINER}", _NUMBER_AND_UNIT.sub("\N{NO-BREAK SPACE}", text))


def unjoined(text: str) -> str:
    """Return a shown text as it is to be copied, searched and read aloud."""
    return text.replace(_JOINER, "")


class UnbrokenLabel(QLabel):
    """A label of several lines; `text` is what it was given, and so is what a screen reader is told."""

    def __init__(self, text: str = "") -> None:
        super().__init__()
        self._given = ""
        self.setText(text)

    def setText(self, text: str) -> None:
        """Show other words."""
        self._given, words = text, unbroken(text)
        super().setText(words)
        joined = unjoined(words) != words and "<" not in words  # of rich text Qt tells the words alone
        self.setAccessibleName(text.replace("&", "") if joined else "")

    def text(self) -> str:
        """Return the words without what holds them together."""
        return self._given


def wrapped(name: str) -> UnbrokenLabel:
    """Return a label of several lines in the style of that name."""
    label = UnbrokenLabel()
    label.setObjectName(name)
    label.setWordWrap(True)
    return label

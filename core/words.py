"""Sentences that the core says and the window may translate.

The core knows no Qt, yet its sentences reach the person. `tr` keeps the English template beside the filled-in text, so
that the window can look the template up in its translation and fill in the same values.
"""

from __future__ import annotations

from typing import Any


class Words(str):
    """An English sentence that remembers the template and the values it was made from."""

    template: str
    values: dict[str, Any]

    def __new__(cls, template: str, values: dict[str, Any]) -> Words:
        """Fill the values into the template."""
        words = super().__new__(cls, template.format(**values))
        words.template = template
        words.values = values
        return words

    def __reduce__(self) -> tuple[Any, ...]:
        """Copy and pickle by template and values."""
        return Words, (self.template, self.values)


def tr(template: str, **values: Any) -> Words:
    """Return a translatable sentence; Qt's text extractor finds the template by the name of this function."""
    return Words(template, values)

"""The texts of the help that belong to no page, in the order of their tabs."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

_CONTEXT = "HelpPane"


@dataclass(frozen=True, slots=True)
class Topic:
    """A text: the name of its file below `resources/help`, and its title."""

    key: str
    title: str

    def shown_title(self) -> str:
        """The title in the window's language."""
        return QCoreApplication.translate(_CONTEXT, self.title)


@dataclass(frozen=True, slots=True)
class HelpPlace:
    """Where somebody is in the help of a window, so that another window goes on there.

    Attributes:
        key: of the topic; empty for the help of the page in view.
        share: how far down the text, 0 to 1.
    """

    key: str
    share: float
    is_open: bool
    is_wide: bool


FIRST_STEPS = Topic("walkthrough", str(QT_TRANSLATE_NOOP("HelpPane", "First steps")))
TOPICS: tuple[Topic, ...] = (
    FIRST_STEPS,
    Topic("glossary", str(QT_TRANSLATE_NOOP("HelpPane", "Words"))),
    Topic("keys", str(QT_TRANSLATE_NOOP("HelpPane", "Keys"))),
    Topic("about", str(QT_TRANSLATE_NOOP("HelpPane", "About"))),
)

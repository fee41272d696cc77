"""The list of pages: one line a page. The window loops over it and imports a page when it is first shown."""

from __future__ import annotations

from dataclasses import dataclass
from importlib import import_module
from typing import TYPE_CHECKING

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

if TYPE_CHECKING:
    from app.context import Context
    from app.pages.base import Page


@dataclass(frozen=True, slots=True)
class PageEntry:
    """Where a page stands in the list and where its class is found."""

    key: str
    group: str
    title: str
    module: str
    class_name: str

    def shown_title(self) -> str:
        """The title in the window's language."""
        return QCoreApplication.translate("pages", self.title)

    def shown_group(self) -> str:
        """The heading it stands under, in the window's language."""
        return QCoreApplication.translate("pages", self.group)

    def build(self, context: Context) -> Page:
        """Import the page's class and make the page."""
        page: Page = getattr(import_module(self.module), self.class_name)(context)
        return page


_MACHINE = str(QT_TRANSLATE_NOOP("pages", "Machine geometry"))
_FILAMENT = str(QT_TRANSLATE_NOOP("pages", "Filament"))
_PART = str(QT_TRANSLATE_NOOP("pages", "Part size"))

PAGES: tuple[PageEntry, ...] = (
    PageEntry("drive", _MACHINE, str(QT_TRANSLATE_NOOP("pages", "Drive")),
              "app.pages.machine_geometry.drive", "DrivePage"),
    PageEntry("feed", _FILAMENT, str(QT_TRANSLATE_NOOP("pages", "Feed")), "app.pages.filament.feed", "FeedPage"),
    PageEntry("sizeerror", _PART, str(QT_TRANSLATE_NOOP("pages", "Size error")),
              "app.pages.part_size.sizeerror", "SizeErrorPage"),
)

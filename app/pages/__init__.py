"""The list of pages: one line a page. The window loops over it and imports a page when it is first shown."""

from __future__ import annotations

from dataclasses import dataclass
from importlib import import_module
from typing import TYPE_CHECKING

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

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

    def build(self, context: Context, parent: QWidget | None = None) -> Page:
        """Import the page's class and make the page; to be given its place later would dress all of it anew."""
        page: Page = getattr(import_module(self.module), self.class_name)(context, parent)
        page.setAccessibleName(self.shown_title())
        return page


_SHOP = str(QT_TRANSLATE_NOOP("pages", "Shop"))
_MACHINE = str(QT_TRANSLATE_NOOP("pages", "Machine geometry"))
_FILAMENT = str(QT_TRANSLATE_NOOP("pages", "Filament"))
_FLOW = str(QT_TRANSLATE_NOOP("pages", "Flow trials"))
_PART = str(QT_TRANSLATE_NOOP("pages", "Part size"))
_MOTION = str(QT_TRANSLATE_NOOP("pages", "Motion trials"))
_BENCH = str(QT_TRANSLATE_NOOP("pages", "Bench"))

PAGES: tuple[PageEntry, ...] = (
    PageEntry("board", _SHOP, str(QT_TRANSLATE_NOOP("pages", "Board")), "app.pages.shop.board", "BoardPage"),
    PageEntry("walk", _SHOP, str(QT_TRANSLATE_NOOP("pages", "Walk")), "app.pages.shop.walk", "WalkPage"),
    PageEntry("logbook", _SHOP, str(QT_TRANSLATE_NOOP("pages", "Logbook")), "app.pages.shop.logbook", "LogbookPage"),
    PageEntry("storage", _SHOP, str(QT_TRANSLATE_NOOP("pages", "Storage")),
              "app.pages.shop.storage", "StoragePage"),
    PageEntry("drive", _MACHINE, str(QT_TRANSLATE_NOOP("pages", "Drive")),
              "app.pages.machine_geometry.drive", "DrivePage"),
    PageEntry("reversal", _MACHINE, str(QT_TRANSLATE_NOOP("pages", "Reversal")),
              "app.pages.machine_geometry.reversal", "ReversalPage"),
    PageEntry("squareness", _MACHINE, str(QT_TRANSLATE_NOOP("pages", "Squareness")),
              "app.pages.machine_geometry.squareness", "SquarenessPage"),
    PageEntry("bedplane", _MACHINE, str(QT_TRANSLATE_NOOP("pages", "Bed plane")),
              "app.pages.machine_geometry.bedplane", "BedPlanePage"),
    PageEntry("firstlayer", _MACHINE, str(QT_TRANSLATE_NOOP("pages", "First layer")),
              "app.pages.machine_geometry.firstlayer", "FirstLayerPage"),
    PageEntry("lots", _FILAMENT, str(QT_TRANSLATE_NOOP("pages", "Lots")), "app.pages.filament.lots", "LotsPage"),
    PageEntry("diameter", _FILAMENT, str(QT_TRANSLATE_NOOP("pages", "Diameter")),
              "app.pages.filament.diameter", "DiameterPage"),
    PageEntry("feed", _FILAMENT, str(QT_TRANSLATE_NOOP("pages", "Feed")), "app.pages.filament.feed", "FeedPage"),
    PageEntry("wall", _FLOW, str(QT_TRANSLATE_NOOP("pages", "Wall")), "app.pages.flow_trials.wall", "WallPage"),
    PageEntry("mass", _FLOW, str(QT_TRANSLATE_NOOP("pages", "Mass")), "app.pages.flow_trials.mass", "MassPage"),
    PageEntry("top", _FLOW, str(QT_TRANSLATE_NOOP("pages", "Top pads")), "app.pages.flow_trials.top", "TopPage"),
    PageEntry("ceiling", _FLOW, str(QT_TRANSLATE_NOOP("pages", "Ceiling")),
              "app.pages.flow_trials.ceiling", "CeilingPage"),
    PageEntry("sizeerror", _PART, str(QT_TRANSLATE_NOOP("pages", "Size error")),
              "app.pages.part_size.sizeerror", "SizeErrorPage"),
    PageEntry("whose", _PART, str(QT_TRANSLATE_NOOP("pages", "Whose error")),
              "app.pages.part_size.whose", "WhosePage"),
    PageEntry("shop_split", _PART, str(QT_TRANSLATE_NOOP("pages", "Shop split")),
              "app.pages.part_size.shop_split", "ShopSplitPage"),
    PageEntry("promise", _PART, str(QT_TRANSLATE_NOOP("pages", "Promise")),
              "app.pages.part_size.promise", "PromisePage"),
    PageEntry("prediction", _PART, str(QT_TRANSLATE_NOOP("pages", "Prediction")),
              "app.pages.part_size.prediction", "PredictionPage"),
    PageEntry("speed", _MOTION, str(QT_TRANSLATE_NOOP("pages", "Speed")),
              "app.pages.motion_trials.speed", "SpeedPage"),
    PageEntry("ringing", _MOTION, str(QT_TRANSLATE_NOOP("pages", "Ringing")),
              "app.pages.motion_trials.ringing", "RingingPage"),
    PageEntry("ladder", _MOTION, str(QT_TRANSLATE_NOOP("pages", "Ladder")),
              "app.pages.motion_trials.ladder", "LadderPage"),
    PageEntry("pieces", _BENCH, str(QT_TRANSLATE_NOOP("pages", "Pieces")), "app.pages.bench.pieces", "PiecesPage"),
    PageEntry("instruments", _BENCH, str(QT_TRANSLATE_NOOP("pages", "Instruments")),
              "app.pages.bench.instruments", "InstrumentsPage"),
    PageEntry("toolpaths", _BENCH, str(QT_TRANSLATE_NOOP("pages", "Toolpaths")),
              "app.pages.bench.toolpaths", "ToolpathsPage"),
    PageEntry("charts", _BENCH, str(QT_TRANSLATE_NOOP("pages", "Charts")), "app.pages.bench.charts", "ChartsPage"),
)

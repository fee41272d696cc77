"""What the window remembers of its looks from one start to the next: its place on the screen, and widths of columns."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QRect, QSettings
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QHeaderView, QTableView
from shiboken6 import isValid

from app.faults import or_else

if TYPE_CHECKING:
    from PySide6.QtCore import QSize
    from PySide6.QtWidgets import QMainWindow, QWidget

_GEOMETRY, _PLACE, _FRAMED, _COLUMNS = "geometry", "place", "framed", "columns"
_LEAST_PX = 20  # wide
_ICON = Path(__file__).resolve().parents[1] / "resources" / "icons" / "slipgauge.png"


def show_icon(window: QMainWindow) -> None:
    """Give the window its icon; after the first paint, for it is slow to load."""
    from PySide6.QtGui import QIcon

    window.setWindowIcon(QIcon(str(_ICON)))


def restore_place(window: QMainWindow, settings: QSettings, usual: QSize) -> None:
    """Put the window where it was left; where that is not whole on a screen any more, as near as it can be."""
    geometry = settings.value(_GEOMETRY)
    if geometry is None or not window.restoreGeometry(geometry):
        window.resize(usual)
    if window.isMaximized() or window.isFullScreen():
        return
    place, framed = _place_left(window, settings)
    fitted = fit(framed, [screen.availableGeometry() for screen in QGuiApplication.screens()])
    inside = fitted.adjusted(
        place.left() - framed.left(), place.top() - framed.top(), place.right() - framed.right(),
        place.bottom() - framed.bottom(),
    )  # fmt: skip
    if inside != window.geometry():
        window.setGeometry(inside)


def _place_left(window: QMainWindow, settings: QSettings) -> tuple[QRect, QRect]:
    """Return where the window was left, without its frame and with it.

    `restoreGeometry` keeps room for a frame also where there is none, as without a window manager: there the window
    would come back lower each time.
    """
    place, framed = settings.value(_PLACE), settings.value(_FRAMED)
    if isinstance(place, QRect) and isinstance(framed, QRect) and framed.contains(place):
        return place, framed
    return window.geometry(), window.frameGeometry()


def keep_place(window: QMainWindow, settings: QSettings) -> None:
    """Remember place and size, and whether the window was maximised."""
    settings.setValue(_GEOMETRY, window.saveGeometry())
    if not window.isMaximized() and not window.isFullScreen():
        settings.setValue(_PLACE, window.geometry())
        settings.setValue(_FRAMED, window.frameGeometry())


def fit(wanted: QRect, rooms: list[QRect]) -> QRect:
    """Return the rectangle moved, and if need be made smaller, to lie whole on the screen it shares most with."""
    if not rooms:
        return wanted

    def shared(room: QRect) -> int:
        common = room.intersected(wanted)
        return max(common.width(), 0) * max(common.height(), 0)

    room = max(rooms, key=shared)  # the first one where it shares nothing with any
    fitted = QRect(wanted)
    fitted.setSize(wanted.size().boundedTo(room.size()))
    fitted.moveLeft(max(room.left(), min(fitted.left(), room.right() + 1 - fitted.width())))
    fitted.moveTop(max(room.top(), min(fitted.top(), room.bottom() + 1 - fitted.height())))
    return fitted


class ColumnWidths(QObject):
    """Remembers the columns that a person made wider or narrower, and brings them back when a table is filled anew."""

    def __init__(self, settings: QSettings, parent: QObject) -> None:
        super().__init__(parent)
        self._settings = settings
        self._pressed: dict[QObject, list[int]] = {}
        self._headers: dict[QObject, tuple[QHeaderView, str]] = {}

    def watch(self, page: QWidget, key: str) -> None:
        """Bring the widths of a page's tables back, and follow the mouse on their headings from now on."""
        for place, table in enumerate(page.findChildren(QTableView)):
            header = table.horizontalHeader()
            self._headers[header.viewport()] = header, f"{_COLUMNS}/{key}.{place}"
            header.viewport().installEventFilter(self)
            again = partial(self._apply, header.viewport())
            table.model().modelReset.connect(again)
            again()

    @or_else(False)
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Remember the widths that change between the press of the mouse and its release."""
        if event.type() == QEvent.Type.MouseButtonPress:
            self._pressed[watched] = _widths(self._headers[watched][0])
        elif event.type() == QEvent.Type.MouseButtonRelease and watched in self._pressed:
            header, key = self._headers[watched]
            before = self._pressed.pop(watched)
            for column, (old, new) in enumerate(zip(before, _widths(header), strict=False)):
                if old != new and _is_free(header, column):
                    self._settings.setValue(f"{key}/{column}", new)
        return super().eventFilter(watched, event)

    def _apply(self, viewport: QObject) -> None:
        header, key = self._headers[viewport]
        for column in range(header.count() if isValid(header) else 0):  # a model may outlive its table
            kept = self._settings.value(f"{key}/{column}")
            if kept is not None and str(kept).isdigit() and _is_free(header, column):
                header.resizeSection(column, max(int(str(kept)), _LEAST_PX))


def _widths(header: QHeaderView) -> list[int]:
    return [header.sectionSize(column) for column in range(header.count())]


def _is_free(header: QHeaderView, column: int) -> bool:
    """Whether the person may set the width; the others share what is left over."""
    return header.sectionResizeMode(column) == QHeaderView.ResizeMode.Interactive

"""A text of the help with its pictures: they are as wide as there is room for and stay so when the room changes."""

from __future__ import annotations

import re
from pathlib import Path

from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QImage, QResizeEvent, QTextDocument
from PySide6.QtWidgets import QFrame, QTextBrowser, QWidget

_PICTURE = re.compile(r"!\[[^\]]*\]\(([^)\s]+\.png)\)")


class HelpText(QTextBrowser):
    """Shows Markdown; no link is followed. Pictures are never shown larger than they are."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setOpenLinks(False)
        self._pictures: dict[str, QImage] = {}
        self._fitted_px = 0

    def show_text(self, markdown: str, folder: Path) -> None:
        """Show a text whose pictures are named from this folder."""
        self.document().setBaseUrl(QUrl.fromLocalFile(f"{folder}/"))
        self.setMarkdown(markdown)
        pictures = {name: QImage(str((folder / name).resolve())) for name in _PICTURE.findall(markdown)}
        self._pictures = {name: picture for name, picture in pictures.items() if not picture.isNull()}
        self._fitted_px = 0
        self._fit_pictures()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Let the pictures follow."""
        super().resizeEvent(event)
        self._fit_pictures()

    def _fit_pictures(self) -> None:
        """Scale the pictures to the width there is, in the pixels of the screen."""
        width_px = self.viewport().width() - 2 * round(self.document().documentMargin())
        if width_px == self._fitted_px or not self._pictures:
            return
        self._fitted_px = width_px
        ratio, document = self.devicePixelRatioF(), self.document()
        for name, picture in self._pictures.items():
            wide_px = min(width_px, picture.width())
            shown = picture.scaledToWidth(round(wide_px * ratio), Qt.TransformationMode.SmoothTransformation)
            shown.setDevicePixelRatio(ratio)
            address = document.baseUrl().resolved(QUrl(name))
            document.addResource(QTextDocument.ResourceType.ImageResource, address, shown)
        document.markContentsDirty(0, document.characterCount())

"""Pictures for the logbook: read from a file, turned upright, made small, and shown again."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QImage, QImageReader, QImageWriter, QPainter, QPixmap

from core.errors import InputError
from core.words import tr

LONGEST_PX = 1600
MIME = "image/jpeg"
_LARGEST_PX = 20_000  # per side: more is no photograph, and would fill the memory
_QUALITY = 85


def small_picture(path: str) -> bytes:
    """Return a picture file as a JPEG of at most 1600 pixels a side, without what a camera writes beside it.

    Raises:
        InputError: field `picture`: no picture that can be read.
    """
    if not Path(path).is_file():  # a pipe or a device never ends
        raise InputError("picture", tr("{file} is not there or is not a file; check its name.", file=path))
    reader = QImageReader(path)
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid() and max(size.width(), size.height()) > _LARGEST_PX:
        raise InputError(
            "picture",
            tr("{name} is larger than {most} pixels a side; make it smaller.", name=Path(path).name, most=_LARGEST_PX),
        )
    if size.isValid() and max(size.width(), size.height()) > LONGEST_PX:
        reader.setScaledSize(size.scaled(LONGEST_PX, LONGEST_PX, Qt.AspectRatioMode.KeepAspectRatio))
    image = reader.read()
    if image.isNull():
        raise InputError(
            "picture",
            tr("{name} is no picture that can be read here; choose a JPEG or PNG file.", name=Path(path).name),
        )
    return jpeg_bytes(image)


def jpeg_bytes(image: QImage) -> bytes:
    """Return a picture as JPEG on white where it was clear."""
    whole = QImage(image.size(), QImage.Format.Format_RGB32)
    whole.fill(Qt.GlobalColor.white)
    painter = QPainter(whole)
    painter.drawImage(0, 0, image)
    painter.end()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(buffer, QByteArray(b"jpeg"))
    writer.setQuality(_QUALITY)
    writer.write(whole)
    return bytes(buffer.data().data())


def picture_of(content: bytes, size: QSize) -> QPixmap:
    """Return a kept picture that fits into a size; empty where the bytes are no picture."""
    image = QImage.fromData(content)
    if image.isNull():
        return QPixmap()
    return QPixmap.fromImage(
        image.scaled(size, Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode.SmoothTransformation)
    )

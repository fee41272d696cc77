"""Random hands on the window: keys, clicks, pastes, dropped files, other pages, other sizes."""

from __future__ import annotations

import itertools
import os
import random
from pathlib import Path

from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication, QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QFileDialog, QWidget

TEXTS = (
    "12.34", "12,34", "-0.5", "1e400", "nan", "inf", "∞", "1.234.567", "5 1/8", "1/0", "0x1F", "５.０１", "=1+1",
    "@SUM(A1)", "", " ", "\t\n\r", "1\t2\t3\n4\t5\t6", "a" * 5000, "\x00\x07\x1b", "😀", "-" * 40, "9" * 400,
    "{brace} {0} %s", "<b>bold</b>", "12.34 mm", "0.5in", "µ", "20\u202f000", "\u202e12.5", "1;2;3",
    "[" * 3000, "=cmd|' /C calc'!A0", "\ufeff12,5", "\ud83d", "1\t=2\n@x\t-3", "12.5\r\n12.6\r12.7", "1e-320", "1e308",
    "\n".join(str(10 + n / 7) for n in range(200)),
)  # fmt: skip
KEYS = (
    *"0123456789.,-+*/ abcxyz{}%=", Qt.Key.Key_Return, Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab,
    Qt.Key.Key_Tab, Qt.Key.Key_Backtab, Qt.Key.Key_Escape, Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_Up,
    Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Home, Qt.Key.Key_End, Qt.Key.Key_PageUp,
    Qt.Key.Key_PageDown, Qt.Key.Key_F1, Qt.Key.Key_F2, Qt.Key.Key_Space,
)  # fmt: skip
SHORTCUTS = "SAZYCVXKERN123456789"
_CTRL, _ALT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier
_PLAIN = Qt.KeyboardModifier.NoModifier


class Hands:
    """One pair of hands with a seed of its own; `work` does one thing and says what."""

    def __init__(self, window: QWidget, folder: Path, seed: int) -> None:
        self.window, self.folder, self.random = window, folder, random.Random(seed)
        self.files = _hostile_files(folder)
        self.actions = (
            *[self._key] * 12, *[self._shortcut] * 3, *[self._type_text] * 4, *[self._paste] * 2, *[self._click] * 5,
            *[self._choose] * 2, self._drop, self._turn_page, self._resize,
        )  # fmt: skip

    def work(self) -> str:
        """Do one random thing to whatever has the keyboard or can be clicked."""
        did = self.random.choice(self.actions)()
        QApplication.processEvents()
        self._close_popups()
        return did

    def _target(self) -> QWidget:
        return QApplication.focusWidget() or self.window

    def _key(self) -> str:
        key, target = self.random.choice(KEYS), self._target()
        if isinstance(key, str):
            QTest.keyClicks(target, key)
        else:
            QTest.keyClick(target, key)
        return f"key {key!r} on {_name(target)}"

    def _shortcut(self) -> str:
        letter, modifier = self.random.choice(SHORTCUTS), self.random.choice((_CTRL, _CTRL, _ALT))
        target = self._target()
        QTest.keyClick(target, Qt.Key(ord(letter)), modifier)
        return f"{modifier} {letter} on {_name(target)}"

    def _type_text(self) -> str:
        text, target = self.random.choice(TEXTS)[:40].replace("\x00", ""), self._target()
        for letter in text:
            if letter.isascii() and letter.isprintable():
                QTest.keyClicks(target, letter)
            elif letter.isprintable():  # no key of its own: as an input method would
                QApplication.sendEvent(target, QKeyEvent(QEvent.Type.KeyPress, 0, _PLAIN, letter))
        QTest.keyClick(target, Qt.Key.Key_Return)
        return f"type {text!r} on {_name(target)}"

    def _paste(self) -> str:
        text, target = self.random.choice(TEXTS), self._target()
        QGuiApplication.clipboard().setText(text)
        QTest.keyClick(target, Qt.Key.Key_V, _CTRL)
        return f"paste {text[:30]!r} on {_name(target)}"

    def _click(self) -> str:
        seen = [button for button in self.window.findChildren(QAbstractButton) if _can_be_clicked(button)]
        if not seen:
            return "nothing to click"
        button = self.random.choice(seen)
        name = _name(button)
        QTest.mouseClick(button, Qt.MouseButton.LeftButton, _PLAIN, QPoint(6, button.height() // 2))
        return f"click {name}"

    def _choose(self) -> str:
        seen = [combo for combo in self.window.findChildren(QComboBox) if combo.isVisible() and combo.isEnabled()]
        if not seen:
            return "nothing to choose"
        combo = self.random.choice(seen)
        place = self.random.randrange(max(combo.count(), 1))
        combo.setCurrentIndex(place)
        combo.activated.emit(place)
        return f"choose {place} in {_name(combo)}"

    def _drop(self) -> str:
        data, file = QMimeData(), self.random.choice(self.files)
        data.setUrls([QUrl.fromLocalFile(str(file))])
        seen = [widget for widget in self.window.findChildren(QWidget) if widget.isVisible() and widget.acceptDrops()]
        if not seen:
            return "nowhere to drop"
        target, where = self.random.choice(seen), QPointF(4, 4)
        answers = Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton, _PLAIN
        QApplication.sendEvent(target, QDragEnterEvent(where.toPoint(), *answers))
        QApplication.sendEvent(target, QDropEvent(where, *answers))
        return f"drop {file.name} on {_name(target)}"

    def _turn_page(self) -> str:
        key = self.random.choice(list(self.window.rail.pages))
        self.window.enter_page(key)
        return f"page {key}"

    def _resize(self) -> str:
        self.window.resize(self.random.randrange(400, 1800), self.random.randrange(300, 1100))
        return "resize"

    def _close_popups(self) -> None:
        while (popup := QApplication.activePopupWidget()) is not None and self.random.random() < 0.5:
            popup.close()
        if (dialog := QApplication.activeModalWidget()) is not None and self.random.random() < 0.3:
            dialog.close()


def answer_file_dialogs(patch, folder: Path) -> None:
    """Let the system's file dialogs answer at once: a place in the folder, or one hostile file after the other."""
    answer = str(folder / "chosen")
    patch(QFileDialog, "getSaveFileName", staticmethod(lambda *_a, **_k: (answer, "")))
    opened = itertools.cycle(sorted(str(file) for file in _hostile_files(folder)))
    patch(QFileDialog, "getOpenFileName", staticmethod(lambda *_a, **_k: (next(opened), "")))
    patch(QFileDialog, "getExistingDirectory", staticmethod(lambda *_a, **_k: str(folder)))


def _can_be_clicked(button: QAbstractButton) -> bool:
    return button.isVisible() and button.isEnabled()


def _name(widget: QWidget) -> str:
    said = getattr(widget, "text", None)
    text = said() if callable(said) and isinstance(widget, QAbstractButton) else widget.accessibleName()
    return f"{type(widget).__name__} “{text}”"


def _hostile_files(folder: Path) -> list[Path]:
    contents = {
        "binary.csv": bytes(range(256)) * 64,
        "empty.csv": b"",
        "long_line.csv": b"1," * 100_000,
        "deep.json": b"[" * 10_000,
        "formula.csv": b"axis,kind,nominal_mm,measured_mm\n=1+1,@x,+5,-cmd\n",
        "twice.json": b'{"program":"slipgauge","program":{"$float":[]}}',
        "long_number.json": b'{"rows":' + b"9" * 6000 + b"}",
        "hostile.gcode": b"G1 X1e999 Y1..2 F\nG2 I J R0\n\x00\xffG91\nM83 E9e99\n" * 50,
        "log.csv": b"time,x\n0,1\n0,nan\n1e999,2\n" * 200,
        "picture.png": b"\x89PNG\r\n\x1a\n" + bytes(range(256)),
        "latin.csv": "größe,maß\n1,5;2,5\n".encode("latin-1"),
    }
    for name, content in contents.items():
        (folder / name).write_bytes(content)
    loop, pipe, zero = (folder / name for name in ("loop.csv", "pipe.json", "zero.gcode"))
    if not pipe.exists():
        loop.symlink_to(loop)
        os.mkfifo(pipe)
        zero.symlink_to("/dev/zero")
    return [*(folder / name for name in contents), loop, pipe, zero, folder, folder / "gone.csv"]

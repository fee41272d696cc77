"""Random hands on the window: keys, clicks, pastes, dropped files, other pages, sizes, languages, another start."""

from __future__ import annotations

import itertools
import random
from pathlib import Path

from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import (
    QContextMenuEvent,
    QDragEnterEvent,
    QDropEvent,
    QGuiApplication,
    QInputMethodEvent,
    QKeyEvent,
    QWheelEvent,
)
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QFileDialog, QMenu, QWidget

from app.mainwindow import MainWindow
from app.viewmenu import view_choices
from tests.fuzz.files import hostile_files
from tests.fuzz.seat import Seat

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

    def __init__(self, seat: Seat, seed: int) -> None:
        self.seat, self.random = seat, random.Random(seed)
        self.files = hostile_files(seat.folder)
        often = {
            self._key: 120, self._shortcut: 30, self._type_text: 40, self._paste: 20, self._click: 50,
            self._choose: 20, self._mouse: 15, self._drop: 10, self._turn_page: 10, self._resize: 5, self._look: 3,
            self._hold_up: 2, self._move_away: 1, self._begin_anew: 2, self._compose: 5,
        }  # fmt: skip
        self.actions, self.shares = list(often), list(often.values())

    @property
    def window(self) -> MainWindow:
        """The window that is in sight now."""
        return self.seat.window

    def work(self) -> str:
        """Do one random thing to whatever has the keyboard or can be clicked."""
        dialog = QApplication.activeModalWidget()  # first of all: without it nothing else can be reached
        did = self._answer(dialog) if dialog else self.random.choices(self.actions, self.shares)[0]()
        self.seat.settle()
        self._use_menus()
        return did

    def _answer(self, dialog: QWidget) -> str:
        """Type into a dialog, press one of its buttons, or close it."""
        kind = self.random.choice(("key", "button", "close"))
        buttons = [button for button in dialog.findChildren(QAbstractButton) if _can_be_clicked(button)]
        name = type(dialog).__name__
        if kind == "key":
            return f"{self._key()} in {name}"
        if kind == "button" and buttons:
            button = self.random.choice(buttons)
            name = _name(button)
            button.click()
            return f"answer {name}"
        dialog.close()
        return f"close {name}"

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

    def _mouse(self) -> str:
        """Click twice, turn the wheel or ask for the menu of something in sight."""
        seen = [widget for widget in self.window.findChildren(QWidget) if widget.isVisible() and widget.isEnabled()]
        if not seen:
            return "nothing in sight"
        target = self.random.choice(seen)
        name, kind = _name(target), self.random.choice(("twice", "wheel", "menu"))
        at = QPoint(self.random.randrange(max(target.width(), 1)), self.random.randrange(max(target.height(), 1)))
        if kind == "twice":
            QTest.mouseDClick(target, Qt.MouseButton.LeftButton, _PLAIN, at)
        elif kind == "menu":
            event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, at, target.mapToGlobal(at))
            QApplication.sendEvent(target, event)
        else:
            turn = QPoint(0, self.random.choice((-120, 120, 2400)))
            where, modifier = QPointF(at), self.random.choice((_PLAIN, _CTRL))
            wheel = (turn, turn, Qt.MouseButton.NoButton, modifier, Qt.ScrollPhase.NoScrollPhase, False)
            QApplication.sendEvent(target, QWheelEvent(where, QPointF(target.mapToGlobal(at)), *wheel))
        return f"mouse {kind} on {name}"

    def _compose(self) -> str:
        """Enter letters as an input method does that composes them of several keys."""
        target, text = self._target(), self.random.choice(TEXTS)[:20]
        name, event = _name(target), QInputMethodEvent("´", [])
        event.setCommitString(text)
        QApplication.sendEvent(target, event)
        return f"compose {text!r} on {name}"

    def _look(self) -> str:
        """Ask for another language, unit of lengths or theme."""
        kind, choice, _text = self.random.choice(view_choices())
        if self.random.random() < 0.5:
            self.window.theme_asked.emit(self.random.random() < 0.5)
            return "theme"
        self.window.view_asked.emit(kind, choice)
        return f"{kind} {choice}"

    def _hold_up(self) -> str:
        return self.seat.hold_up()

    def _move_away(self) -> str:
        return self.seat.move_away()

    def _begin_anew(self) -> str:
        self.seat.let_go()
        ways = self.seat.ways()
        way = self.random.choice(list(ways))
        self.seat.begin(ways[way])
        return f"begin anew: {way}"

    def _use_menus(self) -> None:
        """Choose from the menus that are open, or close them."""
        for _ in range(5):
            menu = QApplication.activePopupWidget()
            if menu is None:
                return
            offered = [one for one in menu.actions() if one.isEnabled() and not one.isSeparator()]
            if isinstance(menu, QMenu) and offered and self.random.random() < 0.5:
                self.random.choice(offered).trigger()
            menu.close()
            self.seat.settle()


def answer_file_dialogs(patch, folder: Path) -> None:
    """Let the system's file dialogs answer at once: a place in the folder, or one hostile file after the other."""
    answer = str(folder / "chosen")
    patch(QFileDialog, "getSaveFileName", staticmethod(lambda *_a, **_k: (answer, "")))
    opened = itertools.cycle(sorted(str(file) for file in hostile_files(folder)))
    patch(QFileDialog, "getOpenFileName", staticmethod(lambda *_a, **_k: (next(opened), "")))
    patch(QFileDialog, "getExistingDirectory", staticmethod(lambda *_a, **_k: str(folder)))


def _can_be_clicked(button: QAbstractButton) -> bool:
    return button.isVisible() and button.isEnabled()


def _name(widget: QWidget) -> str:
    said = getattr(widget, "text", None)
    text = said() if callable(said) and isinstance(widget, QAbstractButton) else widget.accessibleName()
    return f"{type(widget).__name__} “{text}”"

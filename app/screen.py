"""Whether a window can open here: asked before Qt, which would end the process without a word of ours."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

_OLD_PYTHON, _BAD_QT = (3, 12), (6, 12)


def display_missing(platform: str, environ: Mapping[str, str]) -> str:
    """Return a sentence if there is no screen to open a window on, else an empty text."""
    names = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    if not platform.startswith("linux") or any(environ.get(name) for name in names):
        return ""
    return (
        "There is no display here, so no window can open (neither DISPLAY nor WAYLAND_DISPLAY is set). Start again on "
        "a desktop, or evaluate a file of readings without a window (python -m app analyse), here:\n"
        f"    {sys.executable or 'python'} -m app analyse readings.csv"
    )


def display_dead(platform: str, environ: Mapping[str, str]) -> str:
    """Return a sentence if DISPLAY names a screen that does not answer: Qt would abort; else an empty text."""
    others = environ.get("WAYLAND_DISPLAY") or environ.get("QT_QPA_PLATFORM", "xcb") != "xcb"
    if not platform.startswith("linux") or others:
        return ""
    import ctypes

    try:
        x11 = ctypes.CDLL("libX11.so.6")
    except OSError:
        return ""  # Qt says what is missing
    x11.XOpenDisplay.restype, x11.XCloseDisplay.argtypes = ctypes.c_void_p, (ctypes.c_void_p,)
    screen = x11.XOpenDisplay(environ["DISPLAY"].encode())
    if screen:
        x11.XCloseDisplay(screen)
        return ""
    return (
        f"No display answers at {environ['DISPLAY']} (DISPLAY), so no window can open. Start again on a running "
        "desktop, or evaluate a file of readings without a window:\n"
        f"    {sys.executable or 'python'} -m app analyse readings.csv"
    )


def qt_refused() -> str:
    """Refuse the one known bad pair: it drops references to None until the process aborts."""
    from PySide6 import __version__, __version_info__

    if sys.version_info < _OLD_PYTHON and __version_info__[:2] >= _BAD_QT:
        return (
            f"PySide6 {__version__} aborts on Python {sys.version_info[0]}.{sys.version_info[1]}. Install an older one "
            f'with: {sys.executable} -m pip install "PySide6-Essentials<6.12"  or use Python 3.12 or newer.'
        )
    return ""

"""The language of the window and the unit of its lengths, as the person chose them; English is the source."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QLibraryInfo, QLocale, QSettings, QTranslator
from PySide6.QtWidgets import QApplication

from app.inches import show_inches

TRANSLATIONS = Path(__file__).resolve().parents[1] / "resources" / "translations"
LANGUAGE, LENGTHS = "language", "lengths"  # what can be chosen
SYSTEM, MM, INCH = "system", "mm", "inch"
LANGUAGES = (SYSTEM, "en", "de")
UNITS = (MM, INCH)


@dataclass(frozen=True, slots=True)
class View:
    """What the person reads: `language` of LANGUAGES, `lengths` of UNITS."""

    language: str = SYSTEM
    lengths: str = MM


_applied = [View()]  # as Qt's default locale, one for the program
_speaking: list[QTranslator] = []


def current_view() -> View:
    """Return what is shown now."""
    return _applied[0]


def chosen_view(settings: QSettings, language: str | None, lengths: str | None) -> View:
    """Return what the command line says, else what was chosen last time; what is not known counts as not chosen."""
    language = language or str(settings.value(LANGUAGE, ""))
    lengths = lengths or str(settings.value(LENGTHS, ""))
    return View(language if language in LANGUAGES else SYSTEM, lengths if lengths in UNITS else MM)


def apply_view(app: QApplication, view: View, folder: Path = TRANSLATIONS) -> None:
    """Speak the language and write numbers and dates as it does; what was spoken before goes."""
    while _speaking:
        translator = _speaking.pop()
        app.removeTranslator(translator)
        translator.deleteLater()
    _applied[0] = view
    locale = _locale_of(view.language)
    QLocale.setDefault(locale)
    show_inches(view.lengths == INCH)
    if locale.language() not in (QLocale.Language.English, QLocale.Language.C):
        _install(app, locale, "slipgauge", str(folder))
        _install(app, locale, "qtbase", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath))


def _locale_of(language: str) -> QLocale:
    """Return the locale of a language: that of the system where it speaks it, for it knows the country."""
    system, wanted = QLocale.system(), QLocale(language)
    if language == SYSTEM or system.language() == wanted.language():
        return system
    if language != "en":
        return wanted
    return system if system.language() == QLocale.Language.C else QLocale("en_GB")  # day before month, as around here


def _install(app: QApplication, locale: QLocale, name: str, folder: str) -> None:
    translator = QTranslator(app)
    if translator.load(locale, name, "_", folder):
        app.installTranslator(translator)
        _speaking.append(translator)
    else:
        translator.deleteLater()

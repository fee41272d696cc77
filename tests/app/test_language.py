"""The language of the window: chosen, kept, spoken by every class, and gone when another one is chosen."""

from __future__ import annotations

import ast
import json
import subprocess
from dataclasses import replace
from importlib import import_module
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QLocale, QObject, QSettings, QTranslator
from PySide6.QtWidgets import QApplication

from app import language
from app.language import View, apply_view, chosen_view, current_view
from app.pages.trialcard import kept_card
from app.widgets.fields import LengthField, local_text, number_text
from app.words import local_numbers, shown
from core.errors import InputError
from core.guidance.verdict import Advice, Setting, without_templates
from core.records.rows import Trial
from core.words import tr
from tests.translate.__main__ import TEXTS, messages, tool

ROOT = Path(__file__).resolve().parents[2]
TINY = """<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
<context><name></name>
<message><source>Row {row}: {says}</source><translation>Zeile {row}: {says}</translation></message>
</context>
<context><name>LineField</name>
<message><source>Nothing is typed here yet; this one is needed.</source>
<translation>Hier fehlt etwas.</translation></message>
</context>
</TS>
"""


@pytest.fixture
def german(qapp, tmp_path):
    """A translation of two sentences; English, mm and the locale of the system afterwards."""
    (tmp_path / "tiny.ts").write_text(TINY, encoding="utf-8")
    command = [tool("pyside6-lrelease"), str(tmp_path / "tiny.ts"), "-qm", str(tmp_path / "slipgauge_de.qm")]
    subprocess.run(command, check=True, capture_output=True)
    before = QLocale()
    yield tmp_path
    apply_view(qapp, View())
    QLocale.setDefault(before)


def needed() -> str:
    """What an empty length field says: the sentence stands in a class two above it."""
    field = LengthField(required=True)
    try:
        field.value()
    except InputError as error:
        return error.message
    return ""


def test_a_language_is_spoken_by_core_and_window_with_its_decimal_mark(qapp, german):
    apply_view(qapp, View("de"), german)
    inner = tr("Row {row}: {says}", row=1, says=0.5)
    assert shown(tr("Row {row}: {says}", row=2, says=inner)) == "Zeile 2: Zeile 1: 0,5"
    assert needed() == "Hier fehlt etwas."
    assert (number_text(1.5), local_text("-0.25")) == ("1,5", "−0,25")
    assert current_view() == View("de")


def test_back_in_english_nothing_of_it_is_left(qapp, german):
    apply_view(qapp, View("de"), german)
    apply_view(qapp, View("en"), german)
    assert shown(tr("Row {row}: {says}", row=2, says="no")) == "Row 2: no"
    assert needed().startswith("Nothing is typed")
    assert number_text(1.5) == "1.5"
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert qapp.findChildren(QTranslator) == []


@pytest.mark.usefixtures("german")
def test_both_decimal_marks_are_read_in_every_language(qapp):
    for chosen in ("en", "de"):
        apply_view(qapp, View(chosen))
        field = LengthField()
        assert [field.read(text) for text in ("12.5", "12,5", "12,5 mm")] == [12.5] * 3


def test_names_versions_and_addresses_keep_their_points(qapp, german):
    apply_view(qapp, View("de"), german)
    said = shown(tr("{file}: {length} mm", file=Path("comb 1.2.csv"), length="20.05"))
    assert said == "comb 1.2.csv: 20,05 mm"
    assert shown(tr("Lot {name}", name="PETG 1.75")) == "Lot PETG 1.75"
    assert shown(tr("Tension {both}", both="X 12.5 ± 0.4 N")) == "Tension X 12,5 ± 0,4 N"
    assert local_numbers("Slipgauge 0.9.1, made 2026.11.25, 0.5 mm") == "Slipgauge 0.9.1, made 2026.11.25, 0,5 mm"


def test_what_is_chosen_is_the_command_line_then_the_settings_then_the_system(tmp_path):
    settings = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)
    assert chosen_view(settings, None, None) == View("system", "mm")
    settings.setValue("language", "de")
    settings.setValue("lengths", "inch")
    assert chosen_view(settings, None, None) == View("de", "inch")
    assert chosen_view(settings, "en", "mm") == View("en", "mm")
    settings.setValue("language", "Klingon")
    assert chosen_view(settings, None, None).language == "system"


@pytest.mark.parametrize(
    ("system", "chosen", "locale"),
    [("de_AT", "de", "de_AT"), ("fr_FR", "de", "de_DE"), ("en_US", "en", "en_US"), ("de_DE", "en", "en_GB"),
     ("fr_FR", "system", "fr_FR"), ("C", "en", "C")],
)
def test_the_country_is_that_of_the_system_where_it_speaks_the_language(monkeypatch, system, chosen, locale):
    monkeypatch.setattr(language.QLocale, "system", staticmethod(lambda: QLocale(system)))
    assert language._locale_of(chosen).name() == locale


def classes() -> dict[str, str]:
    """The module of every class of the window."""
    found = {}
    for path in sorted((ROOT / "app").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ClassDef):
                found[node.name] = ".".join(path.relative_to(ROOT).with_suffix("").parts)
    return found


class _Only(QTranslator):
    """Answers every text of one context with the name of the context."""

    context = ""

    def translate(self, context, _text, _disambiguation=None, _number=-1):
        return context if context == self.context else None

    def isEmpty(self) -> bool:
        return False


def test_every_context_of_the_texts_is_asked_for_by_the_class_that_says_them(qapp):
    """Qt files a sentence under the class in which it stands; a subclass asks for it there, too."""
    known, free = classes(), {"", "pages", "pdf"}  # asked for by name: app.words, app.pages, app.pdf
    contexts = {context for context, *_ in messages(TEXTS)} - free
    assert len(contexts) > 100
    assert sorted(contexts - set(known)) == [], "said under a name that no class has: the window never asks for it"
    only = _Only()
    QApplication.installTranslator(only)
    try:
        for context in sorted(contexts):
            only.context = context
            kind = getattr(import_module(known[context]), context)
            if not issubclass(kind, QObject):
                continue
            below = type("_Below", (kind,), {})
            for one in (kind, below):
                assert one.__new__(one).tr("any text") == context, f"{context} said by {one.__name__}"
    finally:
        QApplication.removeTranslator(only)


def test_a_context_without_a_name_can_be_asked_for(qapp, german):
    apply_view(qapp, View("de"), german)
    assert QCoreApplication.translate("", "Row {row}: {says}") == "Zeile {row}: {says}"


def test_a_kept_verdict_is_said_in_the_language_chosen_now(qapp, german):
    advice = Advice(Setting.LEAVE, tr("Row {row}: {says}", row=3, says=1.5), None, "", tr("As read."), tr("All."))
    trial = Trial("sizeerror", verdict=(json.loads(json.dumps(advice.as_json())),))
    assert kept_card(trial).paragraphs[0].text == "Row 3: 1.5 As read."
    apply_view(qapp, View("de"), german)
    assert kept_card(trial).paragraphs[0].text == "Zeile 3: 1,5 As read."
    old = replace(trial, verdict=(without_templates(advice.as_json()),))
    assert kept_card(old).paragraphs[0].text == "Row 3: 1,5 As read."

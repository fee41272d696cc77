"""Every sentence for people can be translated: Qt's text extractor finds it, under the name that the program asks for.

What a free `tr(...)` says is looked up without a context (`app.words.shown`), what `self.tr(...)` says with the name of
a class.
"""

from __future__ import annotations

import ast
import shutil
import subprocess
import sysconfig
from collections.abc import Iterator
from pathlib import Path
from xml.etree import ElementTree

import pytest

ROOT = Path(__file__).resolve().parents[1]
SOURCES = [path for room in ("app", "core") for path in sorted((ROOT / room).rglob("*.py"))]
NAMES = ("tr", "QT_TRANSLATE_NOOP")
SAMPLES = (
    # core: the ground, the store, subjects, the verdict
    "“{text}”: the fraction has a zero below the line; type it again.",
    "{name} was changed elsewhere meanwhile; open it again, then repeat the change.",
    "measure {more} to see how they scatter, or check the instrument's repeatability",
    "The three carriages differ in steps/mm; have they really different parts? Count again.",
    "Not told by these readings: {what}.",
    # app: rows of a page, a form from free functions, a field, a page, the list of pages
    "Row {row}: choose the {what}.",
    "No reading yet.",
    "Nominal &diameter",
    "Nothing is typed here yet; this one is needed.",
    "Kept trials are not changed.",
    "Machine geometry",
    "Part size",
)


def calls(path: Path) -> Iterator[tuple[str, bool, ast.Call]]:
    """The calls that mark a sentence: name, whether free (not a method), and the call."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            name = getattr(node.func, "id", None) or getattr(node.func, "attr", "")
            if name in NAMES:
                yield name, isinstance(node.func, ast.Name), node


@pytest.fixture(scope="module")
def contexts(tmp_path_factory) -> dict[str, set[str]]:
    """What the extractor finds: the contexts of each text, empty for none."""
    extractor = shutil.which("pyside6-lupdate", path=sysconfig.get_path("scripts"))
    assert extractor, "pyside6-lupdate comes with PySide6-Essentials"
    found = tmp_path_factory.mktemp("words") / "found.ts"
    subprocess.run([extractor, *map(str, SOURCES), "-ts", str(found)], check=True, capture_output=True)
    texts: dict[str, set[str]] = {}
    for context in ElementTree.parse(found).iter("context"):
        for message in context.iter("message"):
            texts.setdefault(message.findtext("source", ""), set()).add(context.findtext("name", ""))
    return texts


@pytest.mark.parametrize("sample", SAMPLES)
def test_sentences_of_every_layer_are_found(contexts, sample):
    assert sample in contexts


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_the_extractor_finds_what_the_program_asks_for(contexts, path):
    for name, free, call in calls(path):
        text = call.args[name != "tr"]
        place = f"{path.name}, line {call.lineno}"
        if isinstance(text, ast.Attribute) and text.attr == "template":
            continue  # a sentence that is written out elsewhere, with other values
        assert isinstance(text, ast.Constant), f"{place}: a text to be translated is written out, with {{names}} in it"
        found = contexts.get(text.value, set())
        assert ("" in found) if free and name == "tr" else found - {""}, f"{place}: “{text.value}” is not found"


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_no_other_name_stands_for_the_translation(path):
    """The extractor knows `tr` by its name; a function that calls it by another one hides every sentence."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef) and node.name in ("_tr", "_"):
            raise AssertionError(f"{path.name}, line {node.lineno}: use tr of core.words, shown by app.words.shown")

"""`python -m tests.translate`: bring the German texts up to date with the sentences of the program.

All that a person reads in the window stands in one file, `resources/translations/slipgauge_de.ts`: each sentence once
for every class that says it, English beside German. New sentences come in as unfinished; write the German beside them
(by hand or with Qt's own editor) and run the command again. It ends with 1 while a sentence has no German yet.
"""

from __future__ import annotations

import csv
import shutil
import subprocess
import sys
import sysconfig
import tempfile
from pathlib import Path
from xml.etree import ElementTree

ROOT = Path(__file__).parents[2]
TEXTS = ROOT / "resources" / "translations" / "slipgauge_de.ts"
SOURCES = [path for room in ("app", "core") for path in sorted((ROOT / room).rglob("*.py"))]


def tool(name: str) -> str:
    """Return where a program of PySide6-Essentials lies."""
    found = shutil.which(name, path=sysconfig.get_path("scripts"))
    assert found, f"{name} comes with PySide6-Essentials"
    return found


def extract(texts: Path) -> None:
    """Take the sentences of the program into a file of texts; what it no longer says goes."""
    with tempfile.TemporaryDirectory() as folder:
        listed = Path(folder) / "listed.py"
        listed.write_text("\n".join(f"tr({text!r})" for text in shown_from_files()), encoding="utf-8")
        _update(texts, [*SOURCES, listed])


def shown_from_files() -> list[str]:
    """Return the texts of data files that the window shows: what `core.words.listed` is given."""
    with (ROOT / "resources" / "catalogue" / "materials.csv").open(encoding="utf-8", newline="") as file:
        rows = csv.DictReader(line for line in file if not line.startswith("#"))
        return sorted({row["source"] for row in rows})


def _update(texts: Path, sources: list[Path]) -> None:
    options = ("-no-obsolete", "-locations", "none", "-source-language", "en", "-target-language", "de")
    command = [tool("pyside6-lupdate"), *map(str, sources), *options, "-ts", str(texts)]
    subprocess.run(command, check=True, capture_output=True, cwd=ROOT)


def release(texts: Path, binary: Path) -> None:
    """Write what the program loads, in one move: a window that is open has the old file mapped."""
    new = binary.with_suffix(".new")
    subprocess.run([tool("pyside6-lrelease"), str(texts), "-qm", str(new)], check=True, capture_output=True)
    new.replace(binary)


def messages(texts: Path) -> list[tuple[str, str, str]]:
    """Return context, English and German of every sentence; the German is empty where there is none yet."""
    found = []
    for context in ElementTree.parse(texts).iter("context"):
        for message in context.iter("message"):
            said = message.find("translation")
            german = "" if said is None or said.get("type") else said.text or ""
            found.append((context.findtext("name", ""), message.findtext("source", ""), german))
    return found


def main() -> int:
    """Update, release and count."""
    extract(TEXTS)
    release(TEXTS, TEXTS.with_suffix(".qm"))
    open_yet = [english for _, english, german in messages(TEXTS) if not german]
    for english in open_yet:
        print(f"no German yet: {english}")
    print(f"{len(messages(TEXTS))} sentences, {len(open_yet)} of them without German")
    return int(bool(open_yet))


if __name__ == "__main__":
    sys.exit(main())

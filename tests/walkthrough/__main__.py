"""`python -m tests.walkthrough [--language de] [FOLDER]`: tells the story on the real window and takes its pictures.

Without FOLDER they go to `resources/pictures/walkthrough`, from where the help shows them.
"""

from __future__ import annotations

import argparse
import os
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

os.environ["QT_QPA_PLATFORM"] = "offscreen"

from PySide6.QtWidgets import QApplication  # noqa: E402

PICTURES = Path(__file__).parents[2] / "resources" / "pictures" / "walkthrough"
LANGUAGES = ("en", "de")


def picture_name(number: int, step: str, language: str) -> str:
    """Return the file name of the picture of a step."""
    return f"{number:02}_{step}_{language}.png"


def told(app: QApplication, folder: Path, language: str, pictures: Path | None) -> Iterator[tuple[str, frozenset[str]]]:
    """Tell the story, take the pictures if a folder for them is given, and yield each step with what was read in it."""
    from tests.walkthrough.hands import begun
    from tests.walkthrough.pictures import picture, save_small
    from tests.walkthrough.story import STEPS

    with begun(app, folder, language) as hands:
        for number, step in enumerate(STEPS, start=1):
            hands.read.clear()
            hands.look()
            marks = step.do(hands)
            hands.look()
            if pictures is not None:
                save_small(picture(hands.window, marks), pictures / picture_name(number, step.name, language))
            yield step.name, frozenset(hands.read)


def main(language: str, target: Path) -> None:
    """Take the pictures of one language."""
    from app.theme import apply_theme

    os.environ |= {"TZ": "UTC", "LC_ALL": "C.UTF-8"}
    time.tzset()
    app = QApplication(["slipgauge"])
    app.setApplicationName("slipgauge")
    app.setStyle("Fusion")
    apply_theme(app, dark=False)
    target.mkdir(parents=True, exist_ok=True)
    for old in target.glob(f"*_{language}.png"):
        old.unlink()
    with tempfile.TemporaryDirectory() as folder:
        for name, _ in told(app, Path(folder), language, target):
            print(f"{language}: {name}")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(prog="python -m tests.walkthrough", description="Pictures of the walkthrough.")
    parser.add_argument("folder", nargs="?", type=Path, default=PICTURES, metavar="FOLDER")
    parser.add_argument("--language", choices=LANGUAGES, default="en")
    asked = parser.parse_args()
    main(asked.language, asked.folder)

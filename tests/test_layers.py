"""Which way imports go, as DEVELOPERS.md draws it: down only. Read from the source, so that lazy imports count too."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "app", "core", "resources", "tests"}
GROUND = ("core.errors", "core.words", "core.quantity", "core.records.rows", "core.records.outside")
SUBJECT_ROOMS = ("machine_geometry", "filament", "flow_trials", "part_size", "motion_trials", "pieces")
BUILDERS = ("app.__main__", "app.analyse")


def module_name(path: Path) -> str:
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


SOURCES = {module_name(path): path for room in ("app", "core") for path in sorted((ROOT / room).rglob("*.py"))}


def imports_of(path: Path) -> set[str]:
    """All imported modules by full name, those inside functions too."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path.name}: relative import; write the full name"
            names = {f"{node.module}.{alias.name}" for alias in node.names}
            found |= {name if name in SOURCES else str(node.module) for name in names}
    return found


IMPORTS = {name: imports_of(path) for name, path in SOURCES.items()}


def below(name: str, *packages: str) -> bool:
    return any(name == package or name.startswith(package + ".") for package in packages)


def allowed_in_core(name: str) -> tuple[str, ...]:
    """The packages of core that a module of core may import."""
    room = name.split(".")[1] if name.count(".") else ""
    if name in GROUND or room in ("", "errors", "words", "quantity"):
        return GROUND
    if room == "records":
        return (*GROUND, "core.records")
    if room == "measuring":
        return (*GROUND, "core.measuring")
    if room in SUBJECT_ROOMS:
        return (*GROUND, "core.measuring", f"core.{room}")
    if room == "guidance":
        return (*GROUND, "core.measuring", "core.guidance", *(f"core.{subject}" for subject in SUBJECT_ROOMS))
    raise AssertionError(f"{name}: no such room; add it to the plan first")


@pytest.mark.parametrize("name", [name for name in SOURCES if below(name, "core")])
def test_core_imports_go_down_only(name: str):
    wrong = {other for other in IMPORTS[name] if below(other, "core") and not below(other, *allowed_in_core(name))}
    assert not wrong - {"core"}, f"{name} may import {allowed_in_core(name)} of core only"


@pytest.mark.parametrize("name", [name for name in SOURCES if below(name, "core")])
def test_core_knows_no_window(name: str):
    assert not {other for other in IMPORTS[name] if below(other, "app", "PySide6", "shiboken6", "pyqtgraph")}


@pytest.mark.parametrize("name", [name for name in SOURCES if not below(name, "core.records")])
def test_sql_is_spoken_in_records_only(name: str):
    assert not {other for other in IMPORTS[name] if below(other, "sqlalchemy", "alembic", "psycopg", "sqlite3")}


@pytest.mark.parametrize("name", [name for name in SOURCES if below(name, "app.widgets")])
def test_widgets_know_no_store_and_no_page(name: str):
    wrong = {other for other in IMPORTS[name] if below(other, "app.pages", "app.context", "app.mainwindow", *BUILDERS)}
    wrong |= {other for other in IMPORTS[name] if below(other, "core.records") and other != "core.records.rows"}
    assert not wrong


@pytest.mark.parametrize("name", [name for name in SOURCES if below(name, "app.pages")])
def test_pages_never_import_each_other(name: str):
    shared = ("app.pages", *(name for name, path in SOURCES.items() if path.parent == ROOT / "app" / "pages"))
    own = name.rpartition(".")[0]
    wrong = {
        other
        for other in IMPORTS[name]
        if below(other, "app.pages") and other not in shared and not (own not in shared and below(other, own))
    }
    assert not wrong


@pytest.mark.parametrize("name", [name for name in SOURCES if name.startswith("app.pages.") and name.count(".") > 2])
def test_a_page_knows_one_subject_room(name: str):
    room = name.split(".")[2]
    others = [f"core.{subject}" for subject in SUBJECT_ROOMS if subject not in (room, "pieces")]
    assert not {other for other in IMPORTS[name] if below(other, *others)}
    assert not {other for other in IMPORTS[name] if below(other, "core.records") and other not in GROUND}


@pytest.mark.parametrize("name", [name for name in SOURCES if below(name, "app") and name not in BUILDERS])
def test_only_the_builders_open_a_store(name: str):
    path = SOURCES[name]
    assert "open_store" not in path.read_text(encoding="utf-8")
    assert not {other for other in IMPORTS[name] if other in BUILDERS}


def test_the_start_needs_the_standard_library_only():
    assert {name.partition(".")[0] for name in IMPORTS["app.start"]} <= sys.stdlib_module_names


def test_the_first_paint_needs_the_widgets_only():
    """Whatever is slow waits until the empty window is on the screen."""
    code = (
        "import sys, app.__main__, app.mainwindow, app.context, app.theme, app.pages.base\n"
        "slow = {'numpy', 'scipy', 'pyqtgraph', 'sqlalchemy', 'alembic', 'core.records.store'}\n"
        "sys.exit(', '.join(sorted(slow & set(sys.modules))) or 0)"
    )
    done = subprocess.run([sys.executable, "-c", code], check=False, cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, f"imported at start: {done.stderr}"


def test_analyse_needs_no_window():
    code = "import sys, app.__main__, app.analyse\nsys.exit(int('PySide6' in sys.modules))"
    assert subprocess.run([sys.executable, "-c", code], check=False, cwd=ROOT).returncode == 0


def test_the_top_level_is_the_plan():
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".") and path.name != "__pycache__"}
    assert found == TOP_LEVEL

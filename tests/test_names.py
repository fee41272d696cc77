"""Names: the unit in every parameter of core, plain nouns for folders, docstrings that match their signature."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
# A migration is a script of its own, called by name; its docstring says what it does.
SOURCES = [path for room in ("core", "app") for path in sorted((ROOT / room).rglob("*.py"))
           if "migrations" not in path.parts]
CORE = [path for path in SOURCES if path.is_relative_to(ROOT / "core")]
FORBIDDEN = {"util", "utils", "common", "helper", "helpers", "manager", "managers", "misc", "base2", "lib", "tools"}
UNITS = (
    "_mm", "_um", "_m", "_mm2", "_mm3", "_mm_s", "_mm_s2", "_mm_s3", "_mm3_s", "_mm_rev", "_g", "_g_cm3", "_deg",
    "_rad", "_c", "_k", "_s", "_ms", "_v", "_a", "_mh", "_steps_mm", "_steps", "_ratio", "_per_c", "_px", "_percent",
    "_hz", "_n",
)  # fmt: skip
# Without a unit, or in the unit of what they are applied to: symbols of the standards, ratios, linear algebra.
PURE = {
    "value", "u", "U", "dof", "k", "level", "ratio", "factor", "number", "relative_u", "score",
    "design", "combination", "null_space", "first", "second",
}  # fmt: skip
NUMBERS = re.compile(r"(float|Floats|ArrayLike|(npt\.)?NDArray\[.*\]|Sequence\[float\])( \| None)?")


def where(path: Path) -> str:
    return str(path.relative_to(ROOT))


def functions(path: Path) -> list[tuple[str, ast.FunctionDef]]:
    """Public functions and methods of public classes, with their names for people."""
    found: list[tuple[str, ast.FunctionDef]] = []
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            found.append((f"{where(path)}: {node.name}", node))
        elif isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            found += [
                (f"{where(path)}: {node.name}.{method.name}", method)
                for method in node.body
                if isinstance(method, ast.FunctionDef) and not method.name.startswith("_")
            ]
    return found


def parameters(node: ast.FunctionDef) -> list[ast.arg]:
    args = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
    return [arg for arg in args if arg.arg not in ("self", "cls")]


def test_units_are_in_the_names_of_core_parameters():
    """The room `measuring` is left out: its methods work in the unit they are given, by the names of the standards."""
    bare = [
        f"{name}({arg.arg})"
        for path in CORE
        if "measuring" not in path.parts
        for name, node in functions(path)
        for arg in parameters(node)
        if arg.annotation is not None
        and NUMBERS.fullmatch(ast.unparse(arg.annotation))
        and not arg.arg.endswith(UNITS)
        and arg.arg not in PURE
    ]
    assert not bare, "a number without its unit:\n" + "\n".join(bare)


def test_no_folder_or_file_is_named_after_nothing():
    names = {part.removesuffix(".py") for path in SOURCES for part in path.relative_to(ROOT).parts}
    assert not names & FORBIDDEN


@pytest.mark.parametrize("path", SOURCES, ids=where)
def test_every_module_and_public_function_says_what_it_does(path: Path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    silent = [name for name, node in functions(path) if not ast.get_docstring(node)]
    silent += [
        f"{where(path)}: {node.name}"
        for node in tree.body
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_") and not ast.get_docstring(node)
    ]
    assert ast.get_docstring(tree), f"{where(path)} has no docstring"
    assert not silent


@pytest.mark.parametrize("path", SOURCES, ids=where)
def test_described_arguments_exist(path: Path):
    wrong = []
    for name, node in functions(path):
        section = re.search(r"^Args:\n((?:[ ]{4}.*\n?|\n)+)", ast.get_docstring(node) or "", re.MULTILINE)
        described = re.findall(r"^ {4}(\w[\w, ]*):", section[1], re.MULTILINE) if section else []
        named = {word.strip() for words in described for word in words.split(",")}
        wrong += [f"{name}({word})" for word in named - {arg.arg for arg in parameters(node)}]
    assert not wrong

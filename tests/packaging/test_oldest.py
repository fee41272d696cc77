"""The lowest versions that pyproject.toml allows do: a part of the suite from every room runs on them.

The whole suite on the oldest and the newest packages, and on other Pythons: `python -m tests.packaging`.
"""

from __future__ import annotations

import sys
from importlib import metadata

import pytest

from tests.packaging.__main__ import install, is_oldest, lowest_versions, run

# Each package that the program needs is used by one of them at least.
PART = (
    "tests/core/records/test_store.py",
    "tests/core/pieces/test_meshfiles.py",
    "tests/app/part_size/test_sizeerror.py",
    "tests/app/widgets/test_plotpane.py",
    "tests/app/test_mainwindow.py",
    "tests/app/test_pdf.py",
)


def test_every_package_has_a_lower_bound():
    assert all(pin.count("==") == 1 and pin[-1].isalnum() for pin in lowest_versions()), lowest_versions()
    assert metadata.version("numpy") >= dict(pin.split("==") for pin in lowest_versions())["numpy"]


@pytest.mark.skipif(not is_oldest(sys.executable), reason="the oldest packages have no wheels for newer Pythons")
@pytest.mark.timeout(400)
def test_a_part_of_the_suite_runs_on_the_oldest_packages(tmp_path):
    python = install(sys.executable, tmp_path / "oldest", oldest=True)
    assert run(python, ["-n", "0", *PART]) == 0

import contextlib
import os
import tempfile
from pathlib import Path

import pytest

from core.records.store import open_store


@pytest.fixture
def path(tmp_path):
    """A database file with nothing in it, closed."""
    path = tmp_path / "shop.sqlite"
    open_store(path).close()
    return path


@pytest.fixture
def open_folder():
    """A folder that every user may enter, unlike those of pytest."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name).resolve()
        folder.chmod(0o755)
        yield folder


@contextlib.contextmanager
def ordinary_user():
    """Work as a user whom permission bits stop: root does not let itself be stopped by them."""
    if os.name == "nt" or os.geteuid() != 0:
        yield
        return
    os.setegid(65534)
    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)
        os.setegid(0)

import contextlib
import os
import tempfile
from pathlib import Path

import pytest
from sqlalchemy import text

from core.records.store import Store, open_store
from core.records.tables import Base

_EMPTY = f"TRUNCATE {', '.join(Base.metadata.tables)} RESTART IDENTITY CASCADE"


@pytest.fixture(scope="session")
def on_server(server):
    """A store on the server, for one test after the other."""
    opened = open_store(server.new_database())
    yield opened
    opened.close()


@pytest.fixture(params=["file", "server"])
def store(request):
    """An empty store: in memory, then on a server; the same tests hold for both."""
    yield from empty_store(request)


@pytest.fixture(params=["file", "server"], scope="module")
def shared_store(request):
    """A store that all examples of a module's hypothesis tests write to."""
    yield from empty_store(request)


def empty_store(request):
    """The store that the parameter of a fixture asks for."""
    if request.param == "file":
        opened = open_store(":memory:")
        yield opened
        opened.close()
        return
    opened: Store = request.getfixturevalue("on_server")
    with opened._database.transaction(write=True) as session:
        session.execute(text(_EMPTY))
    opened.author = ""
    yield opened


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

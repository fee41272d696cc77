import shutil
import sqlite3
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from importlib.resources import files
from pathlib import Path

import pytest
from alembic.config import Config
from alembic.script import ScriptDirectory

from core.errors import StoreError
from core.records import backup, upgrade
from core.records.backup import backups_of
from core.records.engine import Database
from core.records.place import file_place
from core.records.rows import BackupKind, Machine, Trial
from core.records.store import open_store

LATEST = upgrade.KNOWN[-1]
NEXT = f"{int(LATEST) + 1:04}"
NEXT_CHANGE = """
import sqlalchemy as sa
from alembic import op

revision = "{next}"
down_revision = "{latest}"


def upgrade():
    with op.batch_alter_table("machine") as batch:
        batch.add_column(sa.Column("maker", sa.Text, nullable=False, server_default="unknown"))
        batch.alter_column("note", type_=sa.Text, nullable=True)
    {more}
"""


@pytest.fixture
def next_release(tmp_path, monkeypatch):
    """Make this program one that knows one version of the tables more."""

    def make(more: str = "") -> None:
        scripts = tmp_path / "migrations"
        shutil.copytree(Path(str(files("core.records"))) / "migrations", scripts)
        change = NEXT_CHANGE.format(next=NEXT, latest=LATEST, more=more)
        (scripts / "versions" / f"{NEXT}_more.py").write_text(change)
        monkeypatch.setattr(upgrade, "SCRIPTS", str(scripts))
        monkeypatch.setattr(upgrade, "KNOWN", (*upgrade.KNOWN, NEXT))

    return make


@pytest.fixture
def stocked(tmp_path):
    """A database of the latest version with a machine and trials that point to it."""
    folder = tmp_path / "data"
    folder.mkdir()
    store = open_store(folder / "shop.sqlite")
    store.add_machine(Machine("A"))
    first = store.keep(Trial("drive", 1))
    store.keep(Trial("sizeerror", 1, used=(first.id,)))
    store.close()
    return folder / "shop.sqlite"


def content(path: Path) -> list[str]:
    with sqlite3.connect(path) as connection:
        dump = list(connection.iterdump())
    connection.close()
    return dump


def test_known_versions_are_the_migrations_in_order():
    settings = Config()
    settings.set_main_option("script_location", upgrade.SCRIPTS)
    settings.set_main_option("path_separator", "os")
    revisions = [script.revision for script in ScriptDirectory.from_config(settings).walk_revisions()]
    assert tuple(reversed(revisions)) == upgrade.KNOWN


def test_an_older_file_is_copied_and_then_upgraded_with_its_content(stocked, next_release):
    before = content(stocked)
    writer = open_store(stocked)  # keeps a write-ahead log beside the file, which the copy must hold too
    next_release()
    open_store(stocked).close()
    writer.close()
    (kept,) = backups_of(stocked)
    assert (kept.kind, Path(kept.file).parent) == (BackupKind.UPGRADE, stocked.with_name("shop-backups"))
    assert content(Path(kept.file)) == before
    connection = sqlite3.connect(stocked)
    assert connection.execute("SELECT name, maker FROM machine").fetchall() == [("A", "unknown")]
    assert connection.execute("SELECT count(*) FROM trial WHERE machine_id = 1").fetchall() == [(2,)]
    assert connection.execute("SELECT version_num FROM alembic_version").fetchall() == [(NEXT,)]
    assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
    connection.close()


@pytest.mark.parametrize("more", ["op.execute('DELETE FROM nothing_of_that_name')", "1 / 0"])
def test_an_upgrade_that_fails_changes_nothing(stocked, next_release, more):
    before = content(stocked)
    next_release(more)
    with pytest.raises((StoreError, ZeroDivisionError)):
        open_store(stocked)
    assert content(stocked) == before


def test_an_upgrade_that_would_break_links_changes_nothing(stocked, next_release):
    before = content(stocked)
    next_release("op.execute('DELETE FROM machine')")
    with pytest.raises(StoreError, match="would have broken links between records; nothing was changed"):
        open_store(stocked)
    assert content(stocked) == before


class LeftError(Exception):
    """What a step raises to stop the work."""


LONG_STATEMENT = (
    "op.execute('WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 30000) "
    "UPDATE machine SET maker = (SELECT max(i) FROM n)')"
)


@pytest.mark.parametrize("after", [0, 1, 3], ids=["at once", "in the copy", "in a statement"])
def test_an_upgrade_that_is_stopped_changes_nothing_and_leaves_no_copy_half_written(stocked, next_release, after):
    before = content(stocked)
    next_release(LONG_STATEMENT)
    told = []

    def step(part):
        if len(told) == after:
            raise LeftError
        told.append(part)

    with pytest.raises(LeftError):
        open_store(stocked, step=step)
    assert len(told) == after
    assert content(stocked) == before
    assert not list(stocked.parent.glob("**/*.part"))
    assert len(backups_of(stocked)) == (after > 1)
    open_store(stocked).close()  # all of it is still there to be upgraded
    assert content(stocked) != before


def test_an_upgrade_tells_how_far_it_is_and_a_shop_that_is_up_to_date_tells_nothing(stocked, next_release):
    next_release(LONG_STATEMENT)
    told = []
    open_store(stocked, step=told.append).close()
    assert told == sorted(told)
    assert told[0] == 0.0 and 0.3 in told and 0.3 < told[-1] <= 1.0 and len(told) > 5
    told.clear()
    open_store(stocked, step=told.append).close()
    open_store(stocked.with_name("new.sqlite"), step=told.append).close()
    assert told == []


def test_without_room_for_the_copy_nothing_is_changed(stocked, next_release, monkeypatch):
    before = content(stocked)
    next_release()
    address = backup.sqlite_address
    monkeypatch.setattr(
        backup, "sqlite_address", lambda path, mode: address(path / "absent" if mode == "rwc" else path, mode)
    )
    with pytest.raises(StoreError, match="cannot be opened"):
        open_store(stocked)
    assert backups_of(stocked) == ()
    assert [file.name for file in stocked.parent.iterdir() if file.is_file()] == ["shop.sqlite"]
    assert content(stocked) == before


def test_another_seat_that_upgraded_first_is_enough(stocked, next_release):
    next_release()
    open_store(stocked).close()
    files_before = sorted(stocked.parent.iterdir())
    database = Database(file_place(stocked))
    upgrade._upgrade(database)
    database.close()
    assert sorted(stocked.parent.iterdir()) == files_before


def test_a_newer_file_is_refused_and_left_as_it_is(stocked):
    with sqlite3.connect(stocked) as other:
        other.execute("UPDATE alembic_version SET version_num = '0917'")
    other.close()
    before = stocked.read_bytes()
    with pytest.raises(StoreError, match=rf"newer version of this program \(tables 0917, known here {LATEST}\)"):
        open_store(stocked)
    assert stocked.read_bytes() == before
    assert [file.name for file in stocked.parent.iterdir()] == ["shop.sqlite"]


def test_a_file_without_a_version_is_damaged(stocked):
    with sqlite3.connect(stocked) as other:
        other.execute("DELETE FROM alembic_version")
    other.close()
    with pytest.raises(StoreError, match="is damaged"):
        open_store(stocked)


def test_tables_of_another_program_are_left_as_they_are(stocked):
    with sqlite3.connect(stocked) as other:
        other.execute("DROP TABLE alembic_version")
    other.close()
    with pytest.raises(StoreError, match="holds the tables of another program; it was left as it is"):
        open_store(stocked)


def test_a_file_that_lost_its_write_ahead_log_gets_it_back(path):
    with sqlite3.connect(path) as other:
        other.execute("PRAGMA journal_mode=DELETE")
    other.close()
    open_store(path).close()
    other = sqlite3.connect(path)
    assert other.execute("PRAGMA journal_mode").fetchall() == [("wal",)]
    other.close()


def test_pages_are_checked_up_to_a_size(stocked, monkeypatch):
    page = stocked.read_bytes()
    stocked.write_bytes(page[: 8192 + 2] + b"\xff" * 8 + page[8192 + 10 :])
    with pytest.raises(StoreError, match="is damaged"):
        open_store(stocked)
    monkeypatch.setattr(upgrade, "QUICK_CHECK_LIMIT_PAGES", 1)
    open_store(stocked).close()


def run(code: str, *arguments: str, cwd: Path | None = None) -> str:
    result = subprocess.run(
        [sys.executable, "-W", "error", "-c", code, *arguments], cwd=cwd, capture_output=True, text=True, check=False,
        env={"PYTHONPATH": str(Path(__file__).parents[3]), "PATH": ""},
    )  # fmt: skip
    assert result.returncode == 0, result.stderr
    return result.stdout


def test_two_databases_begun_at_once_do_not_mix(tmp_path):
    """One is opened in the window while another is begun beside it, to move there."""
    places = [tmp_path / f"{number}.sqlite" for number in range(6)]
    with ThreadPoolExecutor(len(places)) as pool:
        for store in pool.map(open_store, places):
            store.close()
    assert all(content(place) == content(places[0]) for place in places)


def test_tables_are_made_from_any_folder(tmp_path):
    run(
        "import sys; from core.records.store import open_store; open_store(sys.argv[1]).close()",
        "a.sqlite",
        cwd=tmp_path,
    )
    assert "CREATE TABLE machine" in "".join(content(tmp_path / "a.sqlite"))


def test_opening_an_existing_file_loads_neither_alembic_nor_what_the_core_calculates_with(path):
    loaded = run(
        "import sys; from core.records.store import open_store; open_store(sys.argv[1]).close(); "
        "print(*[name for name in ('alembic', 'numpy', 'scipy', 'psycopg', 'PySide6') if name in sys.modules])",
        str(path),
    )
    assert loaded.strip() == ""


def test_the_usual_path_is_known_before_sqlalchemy():
    assert "False" in run("import sys, core.records.place; print('sqlalchemy' in sys.modules)")

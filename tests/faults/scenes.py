"""What can happen to a shop, made to happen: each ends in a sentence, and what was answered before is there after."""

from __future__ import annotations

import random
import resource
import shutil
import sqlite3
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path
from unittest import mock

from core.errors import InputError, StoreError
from core.records import storage, trials
from core.records.rescue import rescue
from core.records.rows import Machine, Trial, TrialState
from core.records.store import Store, open_store
from tests.faults.seat import READINGS_EACH, estimate

ROOT = Path(__file__).parents[2]
DISK_BYTES = 4 * 2**20


@dataclass
class Outcome:
    """How often it was made to happen, how often a sentence was said, what was lost, and one of the sentences.

    `unnoticed` counts files in which a value changed without a sentence: SQLite keeps no checksums of values. The copy
    of the day has them as they were, so nothing is lost.
    """

    name: str
    tries: int = 0
    said: int = 0
    lost: int = 0
    sentence: str = ""
    unnoticed: int = 0

    def hear(self, error: StoreError | InputError) -> None:
        """Count a sentence."""
        self.said += 1
        self.sentence = error.message


def keep(store: Store, subject: str = "sizeerror") -> Trial:
    """Keep a trial as the seats do."""
    return store.keep(Trial(subject, readings={"raw": ["10.1"] * READINGS_EACH}, estimates=(estimate(1),)))


def lost(where: Path | str, kept: list[Trial]) -> int:
    """Count the trials that are not there as they were answered."""
    store = open_store(where)
    try:
        there = {trial.id for trial in store.trials(limit=100_000)}
        return sum(trial.id not in there or store.trial(trial.id) != trial for trial in kept)
    finally:
        store.close()


@contextmanager
def small_disk(folder: Path) -> Iterator[str]:
    """A disk of four megabytes in a folder; where none may be mounted, a limit on the size of files. Yields which."""
    mount = ["mount", "-t", "tmpfs", "-o", f"size={DISK_BYTES}", "tmpfs", str(folder)]
    if subprocess.run(mount, check=False, capture_output=True).returncode == 0:
        try:
            yield "a disk of 4 MB"
        finally:
            subprocess.run(["umount", "-l", str(folder)], check=True)
        return
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (DISK_BYTES // 2, before[1]))
    try:
        yield "a limit of 2 MB a file"
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)


def disk_full(folder: Path, turns: int) -> Outcome:
    """Fill the disk, keep until it is refused, make room, go on."""
    disk = folder / "disk"
    disk.mkdir()
    with small_disk(disk) as kind:
        outcome = Outcome(f"disk full ({kind})")
        store = open_store(disk / "shop.sqlite")
        kept = [keep(store)]
        for number in range(turns):
            (disk / f"ballast {number}").write_bytes(bytes(131_072))
        for number in range(turns):
            outcome.tries += 1
            try:
                while True:
                    kept.append(store.keep(Trial("sizeerror", readings={"raw": ["10.1"] * 5000})))
            except StoreError as error:
                outcome.hear(error)
            outcome.lost += lost(disk / "shop.sqlite", kept)
            (disk / f"ballast {number}").unlink()
            if kind.startswith("a disk"):
                kept.append(keep(store))  # with the room made, work goes on
        store.close()
        with closing(sqlite3.connect(disk / "shop.sqlite")) as connection:
            outcome.lost += connection.execute("PRAGMA integrity_check").fetchall() != [("ok",)]
    return outcome


def read_only_folder(folder: Path) -> Outcome:
    """Take away the right to write, of the file and of its folder, before and while it is open."""
    from tests.core.records.conftest import ordinary_user

    outcome = Outcome("read-only file or folder")
    place = folder / "protected"
    place.mkdir()
    path = place / "shop.sqlite"
    store = open_store(path)
    kept = [keep(store)]
    store.close()
    for mode, file_mode in ((0o555, 0o666), (0o777, 0o444)):
        place.chmod(mode)
        path.chmod(file_mode)
        outcome.tries += 1
        try:
            with ordinary_user():
                open_store(path)
        except StoreError as error:
            outcome.hear(error)
        place.chmod(0o755)
        path.chmod(0o644)
        outcome.lost += lost(path, kept)
    return outcome


def taken_away(folder: Path) -> Outcome:
    """Remove, move and replace the file while it is open; what was answered is where it went, or in its copy."""
    outcome = Outcome("file removed, moved, replaced under us")
    for what in ("removed", "moved", "replaced"):
        path, moved = folder / f"{what}.sqlite", folder / f"{what}-away.sqlite"
        store = open_store(path)
        kept = [keep(store)]
        saved = store.storage.back_up()
        if what == "removed":
            path.unlink()
        elif what == "moved":
            path.rename(moved)
        else:
            open_store(folder / "another.sqlite").close()
            (folder / "another.sqlite").replace(path)
        outcome.tries += 1
        try:
            keep(store)
        except StoreError as error:
            outcome.hear(error)
        store.close()
        for log in ("-wal", "-shm"):
            if what == "moved" and path.with_name(path.name + log).exists():
                path.with_name(path.name + log).rename(moved.with_name(moved.name + log))
        outcome.lost += lost(moved if what == "moved" else saved.file, kept)
    return outcome


def damaged_and_rescued(folder: Path, damage: Callable[[bytearray], bytes], turns: int, name: str) -> Outcome:
    """Damage a shop: using it ends in a sentence or works, a refused file is left alone, its copy brings all back."""
    from tests.faults.test_damage import use_everything

    outcome = Outcome(name)
    path = folder / f"{name.replace(' ', '-')}.sqlite"
    kept, copy = small_shop(path)
    content = path.read_bytes()
    for _ in range(turns):
        damaged = damage(bytearray(content))
        path.write_bytes(damaged)
        outcome.tries += 1
        try:
            open_store(path).close()
        except StoreError:
            outcome.lost += path.read_bytes() != damaged
        try:
            outcome.unnoticed += bool(lost(path, kept))
            use_everything(path)
        except (StoreError, InputError) as error:
            outcome.hear(error)
        aside = rescue(path, copy)
        outcome.lost += lost(path, kept)
        aside.unlink()
    return outcome


def flipped(folder: Path, turns: int) -> Outcome:
    """Flip 1, 3 or 40 bits anywhere."""
    chance = random.Random(11)

    def damage(held: bytearray) -> bytes:
        for _ in range(chance.choice((1, 3, 40))):
            held[chance.randrange(len(held))] ^= 1 << chance.randrange(8)
        return bytes(held)

    return damaged_and_rescued(folder, damage, turns, "bits flipped")


def cut_short(folder: Path, turns: int) -> Outcome:
    """Cut the file at any length."""
    chance = random.Random(3)
    return damaged_and_rescued(
        folder, lambda held: bytes(held[: chance.randrange(1, len(held))]), turns, "file cut short"
    )


def newer_tables(folder: Path) -> Outcome:
    """Let the file be of a later release."""
    outcome = Outcome("tables of a newer release", tries=1)
    path = folder / "newer.sqlite"
    store = open_store(path)
    kept = [keep(store)]
    store.close()
    with closing(sqlite3.connect(path)) as other:
        (version,) = other.execute("SELECT version_num FROM alembic_version").fetchone()
        other.execute("UPDATE alembic_version SET version_num = '0999'")
        other.commit()
    try:
        open_store(path)
    except StoreError as error:
        outcome.hear(error)
    with closing(sqlite3.connect(path)) as other:
        other.execute("UPDATE alembic_version SET version_num = ?", (version,))
        other.commit()
    outcome.lost = lost(path, kept)
    return outcome


def two_seats(folder: Path, turns: int) -> Outcome:
    """Let two processes keep trials and change one machine at once; refused edits are told and repeated."""
    path = folder / "two.sqlite"
    open_store(path).close()
    jobs = [("type", "sizeerror"), ("type", "drive"), ("count", "one"), ("count", "two")]
    seats = [
        subprocess.Popen(
            [sys.executable, "-m", "tests.faults.seat", str(path), job, name, str(turns)],
            cwd=ROOT, text=True, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
        )
        for job, name in jobs
    ]  # fmt: skip
    said = [seat.communicate("go\n")[0].splitlines() for seat in seats]
    store = open_store(path)
    kept = {int(line.split()[1]) for lines in said for line in lines if line.startswith("kept")}
    (machine,) = store.machines()
    there = {trial.id for trial in store.trials(limit=100_000) if trial.state == TrialState.KEPT}
    outcome = Outcome("two processes writing", tries=4 * turns, lost=len(kept - there) + 2 * turns - int(machine.note))
    stale = store.change_machine(replace(machine, note="changed here"))
    try:
        store.change_machine(replace(machine, note="changed there"))
    except InputError as error:
        outcome.hear(error)
    outcome.lost += store.machines() != (stale,) or len(kept) != 2 * turns
    store.close()
    return outcome


def clock_set_back(folder: Path) -> Outcome:
    """Set the clock back by six years while trials are kept."""

    class EarlyClock(datetime):
        @classmethod
        def now(cls, zone=None):
            return datetime(2020, 5, 4, 12, tzinfo=UTC).astimezone(zone)

    outcome = Outcome("clock set back", tries=1)
    store = open_store(folder / "clock.sqlite")
    kept = [keep(store)]
    copies = [store.storage.back_up_daily()]
    with mock.patch.object(trials, "datetime", EarlyClock), mock.patch.object(storage, "datetime", EarlyClock):
        with mock.patch("core.records.backup.datetime", EarlyClock):
            copies.append(store.storage.back_up_daily())
        kept.append(keep(store))
        (sentence,) = store.storage.warnings()
    outcome.said, outcome.sentence = 1, sentence
    newest = store.newest("scale_x")
    outcome.lost += newest is None or newest[0] != kept[1].id  # the order is that of keeping
    outcome.lost += any(copy is None or not Path(copy.file).exists() for copy in copies)
    store.close()
    outcome.lost += lost(folder / "clock.sqlite", kept)
    return outcome


def network_share(folder: Path) -> Outcome:
    """Let the file lie on a network drive."""
    outcome = Outcome("file on a network drive", tries=1)
    mounts = folder / "mounts"
    mounts.write_text(f"/dev/vda / ext4 rw 0 0\nbox:/shop {folder} nfs4 rw 0 0\n")
    store = open_store(folder / "share.sqlite")
    kept = [keep(store)]
    with mock.patch("core.records.share.MOUNTS", mounts):
        (outcome.sentence,) = store.storage.warnings()
    outcome.said = 1
    store.close()
    outcome.lost = lost(folder / "share.sqlite", kept)
    return outcome


def server_gone(server, turns: int) -> Outcome:
    """Pull the plug of the server between and while trials are kept, then start it again."""
    outcome = Outcome("server gone and back (PostgreSQL)")
    where = server.new_database()
    store = open_store(where)
    kept = [keep(store)]
    for _ in range(turns):
        server.stop()
        outcome.tries += 1
        try:
            keep(store)
        except StoreError as error:
            outcome.hear(error)
        server.start()
        kept.append(keep(store))
    store.close()
    outcome.lost = lost(where, kept)
    return outcome


def restored(folder: Path, turns: int) -> Outcome:
    """Damage the copy that is to be restored; nothing changes. Then restore a good one; all is back."""
    outcome = Outcome("restoring a damaged copy, then a good one")
    store = open_store(folder / "restore.sqlite")
    kept = [keep(store)]
    made = store.storage.back_up()
    later = keep(store)
    chance = random.Random(5)
    for _ in range(turns):
        bad = folder / "bad.sqlite"
        held = Path(made.file).read_bytes()
        bad.write_bytes(held[: chance.randrange(1, len(held))])
        outcome.tries += 1
        try:
            store.storage.restore(str(bad))
        except StoreError as error:
            outcome.hear(error)
        outcome.lost += lost(folder / "restore.sqlite", [*kept, later])
    before = store.storage.restore(made.file)
    store.close()
    outcome.lost += lost(folder / "restore.sqlite", kept) + lost(before.file, [*kept, later])
    shutil.rmtree(folder / "restore-backups")
    return outcome


def small_shop(path: Path) -> tuple[list[Trial], str]:
    """Make a small shop; return its kept trials and the file of its copy."""
    store = open_store(path)
    kept = []
    for number in range(4):
        store.add_machine(Machine(f"machine {number}"))
        kept.append(keep(store))
        store.save_draft(Trial("drive", number + 1, readings={"raw": ["1"]}))
    copy = store.storage.back_up().file
    store.close()
    return kept, copy

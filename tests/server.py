"""A PostgreSQL server of the tests' own: on loopback, in a temporary folder, run by an ordinary user, gone at the end.

The programs come from the Debian package `postgresql`, which tests/run.py installs; the server itself refuses to be run
by root (PostgreSQL 15 documentation, 19.1), so `setpriv` gives it the package's own user then.
"""

from __future__ import annotations

import os
import pwd
import shutil
import socket
import subprocess
import tempfile
from itertools import count
from pathlib import Path

from sqlalchemy import create_engine, text

OWNER = "shop"
_MISSING = (
    "The programs of PostgreSQL are not here, and the tests of a shop on a server need them. Install them with: "
    "apt-get install postgresql (python3 tests/run.py does so)."
)
# Asynchronous commits: what the store answers must be safe all the same.
_FAST = "-c fsync=off -c full_page_writes=off -c synchronous_commit=off -c listen_addresses=127.0.0.1"


def programs() -> Path:
    """The folder of initdb and pg_ctl, the newest version where there are several."""
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin/pg_ctl"), key=lambda path: float(path.parts[-3]))
    if found:
        return found[-1].parent
    on_path = shutil.which("pg_ctl")
    assert on_path, _MISSING
    return Path(on_path).resolve().parent


class Server:
    """One server; `start` and `stop` may follow one another, its data stay until `remove`."""

    def __init__(self) -> None:
        self.programs = programs()
        self.folder = Path(tempfile.mkdtemp(prefix="slipgauge-server-"))
        self._as_user: list[str] = []
        if os.geteuid() == 0:
            user = pwd.getpwnam("postgres")
            os.chown(self.folder, user.pw_uid, user.pw_gid)
            self._as_user = ["setpriv", f"--reuid={user.pw_uid}", f"--regid={user.pw_gid}", "--clear-groups", "--"]
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.port = probe.getsockname()[1]
        self._names = count(1)
        self._run("initdb", "-U", OWNER, "-A", "trust", "-E", "UTF8", "--no-sync", "--locale=C.UTF-8")
        self.start()

    def start(self) -> None:
        """Start it on the port it had before and wait until it answers."""
        options = f"-p {self.port} -c unix_socket_directories='' {_FAST}"
        self._run("pg_ctl", "-w", "-t", "30", "-l", str(self.folder / "log"), "-o", options, "start")

    def stop(self) -> None:
        """Stop it at once, as a pulled plug would; nothing answers any more."""
        self._run("pg_ctl", "-m", "immediate", "-w", "stop")

    def remove(self) -> None:
        """Stop it if it runs, and take its folder away."""
        if (self.folder / "data" / "postmaster.pid").exists():
            self.stop()
        shutil.rmtree(self.folder)

    def url(self, database: str = "postgres", user: str = OWNER) -> str:
        """The address of one of its databases."""
        return f"postgresql+psycopg://{user}@127.0.0.1:{self.port}/{database}"

    def new_database(self) -> str:
        """Make an empty database and return its address."""
        name = f"shop{next(self._names)}"
        self.say(f"CREATE DATABASE {name}")
        return self.url(name)

    def say(self, statement: str, database: str = "postgres") -> None:
        """Run one statement outside every transaction."""
        engine = create_engine(self.url(database), isolation_level="AUTOCOMMIT")
        with engine.connect() as connection:
            connection.execute(text(statement))
        engine.dispose()

    def _run(self, program: str, *arguments: str) -> None:
        command = [*self._as_user, str(self.programs / program), "-D", str(self.folder / "data"), *arguments]
        environ = {"PATH": f"{self.programs}:/usr/bin:/bin", "LC_ALL": "C.UTF-8", "HOME": str(self.folder)}
        # To a file, not a pipe: the server inherits it and would hold a pipe open.
        with (self.folder / f"{program}.txt").open("w+") as said:
            done = subprocess.run(command, check=False, env=environ, cwd=self.folder, stdout=said, stderr=said)
            said.seek(0)
            assert done.returncode == 0, said.read()

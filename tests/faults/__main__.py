"""`python -m tests.faults [KILLS]`: make everything happen that can happen to a shop, and print what was lost.

KILLS windows (200 unless said) are killed at random moments; the other faults come after. It takes some minutes.
"""

from __future__ import annotations

import os
import sys
import tempfile
import time
from pathlib import Path

SEED = 20261125


def main(kills: int) -> int:
    """Run all scenes and print the table; return 1 where anything was lost."""
    folder = Path(tempfile.mkdtemp(prefix="slipgauge-faults-"))
    folder.chmod(0o755)
    os.environ["XDG_DATA_HOME"] = str(folder / "data")
    from tests.faults import scenes
    from tests.faults.kills import kill_windows
    from tests.server import Server

    def tell(counted) -> None:
        if sys.stderr.isatty():
            sys.stderr.write(f"\r{counted.kills} of {kills} windows killed")

    begun = time.monotonic()
    killed = kill_windows(folder / "killed.sqlite", kills, SEED, tell)
    print(f"windows killed (SIGKILL) at random moments     {killed.kills}   ({time.monotonic() - begun:.0f} s)")
    print(f"  readings shown as stored                     {killed.drafts}")
    print(f"  trials shown as kept                         {killed.kept}")
    print(f"  of these missing afterwards                  {killed.missing}")
    print(f"  trials kept by halves                        {killed.half_kept}")
    print(f"  files not clean (integrity, foreign keys)    {killed.unclean}")
    print(*killed.details, killed.errors, sep="\n")
    server = Server()
    try:
        outcomes = [
            scenes.disk_full(folder, 10),
            scenes.read_only_folder(folder),
            scenes.taken_away(folder),
            scenes.cut_short(folder, 100),
            scenes.flipped(folder, 300),
            scenes.restored(folder, 50),
            scenes.newer_tables(folder),
            scenes.two_seats(folder, 100),
            scenes.clock_set_back(folder),
            scenes.network_share(folder),
            scenes.server_gone(server, 5),
        ]
    finally:
        server.remove()
    print(f"{'what happened':46} {'tries':>5} {'told':>5} {'lost':>5}  the last sentence")
    for outcome in outcomes:
        said = outcome.sentence.replace(str(folder), "…")
        print(f"{outcome.name:46} {outcome.tries:5} {outcome.said:5} {outcome.lost:5}  {said}")
    unnoticed = sum(outcome.unnoticed for outcome in outcomes)
    print(f"\nbits flipped inside a value that nothing could notice, right again in the copy: {unnoticed}")
    bad = killed.missing + killed.half_kept + killed.unclean + sum(outcome.lost for outcome in outcomes)
    print(f"lost in all: {bad}")
    return 1 if bad or killed.errors else 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 200))

"""What can happen to a shop ends in a sentence and loses nothing; `python -m tests.faults` makes more of it happen."""

from __future__ import annotations

import random
import tempfile
from functools import partial
from pathlib import Path

import pytest

from tests.faults import scenes
from tests.faults.kills import Killed, kill_windows

KILLS = 3
SCENES = {
    "disk full": partial(scenes.disk_full, turns=3),
    "read-only": scenes.read_only_folder,
    "taken away": scenes.taken_away,
    "cut short": partial(scenes.cut_short, turns=8),
    "restored": partial(scenes.restored, turns=8),
    "newer": scenes.newer_tables,
    "two seats": partial(scenes.two_seats, turns=15),
    "clock": scenes.clock_set_back,
    "network": scenes.network_share,
}


@pytest.fixture
def folder(monkeypatch):
    """A folder that every user may enter, unlike those of pytest."""
    with tempfile.TemporaryDirectory() as name:
        path = Path(name).resolve()
        path.chmod(0o755)
        yield path


@pytest.mark.parametrize("name", SCENES)
def test_what_can_happen_is_told_and_loses_nothing(folder, name):
    outcome = SCENES[name](folder)
    assert outcome.lost == 0
    assert outcome.said == (1 if name == "two seats" else outcome.tries) > 0
    assert outcome.sentence.endswith((".", "!"))


def test_flipped_bits_are_told_or_harmless_and_the_copy_brings_all_back(folder):
    outcome = scenes.flipped(folder, turns=12)
    assert outcome.lost == 0
    assert outcome.said > 0


def test_a_server_whose_plug_is_pulled(server):
    outcome = scenes.server_gone(server, turns=2)
    assert (outcome.tries, outcome.said, outcome.lost) == (2, 2, 0)


def test_what_the_window_showed_as_stored_is_there_after_it_was_killed(folder):
    counted = kill_windows(folder / "shop.sqlite", KILLS, seed=random.Random(20261125).randrange(1000))
    assert counted == Killed(kills=KILLS, drafts=counted.drafts, kept=counted.kept)
    assert counted.drafts > KILLS

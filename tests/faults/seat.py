"""A seat that types and keeps trials, or counts a machine up: `python -m tests.faults.seat PATH JOB NAME TURNS`.

It says `ready` when all is imported and waits for a line; then it says one line after each call that was answered.
"""

import os
import sys
from dataclasses import replace

from core.errors import InputError
from core.quantity import Estimate
from core.records.rows import Machine, Trial
from core.records.store import Store, open_store

READINGS_EACH = 5


def say(*words: object) -> None:
    os.write(1, (" ".join(map(str, words)) + "\n").encode())


def estimate(count: int) -> Estimate:
    return Estimate("scale_x", count / 7, 0.01, 12.5, "1")


def type_and_keep(store: Store, name: str, turns: int) -> None:
    """Each trial: a draft at every reading, then kept."""
    for _ in range(turns):
        draft = store.draft(name) or Trial(name)
        for count in range(len(draft.readings.get("measured_mm", [])) + 1, READINGS_EACH + 1):
            draft = store.save_draft(replace(draft, readings={"measured_mm": [0.1 * row for row in range(count)]}))
            say("draft", draft.id, count)
        kept = store.keep(replace(draft, estimates=(estimate(draft.id),), note=name))
        say("kept", kept.id, READINGS_EACH)


def count_up(store: Store, name: str, turns: int) -> None:
    """Raise the number in the note of the one machine, reading it again when another seat was quicker."""
    try:
        store.add_machine(Machine("A", note="0"))
    except InputError as error:
        assert error.field == "name"
    for _ in range(turns):
        while True:
            (machine,) = store.machines()
            try:
                store.change_machine(replace(machine, note=str(int(machine.note) + 1)))
                break
            except InputError as error:
                assert error.field == "version"
    say(name, "done")


def main(path: str, job: str, name: str, turns: int) -> None:
    say("ready")
    sys.stdin.readline()
    store = open_store(path)
    say("opened", 0, 0)
    {"type": type_and_keep, "count": count_up}[job](store, name, turns)
    store.close()


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], sys.argv[3], int(sys.argv[4]))

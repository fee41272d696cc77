"""Two processes that write to one file at the same time lose nothing and refuse nothing without a reason."""

from core.records.rows import Trial
from core.records.store import open_store
from tests.faults.conftest import go


def finish(process):
    said, errors = process.communicate(timeout=60)
    assert (process.returncode, errors) == (0, "")
    return [line.split() for line in said.splitlines()]


def test_two_seats_begin_one_file_and_keep_trials_side_by_side(tmp_path, seat):
    path = tmp_path / "shop.sqlite"
    seats = {name: seat(path, "type", name, 40) for name in ("sizeerror", "drive")}
    for process in seats.values():
        go(process)
    for name, process in seats.items():
        kept = {int(line[1]) for line in finish(process) if line[0] == "kept"}
        store = open_store(path)
        assert len(kept) == 40
        assert {trial.id for trial in store.trials(name)} == kept
        assert store.draft(name) is None
        store.close()


def test_no_change_of_a_machine_overwrites_that_of_the_other_seat(tmp_path, seat):
    path = tmp_path / "shop.sqlite"
    open_store(path).close()
    seats = [seat(path, "count", name, 60) for name in ("one", "two")]
    for process in seats:
        go(process)
    for process in seats:
        assert finish(process)[-1][-1] == "done"
    store = open_store(path)
    (machine,) = store.machines()
    assert (machine.note, machine.version) == ("120", 121)
    store.close()


def test_two_seats_share_the_one_draft(tmp_path):
    one, two = open_store(tmp_path / "shop.sqlite"), open_store(tmp_path / "shop.sqlite")
    first = one.save_draft(Trial("sizeerror", readings={"raw": ["1"]}))
    second = two.save_draft(Trial("sizeerror", readings={"raw": ["1", "2"]}))
    assert second.id == first.id
    assert one.draft("sizeerror") == second
    one.close()
    two.close()


def test_two_seats_on_a_server_lose_nothing_either(server, seat):
    where = server.new_database()
    open_store(where).close()
    jobs = {"sizeerror": "type", "drive": "type", "one": "count", "two": "count"}
    seats = {name: seat(where, job, name, 10) for name, job in jobs.items()}
    for process in seats.values():
        go(process)
    said = {name: finish(process) for name, process in seats.items()}
    store = open_store(where)
    for name in ("sizeerror", "drive"):
        kept = {int(line[1]) for line in said[name] if line[0] == "kept"}
        assert {trial.id for trial in store.trials(name)} == kept
        assert len(kept) == 10
    (machine,) = store.machines()
    assert (machine.note, machine.version) == ("20", 21)
    store.close()

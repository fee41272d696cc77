"""One line a machine: the same as its walk says."""

from core.guidance.board import board_line, loaded_lots, serials_by_machine
from core.guidance.walk import State
from core.records.rows import NewestKept
from tests.core.guidance.walkshop import AT, Shop, done_shop

NEWEST = [
    NewestKept(1, None, "reversal", "reversal_x", 1),
    NewestKept(1, 5, "wall", "flow_ratio_wall", 2),
    NewestKept(1, 6, "wall", "flow_ratio_wall", 3),
    NewestKept(2, 5, "wall", "flow_ratio_wall", 4),
    NewestKept(None, 5, "diameter", "diameter", 5),
    NewestKept(None, 6, "diameter", "diameter", 6),
    NewestKept(None, None, "instrument", "zero", 7),
    NewestKept(3, None, "reversal", "reversal_x", 8),
]


def test_a_machine_is_loaded_with_the_lot_it_was_used_with_last():
    assert loaded_lots(NEWEST) == {1: 6, 2: 5}
    assert loaded_lots(reversed(NEWEST)) == {1: 6, 2: 5}


def test_each_walk_looks_at_its_own_trials_and_those_of_its_lot():
    assert serials_by_machine(NEWEST, {1: 6, 2: 5}) == {1: [1, 3, 6], 2: [4, 5], 3: [8]}


def test_what_is_the_lots_own_counts_wherever_it_was_read():
    read = [NewestKept(1, 5, "diameter", "diameter", 9), NewestKept(3, 5, "diameter", "diameter", 10),
            NewestKept(3, 5, "wall", "flow_ratio_wall", 11)]  # fmt: skip
    loaded = {1: 6, 2: 5, 3: 5}
    assert serials_by_machine(read, loaded) == {3: [10, 11]}
    assert serials_by_machine(read, loaded, {"diameter"}) == {3: [10, 11], 2: [10]}
    assert serials_by_machine(reversed(read), loaded, {"diameter"}) == {3: [11, 10], 2: [10]}


def test_a_line_of_a_machine_where_all_stands():
    shop = done_shop()
    line = board_line(1, 1, shop.walk())
    assert (line.todo, line.todo_state, line.stale, line.in_doubt) == ("", None, (), ())
    assert (line.done, line.steps, line.verified, line.verified_at, line.promise_id) == (19, 19, True, AT, None)


def test_a_line_of_a_machine_that_wants_something():
    shop = done_shop()
    shop.event("crash")
    promise = shop.trial("promise", {"promise_100"})
    line = board_line(1, 1, shop.walk())
    assert (line.todo, line.todo_state, line.verified) == ("reversal", State.STALE, False)
    assert line.stale == ("reversal", "square", "proof")
    assert line.in_doubt == ("size",)
    assert line.promise_id == promise.id


def test_the_proof_goes_before_the_size_piece():
    shop = done_shop()
    later = AT.replace(year=2027)
    shop.trial("sizeerror", kept_at=AT)
    shop.checked("decision")
    shop.trial("verification", {"prediction_inside"}, kept_at=later)
    assert board_line(1, 1, shop.walk()).verified_at == later


def test_a_new_machine_was_never_verified():
    line = board_line(1, None, Shop().walk())
    assert (line.verified_at, line.verified, line.todo, line.todo_state) == (None, False, "mechanics", State.NEXT)

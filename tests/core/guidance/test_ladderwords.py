"""What is said before a ladder is read: it fits the ladder and the way of reading."""

from dataclasses import replace

import pytest

from core.guidance.ladderwords import caution_words, how_words, nothing_words
from core.motion_trials.ladders import Read, ladders


@pytest.mark.parametrize("read", Read)
@pytest.mark.parametrize("kind", ladders().values(), ids=lambda kind: kind.key)
def test_what_to_do_fits_the_way_of_reading(kind, read):
    says = how_words(kind, read)
    assert any(word in says for word in ("core", "judge", "useless")) == (read is Read.SCORE)
    assert ("type its unit" in says) == read.is_of_any_kind and ("width of each line" in says) == (read is Read.WIDTHS)


def test_a_picture_without_a_reading_says_what_to_read():
    said = {read: nothing_words(read) for read in Read}
    assert [title for title, _ in said.values()] == [
        "Scores of the steps", "Widths of the steps", "Values of the steps", "Values of the steps",
    ]  # fmt: skip
    assert ["score them" in says for _, says in said.values()] == [True, False, False, False]
    assert "stays empty for a count" in said[Read.LOW][1] and "three widths" in said[Read.WIDTHS][1]


def test_a_ladder_of_the_shops_own_has_words_too():
    own = replace(ladders()["gap"], key="own")
    assert "ventilate" in caution_words(own).lower() and "only" in how_words(own)
    assert how_words(own, Read.HIGH).startswith("Change this setting only. Read one value")

"""The shop's own parts: one typed line and back, what cannot be read, how they are named."""

import pytest

from core.errors import InputError
from core.guidance.ownparts import part_words, parts_from, parts_from_text, parts_text, parts_value
from core.part_size.features import FeatureKind
from core.part_size.whose import USUAL_PARTS, Part


def test_the_shops_own_parts_are_read():
    assert parts_from(None) == USUAL_PARTS and parts_from({"parts": []}) == USUAL_PARTS
    own = parts_from({"parts": [{"name": "lid", "axis": "y", "kind": "outside", "nominal_mm": 64}]})
    assert own == (Part("lid", "y", FeatureKind.OUTSIDE, 64.0),)
    with pytest.raises(InputError, match="not a kind"):
        parts_from({"parts": [{"name": "lid", "axis": "y", "kind": "box", "nominal_mm": 64}]})


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("20", Part("", "x", FeatureKind.OUTSIDE, 20.0)),
        ("  64,5mm Y  big lid", Part("big lid", "y", FeatureKind.OUTSIDE, 64.5)),
        ("2in x", Part("", "x", FeatureKind.OUTSIDE, 50.8)),
        ("Window 30 y", Part("", "y", FeatureKind.CLOSED_HOLE, 30.0)),
        ("8 hole", Part("", "x", FeatureKind.BORE, 8.0)),
        ("60 z", Part("", "z", FeatureKind.HEIGHT, 60.0)),
        ("post height 12", Part("post", "z", FeatureKind.HEIGHT, 12.0)),
    ],
)
def test_a_part_is_read_from_its_words(text, part):
    assert parts_from_text(text) == (part,)


def test_a_list_is_typed_stored_and_shown_again():
    text = "20 x; lid 64.5 y; 30 x window; 8 y hole; 60 z"
    parts = parts_from_text(text)
    assert parts_text(parts) == text and parts_from_text(parts_text(parts)) == parts
    assert parts_from(parts_value(parts)) == parts
    assert parts_from_text(" ; ") == USUAL_PARTS == parts_from_text(parts_text(USUAL_PARTS))
    other = (Part("rack", "x", FeatureKind.TOOTH, 40.0),)
    assert parts_text(other) == "rack 40 x"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("20 x; lid", "“lid” has no length"),
        ("0 x", "has no length"),
        ("1.234.5 x", "not a length"),
        ("30 z window", "belongs to x and y"),
        ("30 x height", "A height is read along z"),
    ],
)
def test_what_cannot_be_read_is_named(text, says):
    with pytest.raises(InputError, match=says) as told:
        parts_from_text(text)
    assert told.value.field == "parts"


def test_a_part_is_named_by_what_it_is():
    assert part_words(Part("", "x", FeatureKind.OUTSIDE, 20.0)) == "outside X 20 mm"
    assert part_words(Part("lid", "z", FeatureKind.HEIGHT, 6.5)) == "lid, height Z 6.5 mm"

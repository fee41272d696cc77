import pytest

from core.errors import InputError, StoreError


def test_an_input_error_names_field_row_and_sentence():
    error = InputError("measured_mm", "Row 4: 12,4 mm is 3 mm from its nominal 15.", row=3)
    assert (error.field, error.row, error.message) == ("measured_mm", 3, "Row 4: 12,4 mm is 3 mm from its nominal 15.")
    assert str(error) == error.message


def test_the_row_is_optional():
    assert InputError("name", "Give the machine a name.").row is None


def test_a_store_error_has_a_sentence():
    error = StoreError("The disk is full; free some space and keep again.")
    assert str(error) == error.message == "The disk is full; free some space and keep again."


@pytest.mark.parametrize(("error", "kind"), [(InputError("x", "m"), ValueError), (StoreError("m"), RuntimeError)])
def test_the_two_kinds_are_told_apart(error, kind):
    assert isinstance(error, kind)
    assert not (isinstance(error, ValueError) and isinstance(error, RuntimeError))

"""Names of gauges in the window's language: shown and typed in it, kept under one name."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QModelIndex, Qt, QTranslator

from app.rownames import shown_name, typed_name
from app.widgets.reading_rows import Column
from app.widgets.readings import ReadingsModel

SAID = {
    "outer {first}-{second} {axis}": "außen {first}–{second} {axis}",
    "tooth {number} {axis}": "Zahn {number} {axis}",
}


class German(QTranslator):
    def isEmpty(self):
        return False

    def translate(self, context, source, disambiguation=None, n=-1):
        return SAID.get(source, "")


@pytest.fixture
def german(qapp):
    translator = German()
    qapp.installTranslator(translator)
    yield
    qapp.removeTranslator(translator)


@pytest.fixture
def model(qtbot):
    model = ReadingsModel((Column("feature", "Gauge"), Column("measured_mm", "Reading mm", "length")))
    model.set_rows([{"feature": "outer 1-7 x"}, {"feature": "my slot"}])
    return model


def cell(model, row: int, role=Qt.ItemDataRole.DisplayRole) -> str:
    return model.data(model.index(row, 0, QModelIndex()), role)


def kept(model) -> list[str]:
    return [row["feature"] for row in model.rows()]


def test_in_english_a_name_is_shown_as_it_is_kept(model):
    assert [cell(model, 0), cell(model, 1)] == ["outer 1-7 x", "my slot"]
    assert (shown_name(None), shown_name("tooth 4 x"), typed_name("tooth 4 x")) == ("", "tooth 4 x", "tooth 4 x")


@pytest.mark.usefixtures("german")
def test_in_german_it_is_shown_in_german_and_kept_under_its_name(model):
    assert [cell(model, 0), cell(model, 1)] == ["außen 1–7 x", "my slot"]
    assert kept(model) == ["outer 1-7 x", "my slot"]


@pytest.mark.usefixtures("german")
def test_an_editor_left_without_a_change_changes_nothing(model):
    assert model.setData(model.index(0, 0), cell(model, 0, Qt.ItemDataRole.EditRole))
    assert kept(model) == ["outer 1-7 x", "my slot"] and not model.undo_state()[0]["raw"]


@pytest.mark.usefixtures("german")
def test_a_name_typed_or_pasted_in_german_is_that_of_the_gauge_and_any_other_stays(model):
    model.edit(1, "feature", "Zahn 4 x")
    assert kept(model) == ["outer 1-7 x", "tooth 4 x"] and cell(model, 1) == "Zahn 4 x"
    model.paste(0, 0, "Zahn 2 y\nmeine Nut\n")
    assert kept(model) == ["tooth 2 y", "meine Nut"]

"""The catalogue of materials: each figure has a source, and only what was seen counts as checked."""

import pytest

from core.filament.materials import FigureName, figure_words, find_material, materials, usual_density
from tests.published import table


def test_every_figure_names_its_source_and_lies_in_order():
    for material in materials():
        names = [figure.name for figure in material.figures]
        assert len(names) == len(set(names))
        for figure in material.figures:
            assert figure.source and figure.unit
            assert figure.low <= (figure.typical or figure.low) <= figure.high
            assert not (figure.verified and "no source" in figure.source)
            assert figure_words(figure.name)


def test_what_was_seen_is_marked_and_nothing_else():
    seen = {(m.name, str(f.name), f.low, f.high) for m in materials() for f in m.figures if f.verified}
    assert seen == {("ABS", "shrinkage", 0.4, 0.7), ("PS", "shrinkage", 0.4, 0.7), ("HDPE", "shrinkage", 1.5, 4.0)}


@pytest.mark.parametrize(
    ("name", "density"),
    [("PLA", 1.24), ("PETG", 1.27), ("ABS", 1.05), ("ASA", 1.07), ("PC", 1.20), ("PA6", 1.13), ("PA12", 1.01),
     ("PP", 0.905), ("TPU", 1.21), ("HIPS", 1.04), ("PS", 1.05), ("HDPE", 0.95)],
)
def test_densities(name, density):
    found = usual_density(name)
    assert found.value == density
    assert 0 < found.u / density < 0.06


@pytest.mark.parametrize("row", table("materials_handbook"), ids=lambda row: row["plastic"])
def test_figures_are_those_of_the_handbook(row):
    material = find_material(row["plastic"].partition(" ")[0]).material
    density = material.figure(FigureName.DENSITY)
    assert (density.typical, density.low, density.high) == tuple(
        float(row[key]) for key in ("density", "density_low", "density_high"))
    for name in (FigureName.SHRINKAGE, FigureName.EXPANSION):
        figure = material.figure(name)
        assert (figure.low, figure.high) == (float(row[f"{name}_low"]), float(row[f"{name}_high"]))


def test_density_without_a_typical_value_is_the_middle(monkeypatch):
    from core.filament import materials as module

    figure = module.Figure(FigureName.DENSITY, 1.0, None, 1.2, "g/cm3", False, "made up")
    monkeypatch.setattr(module, "materials", lambda: (module.Material("XYZ", (figure,)),))
    assert usual_density("xyz").value == pytest.approx(1.1)


@pytest.mark.parametrize(
    ("text", "name", "exact"),
    [("petg", "PETG", True), (" PLA+ ", "PLA", True), ("PA6-CF", "PA6", False), ("PA", "PA6", False),
     ("PLA wood", "PLA", False), ("Nylon", "PA6", False), ("TPU", "TPU", True)],
)
def test_names_as_people_type_them(text, name, exact):
    match = find_material(text)
    assert (match.material.name, match.exact) == (name, exact)


def test_unknown_filled_and_empty():
    assert find_material("unobtainium") is None
    assert find_material("  ") is None
    assert usual_density("PLA wood") is None
    assert usual_density("") is None
    assert find_material("PA12").material.polyamide
    assert not find_material("PP").material.polyamide
    assert find_material("PS").material.figure(FigureName.NOZZLE) is None

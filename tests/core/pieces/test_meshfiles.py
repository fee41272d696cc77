"""What is written is read back by the strict reader of the standard's own library, and by another library."""

import locale
import zlib

import lib3mf
import numpy as np
import pytest
import trimesh

from core.errors import StoreError
from core.pieces.catalogue import plan_set, set_names
from core.pieces.meshfiles import write_pieces
from tests.core.pieces.onmesh import bounds_for, volume_mm3, walls_along


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Every set as 3MF and STL."""
    folder = tmp_path_factory.mktemp("pieces")
    for key in set_names():
        for kind in ("3mf", "stl"):
            write_pieces(plan_set(key, bounds_for(key)), folder / f"{key}.{kind}")
    return folder


@pytest.fixture(autouse=True)
def _locale_as_it_was():
    """The library's reader, used here only, changes it too."""
    before = locale.setlocale(locale.LC_ALL)
    yield
    locale.setlocale(locale.LC_ALL, before)


def test_writing_leaves_the_locale_of_the_process_alone(tmp_path):
    before = locale.setlocale(locale.LC_ALL)
    write_pieces(plan_set("comb_x", bounds_for("comb_x")), tmp_path / "größe.3mf")
    assert locale.setlocale(locale.LC_ALL) == before
    assert (tmp_path / "größe.3mf").exists()


def read_strictly(path):
    model = lib3mf.get_wrapper().CreateModel()
    reader = model.QueryReader("3mf")
    reader.SetStrictModeActive(True)
    reader.ReadFromFile(str(path))
    assert reader.GetWarningCount() == 0
    bodies, found = model.GetMeshObjects(), []
    while bodies.MoveNext():
        found.append(bodies.GetCurrentMeshObject())
    return model, found


@pytest.mark.parametrize("key", set_names())
def test_the_strict_reader_finds_names_units_and_sound_bodies(folder, key):
    model, bodies = read_strictly(folder / f"{key}.3mf")
    planned = plan_set(key, bounds_for(key))
    assert model.GetUnit() == lib3mf.ModelUnit.MilliMeter
    assert [body.GetName() for body in bodies] == [str(piece.name) for piece in planned.pieces]
    assert all(body.IsValid() and body.IsManifoldAndOriented() for body in bodies)
    title = model.GetMetaDataGroup().GetMetaData(0)
    assert (title.GetName(), title.GetValue()) == ("Title", str(planned.name))
    assert model.GetBuildItems().Count() == len(planned.pieces)


@pytest.mark.parametrize("key", set_names())
@pytest.mark.parametrize("kind", ["3mf", "stl"])
def test_another_library_measures_the_nominal_lengths_in_the_file(folder, key, kind):
    """float32 of the files holds 300 mm to 0.00002 mm."""
    planned = plan_set(key, bounds_for(key))
    read = trimesh.load(folder / f"{key}.{kind}")
    mesh = read.to_mesh() if isinstance(read, trimesh.Scene) else read
    mesh.merge_vertices()
    assert mesh.is_watertight and mesh.body_count == len(planned.pieces)
    assert mesh.volume == pytest.approx(sum(volume_mm3(planned)), rel=2e-6)
    for gauge, (first, second) in zip(planned.gauges, planned.places(), strict=True):
        walls = walls_along(mesh, first, second)
        ends = [walls[np.argmin(np.abs(walls - jaw))] for jaw in (0.0, gauge.nominal_mm)]
        assert ends[1] - ends[0] == pytest.approx(gauge.nominal_mm, abs=1e-4), gauge.name


def test_the_thumbnail_is_a_png_that_can_be_unpacked(folder):
    model, _ = read_strictly(folder / "comb_x.3mf")
    assert model.HasPackageThumbnailAttachment()
    picture = bytes(model.GetPackageThumbnailAttachment().WriteToBuffer())
    assert picture.startswith(b"\x89PNG\r\n\x1a\n")
    packed = picture[picture.index(b"IDAT") + 4 :]
    rows = np.frombuffer(zlib.decompressobj().decompress(packed), np.uint8).reshape(256, 257)
    assert not rows[:, 0].any() and {40, 255} <= set(rows[:, 1:].ravel().tolist())


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("comb.obj", "neither .3mf nor .stl"),
        ("missing/comb.3mf", "cannot be written"),
        ("taken.stl", "cannot be written"),
    ],
)
def test_what_cannot_be_written_is_said_and_nothing_is_left(tmp_path, name, says):
    (tmp_path / "taken.stl").mkdir()
    (tmp_path / "taken.stl" / "inside").touch()
    with pytest.raises(StoreError, match=says):
        write_pieces(plan_set("mass_box"), tmp_path / name)
    assert [path.name for path in tmp_path.iterdir()] == ["taken.stl"]


def test_a_mark_stands_in_the_head_of_an_stl_and_nowhere_else(tmp_path):
    planned = plan_set("comb_x", bounds_for("comb_x"))
    write_pieces(planned, tmp_path / "plain.stl")
    write_pieces(planned, tmp_path / "marked.stl", "ä" + "m" * 200)
    plain, marked = ((tmp_path / f"{name}.stl").read_bytes() for name in ("plain", "marked"))
    assert marked == b"?" + b"m" * 79 + plain[80:]


def test_a_mark_stands_beside_the_title_of_a_3mf(tmp_path):
    write_pieces(plan_set("comb_x", bounds_for("comb_x")), tmp_path / "marked.3mf", "invented")
    model, _ = read_strictly(tmp_path / "marked.3mf")
    group = model.GetMetaDataGroup()
    told = [group.GetMetaData(number) for number in range(group.GetMetaDataCount())]
    assert [(one.GetName(), one.GetValue()) for one in told] == [
        ("Title", "Size comb along X"), ("Description", "invented"),
    ]  # fmt: skip

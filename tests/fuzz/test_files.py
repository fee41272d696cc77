"""Every hostile file with every reader of files: read, or refused in words; nothing hangs and nothing is changed."""

from __future__ import annotations

import pytest

from app.pages.shop.photos import small_picture
from core.errors import InputError, StoreError
from core.guidance.ownparts import parts_from_text
from core.guidance.settinglines import lines_of_template
from core.motion_trials.gcodepath import read_path
from core.motion_trials.spectrum import read_log
from core.part_size.features import FeatureKind
from core.records.csvio import read_readings
from core.records.exchange import read_export
from core.records.outside import content_of
from core.records.rescue import rescue
from core.records.store import open_store
from tests.fuzz.files import hostile_files

MB = 5  # the limits of the pages are larger


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    return {path.name: path for path in hostile_files(tmp_path_factory.mktemp("hostile"))}


def text_of(path):
    return content_of(path, MB).decode("utf-8-sig", "replace")


def restored(path):
    """Put it in the place of a database, by the storage page."""
    store = open_store(path.with_name("own.sqlite"))
    try:
        store.storage.restore(str(path))
    finally:
        store.close()


READERS = {
    "readings": lambda path: read_readings(path, list(FeatureKind)),
    "an export": read_export,
    "a log": lambda path: read_log(text_of(path)),
    "a toolpath": lambda path: read_path(content_of(path, MB)),
    "own parts": lambda path: parts_from_text(text_of(path)),
    "a template": lambda path: lines_of_template(text_of(path)),
    "a picture": lambda path: small_picture(str(path)),
    "a database": lambda path: open_store(path).close(),
    "a copy to restore": restored,
    "a copy in the place of one": lambda path: rescue(path.with_name("own.sqlite"), str(path)),
}
NAMES = (
    "binary.csv", "empty.csv", "long_line.csv", "formula.csv", "wide.csv", "zero.csv", "latin.csv", "log.csv",
    "still.csv", "deep.json", "twice.json", "tag.json", "long_number.json", "other_version.json", "no_rows.json",
    "hostile.gcode", "circles.gcode", "packed.csv", "loop.csv", "pipe.json", "zero.gcode", "sparse.json", "bomb.3mf",
    "picture.png", "huge.png", "other.sqlite",
)  # fmt: skip


@pytest.mark.parametrize("reader", READERS)
def test_read_or_refused_in_words(qapp, files, reader):
    assert set(NAMES) <= set(files)
    read = []
    for name in NAMES:
        before = files[name].lstat()
        try:
            READERS[reader](files[name])
        except (InputError, StoreError) as refusal:
            assert len(refusal.message) > 20
        else:
            read.append(name)
        after = files[name].lstat()
        assert (before.st_size, before.st_mtime_ns) == (after.st_size, after.st_mtime_ns)
    assert "sparse.json" not in read and "pipe.json" not in read and "zero.gcode" not in read and "loop.csv" not in read


def test_what_is_read_of_them(qapp, files):
    """Each reader takes a good file: it is the content that is refused."""
    assert read_readings(files["still.csv"].parent / written(files, "good.csv"), list(FeatureKind)).axis == ("x",)
    time_s, _ = read_log(text_of(files["still.csv"]))
    assert time_s.size == 2000


def written(files, name):
    (files["still.csv"].parent / name).write_text("axis,kind,nominal_mm,measured_mm\nx,outside,10,10.1\n")
    return name

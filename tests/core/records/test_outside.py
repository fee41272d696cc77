"""Files from outside: folders, pipes, devices, loops, files that vanish or are too large are refused in a sentence."""

import io
import os
import stat
from pathlib import Path

import pytest

from core.errors import InputError
from core.records.csvio import ReadingsFileError, read_readings
from core.records.exchange import LARGEST_MB, read_export
from core.records.outside import content_of


def test_a_plain_file_is_read_whole(tmp_path):
    file = tmp_path / "some.txt"
    file.write_bytes(b"\0\xff" * 9)
    assert content_of(file, 1) == b"\0\xff" * 9


def hostile(folder: Path) -> dict[str, Path]:
    loop, pipe = folder / "loop.csv", folder / "pipe.csv"
    loop.symlink_to(loop)
    os.mkfifo(pipe)
    link = folder / "zero.csv"
    link.symlink_to("/dev/zero")
    return {
        "folder": folder,
        "loop": loop,
        "pipe": pipe,
        "device": Path("/dev/zero"),
        "link": link,
        "gone": folder / "gone.csv",
        "no name": folder / "a\0b",
        "long name": folder / ("x" * 5000),
    }


KINDS = ("folder", "loop", "pipe", "device", "link", "gone", "no name", "long name")


@pytest.mark.parametrize("kind", KINDS)
def test_what_is_no_plain_file(tmp_path, kind):
    path = hostile(tmp_path)[kind]
    with pytest.raises(
        InputError, match=r"is not there or is not a file; check its name|cannot be read; check"
    ) as caught:
        content_of(path, 1, "log")
    assert caught.value.field == "log" and str(path) in caught.value.message


@pytest.mark.parametrize("kind", KINDS)
def test_readings_and_exports_are_asked_the_same(tmp_path, kind):
    path = hostile(tmp_path)[kind]
    with pytest.raises(ReadingsFileError):
        read_readings(path, ("outside",))
    with pytest.raises(InputError):
        read_export(path)
    if kind in ("pipe", "link", "loop"):
        with pytest.raises(InputError, match="is not there or is not a file|cannot be read"):
            read_export(path.rename(path.with_suffix(".json")))


class Unread(io.FileIO):
    """A file that must not be read."""

    def read(self, size=-1):
        raise AssertionError(size)


def test_a_file_that_grows_while_it_is_read_is_refused(tmp_path, monkeypatch):
    file = tmp_path / "log.csv"
    file.write_bytes(b"1" * (10**6 + 1))
    monkeypatch.setattr(os, "fstat", lambda _handle: os.stat_result((stat.S_IFREG, *[0] * 9)))
    with pytest.raises(InputError, match="larger than 1 MB"):
        content_of(file, 1)


def test_a_gigabyte_is_refused_before_it_is_in_memory(tmp_path, monkeypatch):
    """A sparse file: it takes no room on the disk. It is refused unread, so quickly."""
    monkeypatch.setattr(os, "fdopen", lambda *how: Unread(os.dup(how[0])))
    for name, limit in (("big.json", LARGEST_MB), ("big.csv", 10)):
        with (tmp_path / name).open("wb") as file:
            file.truncate(10**9)
        with pytest.raises(InputError, match=f"larger than {limit} MB"):
            (read_export if limit > 10 else lambda path: read_readings(path, ()))(tmp_path / name)


def test_a_file_that_may_not_be_opened_or_vanishes(tmp_path, monkeypatch):
    file = tmp_path / "some.txt"
    file.write_text("text")

    def fail_with(error):
        def fail(*_args):
            raise error

        return fail

    monkeypatch.setattr(os, "open", fail_with(PermissionError()))
    with pytest.raises(InputError, match="cannot be read; check that you may open it"):
        content_of(file, 1)
    monkeypatch.setattr(os, "open", fail_with(FileNotFoundError()))
    with pytest.raises(InputError, match="is not there"):
        content_of(file, 1)


def test_a_pipe_that_takes_the_place_of_a_file_in_between(tmp_path, monkeypatch):
    file, pipe = tmp_path / "some.txt", tmp_path / "pipe"
    file.write_text("text")
    os.mkfifo(pipe)
    ends = []

    def swapped(_path, flags):
        ends.append(os.open_before(pipe, flags))
        return ends[-1]

    monkeypatch.setattr(os, "open_before", os.open, raising=False)
    monkeypatch.setattr(os, "open", swapped)
    with pytest.raises(InputError, match="is not a file"):
        content_of(file, 1)

from pathlib import Path

import pytest

from core.records import share
from core.records.share import kind_at, network_drive

MOUNTS = """\
/dev/vda1 / ext4 rw 0 0
tmpfs /run tmpfs rw 0 0
box:/shop /srv/shop nfs4 rw 0 0
//box/files /srv/my\\040files cifs rw 0 0
/dev/vdb /srv/shop/own xfs rw 0 0
me@box: /home/me/box fuse.sshfs rw 0 0
box:/a /srv/twice nfs rw 0 0
/dev/vdc /srv/twice ext4 rw 0 0

short
"""


@pytest.mark.parametrize(
    ("path", "kind", "network"),
    [
        ("/srv/a.sqlite", "ext4", False),
        ("/srv/shop/a.sqlite", "nfs4", True),
        ("/srv/shop/own/a.sqlite", "xfs", False),
        ("/srv/shopping/a.sqlite", "ext4", False),
        ("/srv/my files/a.sqlite", "cifs", True),
        ("/home/me/box/a.sqlite", "fuse.sshfs", True),
        ("/srv/twice/a.sqlite", "ext4", False),
    ],
)
def test_the_drive_of_a_file(path, kind, network, tmp_path, monkeypatch):
    assert kind_at(Path(path), MOUNTS) == kind
    (tmp_path / "mounts").write_text(MOUNTS)
    monkeypatch.setattr(share, "MOUNTS", tmp_path / "mounts")
    assert network_drive(Path(path)) == (kind if network else "")


def test_a_path_that_begins_with_a_computer():
    assert network_drive(Path("//box/shop/a.sqlite")) == "SMB"


def test_where_nobody_knows(tmp_path, monkeypatch):
    monkeypatch.setattr(share, "MOUNTS", tmp_path / "none")
    assert network_drive(tmp_path) == ""

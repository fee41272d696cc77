"""Whether a file lies on a drive of the network, where SQLite cannot be trusted with two seats.

Reference: https://www.sqlite.org/faq.html, question 5 (locks of network file systems), and
https://www.sqlite.org/wal.html, 1 (the write-ahead log works on one computer only).
"""

from __future__ import annotations

import re
from pathlib import Path

MOUNTS = Path("/proc/self/mounts")  # of Linux; other systems are told by the form of the path alone
_NETWORK = re.compile(
    r"nfs\d?|cifs|smb\w*|ncpfs|afs|9p|ceph|glusterfs|lustre|davfs|fuse\.(sshfs|rclone|davfs|gvfsd-fuse)"
)
_ESCAPED = re.compile(r"\\([0-7]{3})")


def network_drive(path: Path) -> str:
    """Return the kind of network drive that a file lies on; nothing where it lies on this computer or nobody knows."""
    if str(path).startswith(("\\\\", "//")):
        return "SMB"
    try:
        mounts = MOUNTS.read_text("utf-8", "replace")
    except OSError:
        return ""
    kind = kind_at(path.resolve(), mounts)
    return kind if _NETWORK.fullmatch(kind) else ""


def kind_at(path: Path, mounts: str) -> str:
    """Return the file system that holds a path, by the lines of a table of mounts: what, where, kind, options."""
    found, depth = "", -1
    for line in mounts.splitlines():
        _, where, kind = (line.split(" ") + ["", "", ""])[:3]
        point = Path(_ESCAPED.sub(lambda code: chr(int(code[1], 8)), where))
        if path.is_relative_to(point) and len(point.parts) >= depth:  # a later mount hides an earlier one
            found, depth = kind, len(point.parts)
    return found

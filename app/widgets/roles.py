"""What a widget of our own is to a screen reader: a picture, a chart, an area; Qt alone would tell of a mere filler.

Each decorator gives a class and what is made from it a role; the accessible name and description of a widget say the
rest. Qt asks `_tell` for every widget a screen reader meets, by the name of its class and then of the bases of that.
The answer belongs to Qt from then on and goes with its widget; Python keeps an empty shell of it.
"""

from __future__ import annotations

from functools import partial
from typing import TypeVar

from PySide6.QtCore import QObject
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtWidgets import QAccessibleWidget, QFrame, QWidget

from app.faults import or_else

Kind = TypeVar("Kind", bound=type[QWidget])

_PANEL = "card"  # the object name by which the theme dresses a panel

_roles: dict[str, tuple[type[QWidget], QAccessible.Role]] = {}


def _told_as(role: QAccessible.Role, kind: Kind) -> Kind:
    if not _roles:
        QAccessible.installFactory(_tell)
    _roles[kind.__name__] = kind, role
    return kind


told_as_picture = partial(_told_as, QAccessible.Role.Graphic)
told_as_chart = partial(_told_as, QAccessible.Role.Chart)
told_as_area = partial(_told_as, QAccessible.Role.Pane)
told_as_frame = partial(_told_as, QAccessible.Role.Border)


@or_else(None)
def _tell(class_name: str, asked: QObject) -> QAccessibleInterface | None:
    if isinstance(asked, QFrame) and asked.objectName() == _PANEL:
        return QAccessibleWidget(asked, QAccessible.Role.Grouping)
    kind, role = _roles.get(class_name, (QWidget, QAccessible.Role.NoRole))
    if role == QAccessible.Role.NoRole or not isinstance(asked, kind):
        return None  # Qt knows it itself
    return QAccessibleWidget(asked, role)

"""What stands side by side goes on below where it must, and nothing in it is cut."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QLabel, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from app.bodyroom import BodyRoom
from app.widgets.formscroll import FormScroll
from app.widgets.longcheck import LongCheckBox
from app.widgets.wordslabel import WordsLabel
from app.widgets.wraprow import WrapRow


def row_of(qtbot, widgets, *, at_foot=False, shares=()):
    host = QWidget()
    column = QVBoxLayout(host)
    column.setContentsMargins(0, 0, 0, 0)
    row = WrapRow(at_foot=at_foot)
    row.setSpacing(8)
    for widget in widgets:
        row.add(widget, shares=widget in shares)
    column.addLayout(row)
    column.addStretch(1)
    qtbot.addWidget(host)
    host.show()
    return host, row


def buttons(count, px=100):
    made = [QPushButton(f"Button {number}") for number in range(count)]
    for button in made:
        button.setFixedSize(px, 30)
    return made


def test_buttons_stand_in_one_row_while_they_fit_and_go_on_below(qtbot):
    three = buttons(3)
    host, row = row_of(qtbot, three)
    host.resize(316, 200)
    assert [button.pos() for button in three] == [QPoint(0, 0), QPoint(108, 0), QPoint(216, 0)]
    host.resize(315, 200)
    assert [button.pos() for button in three] == [QPoint(0, 0), QPoint(108, 0), QPoint(0, 38)]
    three[1].hide()
    row.activate()
    assert three[2].pos() == QPoint(108, 0)
    assert host.minimumSizeHint().width() == 100


def test_what_shares_takes_what_is_left_over_up_to_its_greatest_width(qtbot):
    first, second, last = buttons(3, px=50)
    first.setMinimumSize(20, 30)
    first.setMaximumSize(70, 30)
    second.setMinimumSize(20, 30)
    second.setMaximumSize(1000, 30)
    host, _row = row_of(qtbot, [first, second, last], shares=(first, second))
    host.resize(300, 100)
    assert (first.width(), second.width(), last.x()) == (70, 300 - 70 - 50 - 16, 250)


def test_a_foot_stands_at_the_right_and_words_above_it_where_they_would_be_narrow(qtbot):
    words = QLabel("What not to touch is told here in a sentence that is longer than one line of this card.")
    words.setWordWrap(True)
    (keep,) = buttons(1, px=150)
    host, _row = row_of(qtbot, [words, keep], at_foot=True, shares=(words,))
    host.resize(400, 300)
    assert keep.x() == 250 and words.width() == 242
    host.resize(220, 300)
    assert keep.y() > words.y() and keep.x() == 70 and words.width() == 220
    assert words.height() >= words.heightForWidth(220)


def test_from_right_to_left_the_first_stands_at_the_right(qtbot):
    two = buttons(2)
    host, _row = row_of(qtbot, two)
    host.setLayoutDirection(Qt.LayoutDirection.RightToLeft)
    host.resize(300, 60)
    assert [button.x() for button in two] == [200, 92]


def test_a_long_check_box_takes_as_many_lines_as_it_needs_and_a_click_on_its_words(qtbot):
    box = LongCheckBox("I have read the &cautions, every one of them, and stay with the machine all the time.")
    qtbot.addWidget(box)
    box.resize(180, 20)
    box.show()
    assert box.height() >= box.heightForWidth(180) > box.heightForWidth(900)
    assert box.minimumSizeHint().width() < 180
    qtbot.mouseClick(box, Qt.MouseButton.LeftButton, pos=QPoint(170, box.height() - 5))
    assert box.isChecked()
    box.grab()


def test_a_label_of_words_insists_on_its_lines(qtbot):
    label = WordsLabel("One sentence that takes several lines in a narrow place.")
    qtbot.addWidget(label)
    label.setWordWrap(True)
    label.resize(90, 10)
    label.show()
    assert label.height() >= label.heightForWidth(90)
    narrow = label.minimumHeight()
    label.resize(900, 10)
    assert label.minimumHeight() < narrow  # one line is enough where there is room
    label.setText("")
    assert label.minimumHeight() == 0


@pytest.fixture
def form():
    widget = QWidget()
    column = QVBoxLayout(widget)
    for button in buttons(12):
        column.addWidget(button)
    return widget


def test_a_form_scrolls_to_the_field_with_the_keyboard_and_is_never_narrower_than_it_needs(qtbot, form):
    scroll = FormScroll(form)
    qtbot.addWidget(scroll)
    scroll.resize(200, 150)
    scroll.show()
    scroll.activateWindow()
    qtbot.waitUntil(scroll.isActiveWindow)
    assert scroll.minimumSizeHint().width() > form.minimumSizeHint().width()
    last = form.findChildren(QPushButton)[-1]
    last.setFocus()
    assert scroll.viewport().rect().contains(last.mapTo(scroll.viewport(), last.rect().center()))


def test_the_body_scrolls_only_where_its_page_needs_more_room(qtbot, form):
    body, small = QStackedWidget(), QWidget()
    QVBoxLayout(small).addWidget(QLabel("small"))
    body.addWidget(small)
    body.addWidget(form)
    room = BodyRoom(body)
    qtbot.addWidget(room)
    room.resize(300, 200)
    room.show()
    assert not room.verticalScrollBar().isVisible() and body.size() == room.viewport().size()
    body.setCurrentWidget(form)
    qtbot.waitUntil(room.verticalScrollBar().isVisible)
    assert body.height() >= 12 * 30
    room.resize(300, 900)
    qtbot.waitUntil(lambda: not room.verticalScrollBar().isVisible())


class LowerBesideTheBar(QWidget):
    """What 300 px wide is higher than its room, and narrower is not; it says so only once it is that wide."""

    def __init__(self, says_before):
        super().__init__()
        self.says_before, self.resized = says_before, 0
        policy = self.sizePolicy()
        policy.setHeightForWidth(says_before)
        self.setSizePolicy(policy)

    def hasHeightForWidth(self):
        return self.says_before

    def heightForWidth(self, width):
        return 205 if width >= 300 else 190

    def resizeEvent(self, event):
        super().resizeEvent(event)
        self.resized += 1
        assert self.resized < 100, "it is given one size after the other for ever"
        if not self.says_before:
            self.setMinimumHeight(self.heightForWidth(event.size().width()))


@pytest.mark.parametrize("says_before", [True, False])
def test_a_page_that_is_lower_beside_the_bar_does_not_chase_it(qtbot, says_before):
    body, page, part = QStackedWidget(), QWidget(), LowerBesideTheBar(says_before)
    column = QVBoxLayout(page)
    column.setContentsMargins(0, 0, 0, 0)
    column.addWidget(part)
    body.addWidget(page)
    room = BodyRoom(body)
    qtbot.addWidget(room)
    room.resize(300, 200)
    room.show()
    for _ in range(200):
        QApplication.sendPostedEvents()
    assert room.verticalScrollBar().isVisible() and part.width() < 300
    assert room.maximumViewportSize().width() == body.width()

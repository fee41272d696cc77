"""A form that scrolls asks for the same width from then on; else page and form would never come to rest."""

from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from app.widgets.formscroll import FormScroll


def form_of(words):
    form = QWidget()
    lines = QVBoxLayout(form)
    for _ in range(4):
        label = QLabel("wordy " * words, wordWrap=True)
        label.setMinimumWidth(150)
        lines.addWidget(label)
    return form


def test_the_width_of_a_bar_that_was_there_is_not_given_back(qtbot):
    scroll = FormScroll(form_of(40))
    qtbot.addWidget(scroll)
    scroll.resize(200, 1500)
    scroll.show()
    without = scroll.minimumSizeHint().width()
    scroll.resize(200, 150)
    qtbot.waitUntil(lambda: scroll.verticalScrollBar().maximum() > 0)
    barred = scroll.minimumSizeHint().width()
    scroll.resize(200, 1500)
    qtbot.waitUntil(lambda: scroll.verticalScrollBar().maximum() == 0)
    assert without < barred == scroll.minimumSizeHint().width()

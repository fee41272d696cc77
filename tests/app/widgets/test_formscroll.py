"""A form that scrolls asks for the same width from then on; else page and form would never come to rest."""

from PySide6.QtWidgets import QLabel, QLineEdit, QVBoxLayout, QWidget

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


def test_what_can_be_seen_from_the_top_is_seen_from_there(qtbot):
    """The first row of a form stays in sight when a field below it gets the keyboard, as far as there is room."""
    form = QWidget()
    lines = QVBoxLayout(form)
    fields = [QLineEdit() for _ in range(12)]
    for field in fields:
        lines.addWidget(field)
    scroll = FormScroll(form)
    qtbot.addWidget(scroll)
    scroll.resize(200, 200)
    scroll.show()
    qtbot.waitExposed(scroll)
    bar = scroll.verticalScrollBar()
    fields[-1].setFocus()
    qtbot.waitUntil(lambda: bar.value() > 0)
    last_seen = max(n for n, field in enumerate(fields) if field.geometry().bottom() < scroll.viewport().height())
    fields[last_seen].setFocus()
    qtbot.waitUntil(lambda: bar.value() == 0)
    fields[last_seen + 2].setFocus()
    qtbot.waitUntil(lambda: bar.value() > 0)
    assert last_seen >= 2

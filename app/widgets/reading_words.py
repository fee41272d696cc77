"""What is said beside the line in which readings are typed: which one is next, what was kept, what is expected."""

from __future__ import annotations

from PySide6.QtCore import QObject

from app.rownames import shown_name
from app.widgets.answerrow import MOST_SUGGESTIONS
from app.widgets.fields import number_text
from app.widgets.reading_rows import question_text
from app.widgets.readings import READING, ReadingsModel


class ReadingWords(QObject):
    """The sentences of a row of readings."""

    def __init__(self, model: ReadingsModel) -> None:
        super().__init__(model)
        self._model = model

    def place(self, row: int) -> str:
        """Return which reading of how many is typed, and what it is held against."""
        return self.tr("{number} of {count}: {name}").format(
            number=row + 1, count=self._model.rowCount(), name=self._with_nominal(row)
        )

    def kept(self, row: int, expected: str) -> str:
        """Return what was kept of a reading just typed, beside what was expected; why, where it was not."""
        if self._model.is_empty(row) or self._model.unsaved:
            return self._model.unsaved
        if self._model.is_covered(row):
            return self.tr("Kept {name}").format(name=self._name(row))
        reading = self._model.text(row, READING)
        kept = self.tr("Kept {name}: {reading} {unit}").format(name=self._name(row), reading=reading, unit=self._unit())
        kept = kept.rstrip()
        return self.tr("{kept}, expected {expected}").format(kept=kept, expected=expected) if expected else kept

    def kept_last(self, kept: str) -> str:
        """Return the same of the last reading that was missing."""
        return self.tr("{echo}. All {count} readings are in.").format(echo=kept, count=self._model.rowCount())

    def taken_once(self, text: str) -> str:
        """Return that a gauge sent a reading twice."""
        return self.tr("{text} came twice at once and was taken once.").format(text=text)

    def doubt(self, row: int) -> str:
        """Return what cannot be read, or is asked, of a reading."""
        question = self._model.question(row)
        return self._model.problem(row, READING) or (question_text(question, self._model.inch) if question else "")

    def state(self, row: int, *, foretold: bool) -> str:
        """Return why a reading does not count, or what is expected, once it is in or where that is to be `foretold`."""
        if self._model.is_excluded(row):
            return self.tr("Excluded: {reason}").format(reason=self._model.values(row)["reason"])
        if self._model.is_covered(row):
            return self.tr("Kept; hidden until all judges have scored. Type it anew to change it.")
        if self._model.is_empty(row) and not foretold:
            return ""
        expected = self._model.expected(row)
        if expected is None:
            return self.tr("Nothing is expected here yet.") if foretold else ""
        return self.tr("Expected {expected}").format(expected=expected.text)

    def answers(self, row: int) -> list[str]:
        """Return the answers to the question about a reading; none where nothing is asked."""
        question = self._model.question(row)
        if question is None:
            return []
        keep = self.tr("Keep {reading}  (Enter)").format(reading=self._model.text(row, READING))
        other = self.tr("{reading} mm  (Alt+{digit})")
        offered = [
            other.format(reading=number_text(mm, 4), digit=digit)
            for digit, mm in enumerate(question.suggestions[:MOST_SUGGESTIONS], start=1)
        ]
        return [keep, *map(self._model.said, offered)]

    def keys(self, *, signs_wait: bool) -> str:
        """Return the keys; where readings may be negative a sign alone is taken for a command only with Enter."""
        waiting = self.tr("Enter keeps, goes on   ↑ back   * skip   / flag   + Enter again")
        plain = self.tr("Enter keeps, goes on   − back   * skip   / flag   + again")
        keys = (waiting if signs_wait else plain).split("   ")
        return "   ".join(key.replace(" ", "\N{NO-BREAK SPACE}") for key in keys)

    def _name(self, row: int) -> str:
        return shown_name(self._model.values(row)["feature"]) or self.tr("reading {number}").format(number=row + 1)

    def _with_nominal(self, row: int) -> str:
        name, nominal = self._name(row), self._model.values(row)["nominal_mm"]
        if nominal is None:
            return name
        against = next((column for column in self._model.columns if column.key == "nominal_mm"), None)
        of_length = against is not None and against.kind == "length"
        inch = against is not None and against.inch
        text = self._model.length_text(nominal) if inch else number_text(nominal)
        unit = self._unit() if not of_length else self._model.length_unit if inch else "mm"
        word = against.word if against is not None and against.word else self.tr("nominal")
        return self.tr("{name}, {word} {nominal} {unit}").format(name=name, word=word, nominal=text, unit=unit).rstrip()

    def _unit(self) -> str:
        """Return the unit of the readings."""
        column = self._model.column(READING)
        return column.unit if column.kind == "number" else self._model.length_unit

"""A table of many rows: the widest text of a column is found among the longest ones."""

from app.widgets.plaintable import PlainTable


def test_of_a_thousand_rows_no_number_is_cut(qtbot):
    widest = "-1234.56789 ± 0.00012"
    rows = [(f"Bay {row}", widest if row == 900 else "1.0 ± 0.1") for row in range(1200)]
    table = PlainTable("Shares", ("Name", "Share, %"))
    qtbot.addWidget(table)
    table.set_rows(rows)
    table.resize(400, 300)
    table.show()
    assert table.columnWidth(1) >= table.fontMetrics().horizontalAdvance(widest)
    table.set_rows([])
    assert table.sizeHintForColumn(1) == 0

"""Reading: each fault with its line and column, all of them, and the good rows all the same."""

import pytest

from planner.plain_data.reading import rows_of
from planner.plain_data.tables import table_of

HEADING = "id,yard,name,first_week,last_week,gain_lb,spread"
GOOD = "1,3,clover,21,27,80.0,0.35"


@pytest.fixture
def read(tmp_path):
    """Rows and faults of a file of flow windows."""

    def of(text, *, label="apiary.FlowWindow", encoding="utf-8"):
        table, faults = table_of(label), []
        content = text if isinstance(text, bytes) else text.encode(encoding)
        (tmp_path / table.file).write_bytes(content)
        return list(rows_of(tmp_path, table, tell=faults.append)), faults

    return of


def test_rows_come_with_their_line_also_after_text_of_several_lines(read):
    rows, faults = read(f'{HEADING}\r\n1,3,"clo\r\nver",21,27,80.0,0.35\r\n2,3,basswood,27,29,40.0,0.35\r\n')
    assert faults == []
    assert [(line, values[0], values[2]) for line, values in rows] == [
        (2, 1, "clo\r\nver"),
        (4, 2, "basswood"),
    ]


def test_columns_may_stand_in_another_order_and_a_mark_at_the_start_is_passed_over(read):
    rows, faults = read(
        "\ufeffname,id,yard,first_week,last_week,spread,gain_lb\nclover,1,3,21,27,0.35,80.0\n\n"
    )
    assert faults == []
    assert rows[0][1][:3] == [1, 3, "clover"]


def test_all_faults_of_all_rows_are_told_and_good_rows_are_read(read):
    rows, faults = read(f"{HEADING}\nx,3,clover,54th,27,80.0,0.35\n{GOOD}\n2,3,clover,21,27,80.0\n")
    assert [values[0] for _, values in rows] == [1]
    assert [(fault.line, fault.column) for fault in faults] == [(2, "id"), (2, "first_week"), (4, "")]
    assert faults[2].what == "6 cells stand in this row" and faults[2].remedy.startswith("7")


def test_a_heading_with_columns_missing_unknown_or_twice_is_told_once_each(read):
    rows, faults = read("id,yard,name,name,first,last_week,gain_lb,spread\n")
    assert rows == []
    assert [(fault.line, fault.what) for fault in faults] == [
        (1, "the column first_week is missing"),
        (1, "the column first is not known"),
        (1, "the column name is there twice"),
    ]


def test_a_file_saved_with_semicolons_is_no_table(read):
    rows, faults = read(HEADING.replace(",", ";") + "\n" + GOOD.replace(",", ";"))
    assert rows == [] and len(faults) == 8


def test_an_empty_file_misses_every_column(read):
    assert len(read("")[1]) == 7


def test_text_that_is_not_utf_8_names_its_line(read):
    _rows, faults = read(f"{HEADING}\n{GOOD}\n2,3,M\xfcller,21,27,80.0,0.35\n", encoding="latin-1")
    assert [(fault.line, fault.what) for fault in faults] == [(3, "the text is not UTF-8")]


def test_a_quote_that_never_ends_is_told(read):
    _, faults = read(f'{HEADING}\n{GOOD}\n2,3,"clover,21,27,80.0,0.35\n')
    assert faults[0].what.startswith("this is no CSV")
    assert faults[0].line == 3


def test_cells_of_any_length_are_read(read):
    long = "x" * 200_000
    heading = ",".join(table_of("inventory.InspectorWord").headings)
    rows, faults = read(f"{heading}\n1,1,,cleared,I,2026-01-01,{long}\n", label="inventory.InspectorWord")
    assert faults == [] and rows[0][1][-1] == long


@pytest.mark.parametrize("name", ["documents/gone.json", "documents/../secret.key", "documents/a/b.json"])
def test_a_document_that_is_not_there_or_lies_elsewhere_is_told(read, name, tmp_path):
    (tmp_path / "secret.key").write_text("{}")
    heading = ",".join(table_of("planner.Season").headings)
    _, faults = read(f"{heading}\n1,2027,2027-01-15,{name},,{{}}\n", label="planner.Season")
    assert [(fault.line, fault.column) for fault in faults] == [(2, "answers")]
    assert "cannot be read" in faults[0].what

"""The workbook to fill in: sheets, drop-downs, frozen heads, widths, print areas, text that stays text."""

import io

import pytest
from openpyxl import load_workbook

from inventory.sheets import Known, Sheet, YardRow, filled, template
from inventory.sheets.examples import example
from inventory.sheets.layout import EXAMPLES, HOW_TO, LISTS, TABLES
from tests.inventory.sheets.workbooks import known, place


@pytest.fixture(scope="module")
def book():
    return load_workbook(io.BytesIO(template(known())))


def validations(sheet):
    return {str(rule.sqref).split(":")[0]: rule for rule in sheet.data_validations.dataValidation}


def test_the_sheets_stand_in_the_order_they_are_filled_in(book):
    assert book.sheetnames == [HOW_TO, *(table.title for table in TABLES), EXAMPLES, LISTS]


def test_nothing_is_filled_in(book):
    assert [book[table.title].max_row for table in TABLES] == [1] * len(TABLES)


def test_every_sheet_is_set_for_screen_and_print(book):
    for sheet in book:
        assert sheet.freeze_panes == "A2" and sheet.print_area and sheet.page_setup.fitToWidth == 1
    for table in TABLES:
        sheet = book[table.title]
        widths = [sheet.column_dimensions[cell.column_letter].width for cell in sheet[1]]
        assert widths == [column.width for column in table.columns]
        assert sheet.print_title_rows == "$1:$1" and sheet["A1"].font.bold


def test_columns_carry_the_format_of_what_they_hold(book):
    formats = {
        ("Colonies", "tag"): "@",
        ("Colonies", "started_on"): "yyyy-mm-dd",
        ("Prices", "price_1"): "#,##0.00",
        ("Gear", "quantity"): "#,##0",
    }
    for (title, key), number_format in formats.items():
        letter = place(title, key, 1)[:-1]
        assert book[title].column_dimensions[letter].number_format == number_format


def test_drop_downs_offer_parts_sets_yards_suppliers_and_choices(book):
    assert validations(book["Gear"])["B2"].formula1 == f"Lists!$A$2:$A${len(known().parts) + 1}"
    assert validations(book["Gear"])["A2"].formula1 == "Yards!$A$2:$A$501"
    assert validations(book["Colonies"])["C2"].formula1 == f"Lists!$E$2:$E${len(known().sets) + 1}"
    assert validations(book["Colonies"])["D2"].formula1 == '"strong,fair,weak"'
    assert validations(book["Prices"])["A2"].formula1 == "Suppliers!$A$2:$A$101"
    assert validations(book["Kits"])["B2"].formula1 == "Prices!$B$2:$B$1001"


def test_every_column_has_a_prompt_and_no_list_is_longer_than_a_spreadsheet_takes(book):
    for table in TABLES:
        rules = validations(book[table.title])
        assert len(rules) == len(table.columns)
        for rule in rules.values():
            assert rule.prompt and len(rule.promptTitle) <= 32 and len(rule.formula1 or "") <= 255


def test_lists_name_every_part_with_its_unit_and_every_set(book):
    lists = book[LISTS]
    parts = {row[2].value: row[0].value for row in lists.iter_rows(min_row=2) if row[0].value}
    assert parts == dict(known().parts)
    assert [lists.cell(row, 5).value for row in range(2, 9)] == [one.name for one in known().sets.values()]


def test_the_guide_tells_every_column_and_carries_cautions(book):
    told = [cell.value for row in book[HOW_TO].iter_rows() for cell in row if cell.value]
    for table in TABLES:
        assert table.about in told
        assert all(column.hint in told for column in table.columns)
    assert sum(text.startswith("Caution: ") for text in told) == 2


def test_examples_stand_apart_and_are_marked_as_invented(book):
    told = [str(cell.value) for row in book[EXAMPLES].iter_rows() for cell in row if cell.value]
    assert told[0] == "Examples, invented. Nothing on this sheet is read."
    assert {"M-01", "Mill Field (invented)", "Floor and cover"} <= set(told)


def test_text_never_becomes_a_formula():
    sheet = Sheet(yards=(YardRow(code="a", name="=1+1", access="=HYPERLINK(1)", is_shed=True),))
    page = load_workbook(io.BytesIO(filled(sheet)))["Yards"]
    assert (page["A2"].value, page["A2"].data_type, page["J2"].data_type) == ("=1+1", "s", "s")


def test_filled_without_known_names_offers_what_the_sheet_speaks_of():
    book = load_workbook(io.BytesIO(filled(example())))
    parts = [cell.value for cell in book[LISTS]["C"][1:] if cell.value]
    assert parts == ["box-medium-10", "box-medium-10-flat", "cover-10", "floor-10", "frame-medium-foundation"]


def test_an_empty_catalogue_still_makes_a_template():
    assert load_workbook(io.BytesIO(template(Known()))).sheetnames[0] == HOW_TO
    assert load_workbook(io.BytesIO(template())).sheetnames[0] == HOW_TO

"""What a package says of its worksheets, texts and days; openpyxl writes the workbooks, a library of its own."""

import io
import zipfile

import pytest
from openpyxl import Workbook
from openpyxl.utils.datetime import CALENDAR_MAC_1904
from openpyxl.xml.constants import SHEET_MAIN_NS

from inventory.sheets import package
from inventory.sheets.faults import Unreadable
from inventory.sheets.package import book_of, plain
from tests.inventory.sheets.workbooks import repacked


def saved(book=None):
    file = io.BytesIO()
    (book or Workbook()).save(file)
    return file.getvalue()


def opened(content):
    with zipfile.ZipFile(io.BytesIO(content)) as made:
        return book_of(made)


def with_texts(xml):
    """A workbook with texts kept apart from its cells, as other programs write them."""
    content, links = saved(), "xl/_rels/workbook.xml.rels"
    with zipfile.ZipFile(io.BytesIO(content)) as made:
        link = '<Relationship Id="rId9" Type="x/sharedStrings" Target="sharedStrings.xml"/></Relationships>'
        linked = made.read(links).decode().replace("</Relationships>", link)
    texts = f'<sst xmlns="{SHEET_MAIN_NS}">{xml}</sst>'
    return repacked(content, replace={links: linked}, add={"xl/sharedStrings.xml": texts})


def test_worksheets_are_told_in_their_order():
    book = Workbook()
    book.active.title = "One & only"
    book.create_sheet("Two", 0)
    assert [title for title, _ in opened(saved(book)).sheets] == ["Two", "One & only"]


def test_a_text_in_several_runs_is_one_and_its_reading_aid_is_left_out():
    xml = "<si><r><t>Mill </t></r><r><t>Field</t></r></si><si><t>a</t><rPh sb='0' eb='1'><t>b</t></rPh></si><si/>"
    assert opened(with_texts(xml)).texts == ("Mill Field", "a", "")


def test_signs_written_by_number_are_turned_back():
    assert plain("a_x000D_b_x005F_c") == "a\rb_c"


def test_the_calendar_of_1904_is_known():
    book = Workbook()
    book.epoch = CALENDAR_MAC_1904
    assert opened(saved(book)).epoch == CALENDAR_MAC_1904 != opened(saved()).epoch


def test_styles_that_show_days_are_known():
    book = Workbook()
    for row, shown_as in enumerate(("0.00", "yyyy-mm-dd", "dd/mm/yy", '#,##0" d"'), 1):
        book.active.cell(row, 1, 1).number_format = shown_as
    dates = opened(saved(book)).dates
    assert [book.active.cell(row, 1).style_id in dates for row in (1, 2, 3, 4)] == [False, True, True, False]


@pytest.mark.parametrize(
    "most, what", [("MOST_TEXTS", "more than 2 texts"), ("MOST_SIGNS", "more than 2 signs")]
)
def test_texts_are_bounded(monkeypatch, most, what):
    monkeypatch.setattr(package, most, 2)
    with pytest.raises(Unreadable) as refusal:
        opened(with_texts("<si><t>a</t></si>" * 3))
    assert refusal.value.fault.what.endswith(what)


def test_a_worksheet_outside_the_file_is_not_there():
    links = (
        '<Relationships><Relationship Id="rId1" TargetMode="External" '
        'Type="x/worksheet" Target="../../secret.xml"/></Relationships>'
    )
    with pytest.raises(Unreadable):
        opened(repacked(saved(), replace={"xl/_rels/workbook.xml.rels": links}))

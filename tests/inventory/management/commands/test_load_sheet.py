"""manage.py load_sheet: the template, the dry run, faults as a table, posted once."""

import datetime as dt
import io

import pytest
from django.core.management import CommandError, call_command
from openpyxl import load_workbook

from apiary.models import Colony, Yard
from inventory import loading
from inventory.management.commands.load_sheet import Command
from inventory.models import Act, Count
from tests.inventory.sheets.workbooks import altered

pytestmark = pytest.mark.django_db


@pytest.fixture
def sheet(tmp_path):
    def write(changes=()):
        path = tmp_path / "gear.xlsx"
        path.write_bytes(altered(dict(changes)))
        return str(path)

    return write


def said(*args, **options):
    out = io.StringIO()
    call_command("load_sheet", *args, stdout=out, **options)
    return out.getvalue()


def refused(*args, **options):
    out = io.StringIO()
    with pytest.raises(CommandError) as refusal:
        call_command("load_sheet", *args, stdout=out, **options)
    assert refusal.value.returncode == 1
    return str(refusal.value), out.getvalue()


def test_it_works(sheet):
    told = said(sheet(), "--day", "2026-09-01")
    assert "colonies     2        0         0" in told and told.endswith("Posted: 15 new.\n")
    assert Act.objects.get(name="load sheet").day == dt.date(2026, 9, 1)


def test_a_dry_run_posts_nothing(sheet):
    assert "Would post: 15 new.\n" in said(sheet(), "--dry-run")
    assert not Yard.objects.exists()


def test_the_same_file_posts_once(sheet):
    path = sheet()
    said(path, "--day", "2026-09-01")
    assert said(path) == "This very file was posted on 2026-09-01: nothing was posted again.\n"


def test_corrections_are_told_line_by_line(sheet):
    said(sheet())
    told = said(sheet({("Gear", "quantity", 2): 40}))
    assert "Shed: medium box, 10 frames: changed, the book has 42, corrected to the 40 told\n" in told


def test_every_fault_is_a_row_and_nothing_is_posted(sheet):
    what, told = refused(sheet({("Gear", "quantity", 2): "forty", ("Colonies", "tag", 3): "M-01"}))
    assert what.endswith(": nothing was posted.")
    lines = told.splitlines()
    assert lines[0].split() == ["Sheet", "Cell", "What", "is", "wrong", "What", "would", "be", "right"]
    assert any(line.startswith("Gear") and "D2" in line and "'forty' is text" in line for line in lines)
    assert not Yard.objects.exists()


def test_notes_are_told_and_stop_nothing(sheet):
    told = said(sheet({("Yards", "stands", 3): 1}))
    assert told.startswith(
        "Note: Yards column Stands: Mill Field (invented) has 2 colonies, but stands for 1.\n"
    )


def test_a_file_that_is_no_workbook_is_one_fault(tmp_path):
    path = tmp_path / "gear.xlsx"
    path.write_text("tag,yard\n")
    what, told = refused(str(path))
    assert what == "1 fault: nothing was posted." and "This is a text file (.csv or the like)" in told


def test_a_file_that_is_not_there_and_a_folder_are_told(tmp_path):
    assert refused(str(tmp_path / "none.xlsx"))[0].endswith("cannot be read: No such file or directory.")
    assert refused(str(tmp_path))[0].endswith("cannot be read: Is a directory.")


def test_a_day_written_otherwise_is_refused(sheet):
    assert refused(sheet(), "--day", "1/9/2026")[0] == "'1/9/2026' is not a day: write it as 2026-11-30."


def test_what_the_books_refuse_is_told_in_both_ways(sheet):
    what = "2999-01-01"
    assert "1 January 2999 is still to come" in refused(sheet(), "--day", what)[0]
    assert "1 January 2999 is still to come" in refused(sheet(), "--day", what, "--dry-run")[0]
    assert not Colony.objects.exists()


def test_the_template_is_written_and_never_over_another_file(tmp_path):
    path = tmp_path / "my-gear.xlsx"
    assert said(template=str(path)) == f"{path} is ready to fill in. Its first sheet says how.\n"
    reading = loading.read(path.read_bytes(), day=dt.date(2026, 9, 1))
    assert [fault.sheet for fault in reading.faults] == ["Keeper", "Yards"]
    assert "is there already and may be filled in" in refused(template=str(path))[0]
    assert "cannot be written" in refused(template=str(tmp_path / "none" / "t.xlsx"))[0]


def test_nothing_named_is_told_what_to_name():
    assert refused()[0] == "Name the workbook to load, or --template FILE to get one to fill in."


def test_the_help_says_where_to_begin():
    assert "Begin with --template my-gear.xlsx" in Command.help


def test_only_what_was_tried_is_loaded_where_that_is_asked(sheet):
    mark = said(sheet(), "--dry-run").split()[-1]
    path = sheet({("Gear", "quantity", 2): 40})
    told, _ = refused(path, "--as-tried", mark)
    assert told.startswith("Nothing was posted. The books have changed since the sheet was tried")
    assert not Yard.objects.exists()
    assert said(path, "--as-tried", said(path, "--dry-run").split()[-1]).endswith("Posted: 15 new.\n")


def test_each_row_is_told_with_its_place(sheet):
    assert "Gear row 2: Shed: medium box, 10 frames: new, 42\n" in said(sheet(), "--dry-run")


def test_a_count_becomes_a_draft_or_corrects_the_book(sheet, tmp_path):
    said(sheet(), "--day", "2026-09-01")
    path = tmp_path / "count.xlsx"
    said("--template", str(path), "--kind", "count", "--place", "shed", "--day", "2026-10-01")
    book = load_workbook(path)
    assert book["Counted"]["E2"].value == 42
    book["Counted"]["F2"] = 40
    book.save(path)
    told = said(str(path), "--dry-run", "--day", "2026-10-01")
    assert "  Shed: Medium box, 10 frames: booked 42, counted 40, 2 missing\n" in told
    assert "Would make 1 draft of counts" in told and not Count.objects.exists()
    said(str(path), "--day", "2026-10-01", "--correct")
    assert Count.objects.get().status == Count.Status.POSTED


def test_a_place_nobody_knows_is_refused(sheet, tmp_path):
    said(sheet())
    told, _ = refused("--template", str(tmp_path / "c.xlsx"), "--kind", "count", "--place", "nowhere")
    assert told == "There is no place 'nowhere'. The books have: shed, mill-field."

"""Files that are no workbook, or too much of one, are refused with a sentence that says what to do."""

import io
import zipfile

import pytest

from inventory.sheets import opening
from inventory.sheets.faults import Unreadable
from inventory.sheets.opening import leave_to_open
from tests.inventory.sheets.workbooks import altered, repacked

OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def package(members):
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as made:
        for name, data in members.items():
            made.writestr(name, data)
    return file.getvalue()


@pytest.fixture(scope="module")
def workbook():
    return altered({})


def refused(content):
    with pytest.raises(Unreadable) as refusal:
        leave_to_open(content)
    assert refusal.value.fault.remedy
    return refusal.value.fault.what


def test_a_workbook_may_be_opened(workbook):
    assert leave_to_open(workbook) is None


@pytest.mark.parametrize(
    "content, what",
    [
        (b"", "The file is empty"),
        (b"tag,yard\nC1,Creek\n", "This is a text file (.csv or the like) with another name"),
        ("tag;yard\nÄ1;Bäk\n".encode("latin-1"), "This is a text file (.csv or the like) with another name"),
        ("\ufefftag\tyard\n".encode(), "This is a text file (.csv or the like) with another name"),
        (b"<html><table></table></html>", "This is a web page or XML file with another name"),
        (OLE + b"\0" * 600, "This is an old workbook (.xls)"),
        (OLE + "EncryptedPackage".encode("utf-16-le"), "The workbook is locked with a password"),
        (b"%PDF-1.4\x00\x01\x02", "This is not a workbook"),
        (b"PK\x03\x04 cut short", "The file is damaged"),
    ],
)
def test_what_is_no_workbook_is_named(content, what):
    assert refused(content) == what


@pytest.mark.parametrize(
    "members, what",
    [
        (
            {"mimetype": "application/vnd.oasis.opendocument.spreadsheet"},
            "This is an OpenDocument file (.ods)",
        ),
        ({"xl/workbook.bin": b"x"}, "This is a binary workbook (.xlsb)"),
        ({"[Content_Types].xml": "<Types/>", "word/document.xml": "<w/>"}, "This is not a workbook"),
        ({"notes.txt": "x"}, "This is not a workbook"),
    ],
)
def test_other_packages_are_named(members, what):
    assert refused(package(members)) == what


def test_macros_are_refused_by_their_part_and_by_their_kind(workbook):
    assert refused(repacked(workbook, add={"xl/vbaProject.bin": b"x"})) == "The workbook carries macros"
    with zipfile.ZipFile(io.BytesIO(workbook)) as old:
        kinds = old.read("[Content_Types].xml").replace(b"sheet.main+xml", b"sheet.macroEnabled.main+xml")
    assert (
        refused(repacked(workbook, replace={"[Content_Types].xml": kinds})) == "The workbook carries macros"
    )


def test_a_cut_off_workbook_is_damaged(workbook):
    assert refused(workbook[: len(workbook) // 2]) == "The file is damaged"


def test_a_member_that_does_not_unpack_is_damaged(workbook):
    at = workbook.index(b"xl/workbook.xml") + 40
    broken = workbook[:at] + b"\xff" * 40 + workbook[at + 40 :]
    assert refused(broken) == "The file is damaged"


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
@pytest.mark.parametrize("name", ["xl/workbook.xml", "xl/worksheets/sheet3.xml", "xl/styles.xml"])
def test_a_document_type_is_refused_wherever_it_stands(workbook, name, encoding):
    markup = '<?xml version="1.0"?><!-- first --><!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>'.encode(encoding)
    what = refused(repacked(workbook, replace={name: markup}))
    assert what == "The workbook holds a document type declaration, which no spreadsheet program writes"


def test_a_small_file_that_unpacks_to_much_is_refused_before_it_is_unpacked(workbook):
    assert (
        refused(repacked(workbook, add={"xl/media/a": b"\0" * 60_000_000}))
        == "The file would unpack to 57 MB"
    )


def test_a_member_that_swells_beyond_the_ratio_is_refused(workbook):
    assert refused(repacked(workbook, add={"xl/media/a": b"\0" * 2_000_000})).startswith(
        "The file would unpack"
    )


def test_too_many_pieces_are_refused(workbook):
    many = {f"xl/media/{number}": b"x" for number in range(opening.MOST_MEMBERS)}
    assert refused(repacked(workbook, add=many)).endswith(f"more than {opening.MOST_MEMBERS}")


def test_a_file_beyond_ten_megabytes_is_refused():
    assert refused(b"PK" + b"\0" * opening.LARGEST) == "The file has 10.0 MB, more than 10"


def test_an_encrypted_package_is_locked(workbook):
    at = workbook.index(b"PK\x01\x02") + 8
    locked = workbook[:at] + bytes([workbook[at] | 1]) + workbook[at + 1 :]
    assert refused(locked) == "The workbook is locked with a password"

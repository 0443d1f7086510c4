"""Files made to harm: each is refused with a sentence, or read, in less than 300 MB, measured in a process of its own."""

import io
import json
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from openpyxl.xml.constants import SHEET_MAIN_NS

from inventory.sheets import filled, read_sheet
from inventory.sheets.markup import DAMAGED, NO_DOCTYPE
from tests.inventory.sheets.workbooks import altered, known, repacked

ROOT = Path(__file__).resolve().parents[3]
MOST_MEGABYTES = 300
GEAR = "xl/worksheets/sheet6.xml"  # the fifth sheet after the guide
READ = """
import json, resource, sys
from inventory.sheets import read_sheet
from tests.inventory.sheets.workbooks import known
reading = read_sheet(open(sys.argv[1], "rb").read(), known())
peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
told = [str(fault) for fault in reading.faults[:3]]
print(json.dumps({"peak": peak, "faults": told, "rows": len(reading.sheet.gear) if reading.sheet else None}))
"""


def sheet_of(xml):
    return f'<worksheet xmlns="{SHEET_MAIN_NS}"><dimension ref="A1"/><sheetData>{xml}</sheetData></worksheet>'


def with_gear(xml):
    return repacked(altered({}), replace={GEAR: sheet_of(xml)})


def head():
    names = ("Place", "Part", "Condition", "Count")
    return row_of(1, names)


def row_of(number, texts):
    cells = "".join(f'<c t="inlineStr"><is><t>{text}</t></is></c>' for text in texts)
    return f'<row r="{number}">{cells}</row>'


def with_texts(xml):
    links = "xl/_rels/workbook.xml.rels"
    content = altered({})
    with zipfile.ZipFile(io.BytesIO(content)) as made:
        link = '<Relationship Id="rId99" Type="x/sharedStrings" Target="sharedStrings.xml"/></Relationships>'
        linked = made.read(links).decode().replace("</Relationships>", link)
        names = made.namelist()
    texts = f'<sst xmlns="{SHEET_MAIN_NS}">{xml}</sst>'
    drop = [name for name in names if name.endswith("sharedStrings.xml")]
    return repacked(content, replace={links: linked}, add={"xl/sharedStrings.xml": texts}, drop=drop)


def many(piece, megabytes, *, vary=False):
    """The piece over and over; varied, so that it packs no better than the ratio lets in."""
    times = megabytes * 1_000_000 // len(piece)
    if not vary:
        return piece * times
    return "".join(piece.replace("0", str(number * 7919 % 1_000_003), 1) for number in range(times))


def digits(number):
    return " ".join(str(number * by % 9973) for by in range(1, 60))


def lying_about_its_size():
    """A member that states a hundred bytes and holds megabytes."""
    content = bytearray(with_gear(many('<row r="0"><c><v>1</v></c></row>', 20, vary=True)))
    at = content.rindex(GEAR.encode(), 0, len(content)) - 46
    assert content[at : at + 4] == b"PK\x01\x02"
    content[at + 24 : at + 28] = (100).to_bytes(4, "little")
    return bytes(content)


HOSTILE = {
    "empty": (lambda: b"", "The file is empty"),
    "no zip": (lambda: b"\x00\x01\x02" * 50, "This is not a workbook"),
    "cut off": (lambda: altered({})[:-900], DAMAGED[0]),
    "csv": (lambda: b"Place,Part\nShed,Box\n", "This is a text file (.csv or the like) with another name"),
    "web page": (lambda: b"<html><table/></html>", "This is a web page or XML file with another name"),
    "old": (lambda: b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 900, "This is an old workbook (.xls)"),
    "locked": (
        lambda: b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + "EncryptedPackage".encode("utf-16-le"),
        "The workbook is locked with a password",
    ),
    "macros": (lambda: repacked(altered({}), add={"xl/vbaProject.bin": b"x"}), "The workbook carries macros"),
    "macros elsewhere": (
        lambda: repacked(altered({}), add={"custom/vbaProject.bin": b"x"}),
        "The workbook carries macros",
    ),
    "swollen": (
        lambda: repacked(altered({}), add={"xl/media/a": b"\0" * 286_000_000}),
        "The file would unpack to 273 MB",
    ),
    "many pieces": (
        lambda: repacked(altered({}), add={f"xl/media/{n}": b"x" for n in range(5_000)}),
        "The workbook is made of",
    ),
    "entities": (
        lambda: repacked(
            altered({}),
            replace={
                GEAR: '<!DOCTYPE a [<!ENTITY b "bbbbbbbb"><!ENTITY c "&b;&b;&b;&b;">]><worksheet>&c;</worksheet>'
            },
        ),
        NO_DOCTYPE[0],
    ),
    "other files": (
        lambda: repacked(
            altered({}),
            replace={
                GEAR: '<!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/passwd">]><worksheet>&b;</worksheet>'
            },
        ),
        NO_DOCTYPE[0],
    ),
    "nested": (
        lambda: with_gear("<a>" * 10_000 + "</a>" * 10_000),
        "The workbook's tags are nested too deep",
    ),
    "one endless text": (
        lambda: with_gear(f'<row><c t="inlineStr"><is><t>{many("a0", 3, vary=True)}</t></is></c></row>'),
        "The workbook holds a text of more than 100,000 signs",
    ),
    "many cells in a row": (
        lambda: with_gear(f"<row>{many('<c><v>0</v></c>', 45, vary=True)}</row>"),
        None,
    ),
    "many filled cells": (
        lambda: with_gear(
            "".join(
                f"<row>{''.join(f'<c><v>{row * column % 99_991}</v></c>' for column in range(1, 41))}</row>"
                for row in range(1, 30_000)
            )
        ),
        "The workbook has more than 1,000,000 filled cells",
    ),
    "many texts": (
        lambda: with_texts(many("<si><t>0</t></si>", 12, vary=True)),
        "The workbook holds more than 600,000 texts",
    ),
    "wide texts": (
        lambda: with_texts(
            "".join(f"<si><t>\U0001f41d{digits(number)}</t></si>" for number in range(60_000))
        ),
        "The workbook's texts have more than 12,000,000 signs",
    ),
    "lying about its size": (lying_about_its_size, DAMAGED[0]),
}


def read_apart(content, folder):
    """What a fresh process tells of the file: its faults, and its peak in MB.

    A small shell stands between: Linux counts the memory of whoever starts a process towards that process's peak."""
    path = folder / "hostile.xlsx"
    path.write_bytes(content)
    reader = ["sh", "-c", '"$@"; exit $?', "sh", sys.executable, "-c", READ, str(path)]
    done = subprocess.run(reader, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_file_is_refused_in_words_and_little_memory(name, tmp_path):
    make, what = HOSTILE[name]
    told = read_apart(make(), tmp_path)
    assert told["rows"] is None and told["peak"] < MOST_MEGABYTES
    assert told["faults"][0].startswith(what or "")


def test_a_million_empty_rows_and_a_lying_dimension_are_read_as_what_they_hold(tmp_path):
    empty = "".join(f'<row r="{number}" s="1"/>' for number in range(5, 1_000_000))
    gear = row_of(2, ("Shed", "medium box, 10 frames", "sound")).replace("</row>", "<c><v>7</v></c></row>")
    told = read_apart(with_gear(head() + gear + empty), tmp_path)
    assert told["faults"] == [] and told["rows"] == 1 and told["peak"] < MOST_MEGABYTES


@pytest.mark.parametrize(
    "text", ["=1+1", "=cmd|'/c calc'!A1", "+1", "-1+1", "@SUM(1)", "\u05d0\u05d1 \u0645"]
)
def test_text_that_looks_like_a_formula_and_text_from_right_to_left_stay_text(text):
    content = altered({}, alter=lambda book: _typed(book["Yards"]["J2"], text))
    reading = read_sheet(content, known())
    assert reading.faults == () and reading.sheet.yards[0].access == text
    again = read_sheet(filled(reading.sheet, known()), known())
    assert again.sheet == reading.sheet


def _typed(cell, text):
    cell.value, cell.data_type = text, "s"


@pytest.mark.parametrize("text", ["a_x0001_b", "abc\u202edef", "a\u2066b"])
def test_signs_that_hide_or_turn_text_are_refused(text):
    reading = read_sheet(altered({("Yards", "access", 2): text}), known())
    assert [(one.sheet, one.cell) for one in reading.faults] == [("Yards", "J2")]


def test_the_formats_of_other_programs_are_told_apart(tmp_path):
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w") as made:
        made.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
    (fault,) = read_sheet(file.getvalue(), known()).faults
    assert fault.what == "This is an OpenDocument file (.ods)" and ".xlsx" in fault.remedy

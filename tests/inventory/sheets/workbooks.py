"""Workbooks for the tests: the invented example filled in, then altered cell by cell as a keeper might."""

import io
import json
import zipfile
from pathlib import Path

from openpyxl import load_workbook

from inventory.sheets import Known, KnownSet, filled, read_sheet
from inventory.sheets.examples import example
from inventory.sheets.layout import TABLES

CATALOGUE = json.loads(
    (Path(__file__).parents[3] / "fixtures" / "catalogue.json").read_text(encoding="utf-8")
)


def known(**more):
    """What books with nothing but the catalogue know."""
    return Known(
        **{
            "parts": {part["code"]: part["name"] for part in CATALOGUE["parts"]},
            "sets": {
                one["code"]: KnownSet(name=one["name"], width=one["width"], is_nuc=one["is_nuc"])
                for one in CATALOGUE["hive_sets"]
            },
            "super_boxes": frozenset(
                (depth, width) for depth in ("deep", "medium", "shallow") for width in (8, 10)
            ),
            **more,
        }
    )


def place(title, key, row):
    """'C3' of a column by key in the template."""
    table = next(table for table in TABLES if table.title == title)
    return f"{'ABCDEFGHIJKLMNOPQRSTUVWXYZ'[table.position(key) - 1]}{row}"


def altered(changes, *, sheet=None, alter=None):
    """The example workbook with cells set: {(sheet, column key, row): value}; `alter(book)` may do more."""
    book = load_workbook(io.BytesIO(filled(sheet or example(), known())))
    for (title, key, row), value in changes.items():
        book[title][place(title, key, row)].value = value
    if alter:
        alter(book)
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()


def read(changes=(), *, of=None, day=None, **more):
    return read_sheet(altered(dict(changes), **more), of or known(), day=day)


def faults(*args, **more):
    """(sheet, cell, what, remedy) of every fault."""
    return [(one.sheet, one.cell, one.what, one.remedy) for one in read(*args, **more).faults]


def only_fault(*args, **more):
    """The one fault there is."""
    (one,) = read(*args, **more).faults
    return one


def repacked(content, *, add=None, replace=None, drop=()):
    """The same package with members added, replaced by name, or dropped."""
    file = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            if name not in drop:
                new.writestr(name, (replace or {}).get(name, old.read(name)))
        for name, data in (add or {}).items():
            new.writestr(name, data)
    return file.getvalue()

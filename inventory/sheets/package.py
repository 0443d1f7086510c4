"""The pieces of a workbook's package: its worksheets by title, texts kept once for all cells, which styles are dates.

Takes an open ZipFile; gives a Book. Reads no cell; follows no address outside the file.
"""

import posixpath
import re
from dataclasses import dataclass

from openpyxl.styles.numbers import BUILTIN_FORMATS, is_date_format
from openpyxl.utils.datetime import CALENDAR_MAC_1904, CALENDAR_WINDOWS_1900

from inventory.sheets.faults import Unreadable
from inventory.sheets.markup import AFRESH, DAMAGED, Walker, walk

MOST_TEXTS = 600_000
MOST_SIGNS = 12_000_000  # in all texts together
MOST_STYLES = 70_000
ESCAPED = re.compile(r"_x([0-9A-Fa-f]{4})_")


@dataclass(frozen=True, kw_only=True)
class Book:
    """`sheets` are (title, member of the package); `dates` the numbers of styles that show a number as a day."""

    sheets: tuple[tuple[str, str], ...]
    texts: tuple[str, ...]
    dates: frozenset[int]
    epoch: object


def book_of(package):
    """The Book in an open package."""
    workbook, targets = _Workbook(), _Targets()
    _walk(package, "xl/workbook.xml", workbook)
    _walk(package, "xl/_rels/workbook.xml.rels", targets)
    sheets = tuple(
        (title, targets.worksheets[link]) for title, link in workbook.sheets if link in targets.worksheets
    )
    if not sheets:
        raise Unreadable(*DAMAGED)
    texts, styles = _Texts(), _Styles()
    for member, walker in ((targets.texts, texts), (targets.styles, styles)):
        if member:
            _walk(package, member, walker)
    epoch = CALENDAR_MAC_1904 if workbook.begins_1904 else CALENDAR_WINDOWS_1900
    return Book(sheets=sheets, texts=tuple(texts.all), dates=frozenset(styles.dates), epoch=epoch)


def _walk(package, member, walker):
    by_form = {name.lower(): name for name in package.namelist()}
    if member.lower() not in by_form:
        raise Unreadable(*DAMAGED)
    with package.open(by_form[member.lower()]) as stream:
        walk(stream, walker)


def plain(text):
    """Text with the signs that a workbook writes as _x000D_ turned back."""
    return ESCAPED.sub(lambda found: chr(int(found[1], 16)), text) if "_x" in text else text


class _Workbook(Walker):
    def __init__(self):
        self.sheets, self.begins_1904 = [], False

    def start(self, name, attributes):
        if name == "sheet":
            link = next((value for key, value in attributes.items() if key.rpartition(":")[2] == "id"), "")
            self.sheets.append((attributes.get("name", ""), link))
        elif name == "workbookPr":
            self.begins_1904 = attributes.get("date1904", "0") in ("1", "true")


class _Targets(Walker):
    """Where the links of the workbook lead, inside the package only."""

    def __init__(self):
        self.worksheets, self.texts, self.styles = {}, "", ""

    def start(self, name, attributes):
        if name != "Relationship" or attributes.get("TargetMode") == "External":
            return
        target = attributes.get("Target", "")
        member = target.lstrip("/") if target.startswith("/") else posixpath.normpath(f"xl/{target}")
        kind = attributes.get("Type", "").rpartition("/")[2]
        if kind == "worksheet":
            self.worksheets[attributes.get("Id", "")] = member
        elif kind == "sharedStrings":
            self.texts = member
        elif kind == "styles":
            self.styles = member


class _Texts(Walker):
    """Each text once; the runs of a formatted one are put together, how it is pronounced is left out."""

    def __init__(self):
        self.all, self.pieces, self.signs, self.in_text, self.aside = [], [], 0, False, 0

    def start(self, name, attributes):
        if name == "si":
            self.pieces = []
        elif name == "rPh":
            self.aside += 1
        elif name == "t":
            self.in_text = not self.aside

    def end(self, name):
        if name == "t":
            self.in_text = False
        elif name == "rPh":
            self.aside -= 1
        elif name == "si":
            self.all.append(plain("".join(self.pieces)))
            if len(self.all) > MOST_TEXTS:
                raise Unreadable(f"The workbook holds more than {MOST_TEXTS:,} texts", AFRESH)

    def text(self, piece):
        if self.in_text:
            self.signs += len(piece)
            if self.signs > MOST_SIGNS:
                raise Unreadable(f"The workbook's texts have more than {MOST_SIGNS:,} signs", AFRESH)
            self.pieces.append(piece)


class _Styles(Walker):
    def __init__(self):
        self.formats, self.dates, self.in_cells, self.count = dict(BUILTIN_FORMATS), set(), False, 0

    def start(self, name, attributes):
        if name == "numFmt" and len(self.formats) < MOST_STYLES:
            self.formats[_number(attributes.get("numFmtId"))] = attributes.get("formatCode", "")[:255]
        elif name == "cellXfs":
            self.in_cells = True
        elif name == "xf" and self.in_cells:
            shown_as = self.formats.get(_number(attributes.get("numFmtId")), "")
            if is_date_format(shown_as) and self.count < MOST_STYLES:
                self.dates.add(self.count)
            self.count += 1

    def end(self, name):
        if name == "cellXfs":
            self.in_cells = False


def _number(text):
    return int(text) if text and text.isdecimal() and len(text) < 8 else 0

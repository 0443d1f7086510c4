"""A table as a page shows it, read back into heads, rows and sums whose cells are numbers, days or text.

Takes the page's own lines; gives Shown. What stands small under a cell gets a column of its own; what opens, is drawn
or is repeated for a phone is left out. Knows no page.
"""

import datetime as dt
import re
from contextlib import suppress
from dataclasses import dataclass, field
from decimal import Decimal
from html.parser import HTMLParser

LEFT_OUT_TAGS = {"svg", "script", "style", "form", "button", "ul", "ol", "p"}
LEFT_OUT = {"cramped", "of", "why", "opener"}
VOID = {"br", "img", "input", "hr", "wbr"}
FIGURES = {"figure", "quantity"}
MOST_ACROSS = 200
NUMBER = re.compile(r"-?\$?(\d{1,3}(,\d{3})+|\d+)(\.\d+)?")
DAY = re.compile(r"(\d{1,2}) ([A-Z][a-z]{2})[a-z]* (\d{4})")
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


@dataclass(frozen=True, kw_only=True)
class Shown:
    """`columns`: (head, at the right). Every row of `rows` and `sums` is as long as the columns."""

    caption: str
    columns: tuple
    rows: tuple
    sums: tuple


def read_tables(lines):
    """All tables of a piece of a page, in their order."""
    reader = _Reader()
    reader.feed(lines)
    reader.close()
    return [_squared(table) for table in reader.tables]


def value_of(words, *, figure):
    """A figure's number where it is one, a day, else the words."""
    day = DAY.fullmatch(words)
    if day and day[2] in MONTHS:
        with suppress(ValueError):
            return dt.date(int(day[3]), MONTHS.index(day[2]) + 1, int(day[1]))
    if figure and NUMBER.fullmatch(words):
        number = Decimal(words.replace(",", "").replace("$", ""))
        return number if "." in words else int(number)
    return words


@dataclass
class _Cell:
    figure: bool = False
    across: int = 1
    down: int = 1
    hidden: list = field(default_factory=list)
    words: list = field(default_factory=list)
    under: list = field(default_factory=list)

    def told(self, piece="words"):
        return " ".join("".join(getattr(self, piece)).split())


@dataclass
class _Table:
    caption: list = field(default_factory=list)
    parts: dict = field(default_factory=lambda: {"thead": [], "tbody": [], "tfoot": []})


class _Reader(HTMLParser):
    """Follows one table at a time; `_open` holds (tag, what its text is for) of all that is open inside it."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.tables, self._open, self._part, self._cell = [], [], "tbody", None

    def handle_starttag(self, tag, attrs):
        told = dict(attrs)
        css = set((told.get("class") or "").split())
        if tag == "table":
            self.tables.append(_Table())
            self._open, self._part, self._cell = [], "tbody", None
        if not self.tables or tag in VOID:
            self._break(tag)
            return
        use = self._use(tag, told, css)
        self._open.append((tag, use))
        if use == "under" and "sub" in css and self._cell is not None and self._cell.under:
            self._cell.under.append("; ")
        if use == "left out":
            return
        if tag in ("thead", "tbody", "tfoot"):
            self._part = tag
        elif tag == "tr":
            self.tables[-1].parts[self._part].append([])
        elif tag in ("td", "th"):
            self._cell = _Cell(
                figure=bool(css & FIGURES), across=_span(told, "colspan"), down=_span(told, "rowspan")
            )
            if not self.tables[-1].parts[self._part]:
                self.tables[-1].parts[self._part].append([])
            self.tables[-1].parts[self._part][-1].append(self._cell)

    def _use(self, tag, told, css):
        above = self._open[-1][1] if self._open else ""
        if above == "left out" or tag in LEFT_OUT_TAGS or css & LEFT_OUT or told.get("aria-hidden") == "true":
            return "left out"
        if tag == "tr" and "reason" in css:
            return "left out"
        if tag == "caption":
            return "caption"
        if tag in ("td", "th"):
            return "words"
        if "hidden" in css:
            return "hidden"
        return "under" if "sub" in css else above

    def _break(self, tag):
        if tag == "br":
            self.handle_data(" ")

    def handle_endtag(self, tag):
        tags = [name for name, _ in self._open]
        if tag in tags:
            del self._open[len(tags) - 1 - tags[::-1].index(tag) :]

    def handle_data(self, data):
        use = self._open[-1][1] if self._open else ""
        if use == "caption":
            self.tables[-1].caption.append(data)
        elif use in ("words", "under", "hidden") and self._cell is not None:
            pieces = getattr(self._cell, use)
            pieces.append(data)


def _span(told, name):
    number = told.get(name) or "1"
    return max(1, min(MOST_ACROSS, int(number))) if number.isdecimal() else 1


def _squared(table):
    """Spans written out: what goes across leaves blanks behind it, what goes down is said in each row."""
    heads = [_grid(table.parts[part]) for part in ("thead", "tbody", "tfoot")]
    wide = max((len(row) for grid in heads for row in grid), default=0)
    head, body, foot = ([row + [None] * (wide - len(row)) for row in grid] for grid in heads)
    both, columns = body + foot, []
    for place in range(wide):
        cells = [row[place] for row in both if row[place] is not None]
        right = bool(cells) and sum(cell.figure for cell in cells) * 2 > len(cells)
        name = _head_of(head, place)
        columns.append((place, "words", name, right))
        if any(cell.told("under") for cell in cells):
            columns.append((place, "under", f"{name}, note" if name else "Note", False))
    return Shown(
        caption=" ".join("".join(table.caption).split()),
        columns=tuple((name, right) for _, _, name, right in columns),
        rows=tuple(_told(row, columns) for row in body),
        sums=tuple(_told(row, columns) for row in foot),
    )


def _head_of(head, place):
    cells = [row[place] for row in head if row[place] is not None]
    said = [
        " ".join(filter(None, (cell.told(), cell.told("under")))) or cell.told("hidden") for cell in cells
    ]
    return ", ".join(filter(None, said))


def _told(row, columns):
    cells = ((row[place], piece) for place, piece, _, _ in columns)
    return tuple(
        "" if cell is None else value_of(cell.told(piece), figure=cell.figure or piece == "under")
        for cell, piece in cells
    )


def _grid(rows):
    grid: list[list] = []
    still: dict[int, tuple] = {}
    for cells in filter(None, rows):
        line: list = []
        waiting, kept = list(cells), {}
        while waiting or len(line) in still:
            place = len(line)
            if place in still:
                cell, left = still.pop(place)
                line.append(cell)
            else:
                cell = waiting.pop(0)
                left = cell.down
                line += [cell] + [None] * (cell.across - 1)
            if left > 1:
                kept[place] = (cell, left - 1)
        still = kept
        grid.append(line)
    return grid

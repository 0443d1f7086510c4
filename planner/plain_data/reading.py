"""Reads the rows of one file, cell by cell, into values as the database takes them.

Takes the folder and a Table; gives (line, values) row by row, never the whole file. Whatever cannot be read is told
to the ear that listens, with its line and column, and the row is passed over.
"""

import contextlib
import csv
import sys

from planner.plain_data.cells import DOCUMENTS, codec_of
from planner.plain_data.faults import PUT_BACK, CellFault, Fault


def rows_of(folder, table, *, tell):
    """(line, values) of every row that can be read; each fault goes to `tell`."""
    path = folder / table.file
    try:
        with path.open(encoding="utf-8-sig", newline="") as file, _long_cells():
            yield from _rows(_Reader(folder, table, tell), csv.reader(file, strict=True))
    except UnicodeDecodeError:
        tell(
            Fault(
                file=table.file,
                line=_first_not_utf8(path),
                what="the text is not UTF-8",
                remedy="save the file as CSV in UTF-8",
            )
        )


def _rows(reader, lines):
    before = 0
    try:
        order = reader.order_of(next(lines, []))
        if order is None:
            return
        before = lines.line_num
        for cells in lines:
            line, before = before + 1, lines.line_num
            if not cells:
                continue  # an empty line at the end
            values = reader.values_of(line, cells, order)
            if values is not None:
                yield line, values
    except csv.Error as error:
        reader.fault(
            before + 1, "", f"this is no CSV: {error}", "put text with quotes or commas between double quotes"
        )


class _Reader:
    def __init__(self, folder, table, tell):
        self.folder, self.table, self.tell = folder, table, tell
        self.reads = [codec_of(column).read for column in table.columns]
        self.documents = {
            at for at, column in enumerate(table.columns) if codec_of(column).word == "document"
        }

    def fault(self, line, column, what, remedy):
        self.tell(Fault(file=self.table.file, line=line, column=column, what=what, remedy=remedy))

    def order_of(self, heading):
        """Where each column stands in the file; None where the heading is not the table's."""
        wanted = self.table.headings
        missing = [name for name in wanted if name not in heading]
        unknown = [name for name in heading if name not in wanted]
        twice = sorted({name for name in heading if heading.count(name) > 1})
        for names, what in ((missing, "missing"), (unknown, "not known"), (twice, "there twice")):
            for name in names:
                right = f"the first line names {','.join(wanted)}"
                self.fault(1, name, f"the column {name} is {what}", right)
        return None if missing or unknown or twice else [heading.index(name) for name in wanted]

    def values_of(self, line, cells, order):
        """The values in the table's order; None where any cannot be read."""
        if len(cells) != len(order):
            self.fault(
                line, "", f"{len(cells)} cells stand in this row", f"{len(order)}, one for each column"
            )
            return None
        values, good = [], True
        for at, (place, read) in enumerate(zip(order, self.reads, strict=True)):
            text = cells[place]
            try:
                if at in self.documents and text.startswith(DOCUMENTS):
                    text = self._from_shelf(text)
                values.append(read(text))
            except CellFault as fault:
                good = False
                self.fault(line, self.table.headings[at], fault.what, fault.remedy)
        return values if good else None

    def _from_shelf(self, name):
        path = self.folder / name
        try:
            if path.parent != self.folder / DOCUMENTS.rstrip("/") or ".." in path.parts:
                raise FileNotFoundError(name)
            return path.read_text(encoding="utf-8")
        except (OSError, ValueError):
            raise CellFault(f"the document {name} cannot be read", PUT_BACK) from None


@contextlib.contextmanager
def _long_cells():
    """CSV cells of any length, for as long as they are read here."""
    usual = csv.field_size_limit(sys.maxsize)
    try:
        yield
    finally:
        csv.field_size_limit(usual)


def _first_not_utf8(path):
    with path.open("rb") as file:
        for number, line in enumerate(file, start=1):
            try:
                line.decode()
            except UnicodeDecodeError:
                return number
    return 0

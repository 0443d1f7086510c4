"""One worksheet as typed rows: headings matched by text in any order, cells read by what their column holds.

Takes a Grid and its Table; gives Rows. What cannot be read goes to the findings, cell by cell.
"""

from dataclasses import dataclass, field
from typing import Any

from inventory.sheets.faults import Misread
from inventory.sheets.grid import EMPTY, address
from inventory.sheets.names import alike, nearest

HEAD_WITHIN = 10  # rows


@dataclass(frozen=True, kw_only=True)
class Row:
    """`values` by column key; a cell that could not be read is absent, and the row then is not whole."""

    number: int
    values: dict[str, Any]
    cells: dict[str, str] = field(default_factory=dict)  # column key -> address

    def whole(self, keys):
        return all(key in self.values for key in keys)

    def cell(self, key):
        return self.cells.get(key, f"row {self.number}")


def rows_of(table, grid, findings):
    """All rows under the headings that are not empty."""
    head = _head_row(table, grid)
    if head is None:
        wanted = ", ".join(column.heading for column in table.columns if column.needed)
        findings.fault(
            table.title, "A1", "has no headings", f"Write them into row 1, as in the template: {wanted}"
        )
        return []
    places = _places(table, _filled_down(grid, head), head + 1, findings)
    _tell_of_layout(table, grid, head, places, findings)
    if grid.goes_on:
        findings.fault(
            table.title,
            f"row {len(grid.rows) + 1}",
            f"the sheet goes on past row {len(grid.rows)}",
            "Delete the empty rows below your data, or load it in several files",
        )
    filled = [
        (number, cells) for number, cells in enumerate(grid.rows[head + 1 :], head + 2) if _any(cells, places)
    ]
    return [_row(table, places, number, cells, findings) for number, cells in filled]


def _tell_of_layout(table, grid, head, places, findings):
    """Hidden rows are read all the same; cells merged over several rows are refused, for whose value is it?"""
    if below := [number for number in grid.hidden if number > head + 1]:
        rows = f"{len(below)} rows are" if len(below) > 1 else "a row is"
        findings.note(table.title, f"row {below[0]}", f"{rows} hidden and read all the same")
    for column, first, last in grid.merged:
        if last > head + 1 and first > head + 1 and column in places.values():
            findings.fault(
                table.title,
                address(first, column + 1),
                f"is merged over the rows {first} to {last}",
                "Take the merging out and write the value into each row",
            )


def _filled_down(grid, at):
    """The cells of a row among the heads, those merged with one above as that one."""
    cells = list(grid.rows[at])
    for column, first, last in grid.merged:
        above = grid.rows[first - 1] if 0 < first <= len(grid.rows) else ()
        if first <= at < last and column < len(above):
            cells += [EMPTY] * (column + 1 - len(cells))
            cells[column] = above[column]
    return cells


def _any(cells, places):
    return any(not cells[at].is_empty for at in places.values() if at < len(cells))


def _heading(cell):
    return alike(str(cell.value)).rstrip(" *:") if cell.value is not None else ""


def _head_row(table, grid):
    """The row among the first ones that holds most of the headings, two at least: one may be a name by chance."""
    wanted = {alike(column.heading) for column in table.columns}
    rows = [_filled_down(grid, at) for at in range(min(HEAD_WITHIN, len(grid.rows)))]
    hits = [len(wanted & {_heading(cell) for cell in row}) for row in rows]
    if max(hits, default=0) < 2:
        return None
    head = hits.index(max(hits))
    while (
        head + 1 < len(hits) and hits[head + 1] == hits[head]
    ):  # headings merged over two rows stand in both
        head += 1
    return head


def _places(table, row, number, findings):
    """Column key -> position in the row, with a word about every heading that is missing or not ours."""
    by_form = {alike(column.heading): column for column in table.columns}
    places, others = {}, {}
    for at, cell in enumerate(row):
        column = by_form.get(_heading(cell))
        if column is None:
            if _heading(cell):
                others[at] = str(cell.value).strip()
        elif column.key in places:
            findings.fault(
                table.title,
                address(number, at + 1),
                f"the heading {column.heading!r} stands here a second time",
                "Keep one of the two columns",
            )
        else:
            places[column.key] = at
    _complain_of_headings(table, number, places, others, findings)
    return places


def _complain_of_headings(table, number, places, others, findings):
    missing = {column.heading: column for column in table.columns if column.key not in places}
    for at, text in others.items():
        near = nearest(text, missing, likeness=0.8)
        if near:
            missing.pop(near)
            findings.fault(
                table.title, address(number, at + 1), f"the heading {text!r} is not known", f"Write {near!r}"
            )
        else:
            findings.note(table.title, address(number, at + 1), f"the column {text!r} is not read")
    for heading, column in missing.items():
        if column.needed:
            findings.fault(
                table.title,
                f"row {number}",
                f"the heading {heading!r} is missing",
                f"Add a column headed {heading!r}, as in the template",
            )


def _row(table, places, number, cells, findings):
    values, addresses = {}, {}
    for column in table.columns:
        at = places.get(column.key)
        if at is None:
            if not column.needed:
                values[column.key] = column.empty
            continue
        addresses[column.key] = address(number, at + 1)
        try:
            values[column.key] = _value(column, cells[at] if at < len(cells) else None)
        except Misread as wrong:
            findings.fault(table.title, addresses[column.key], wrong.what, wrong.remedy)
    return Row(number=number, values=values, cells=addresses)


def _value(column, cell):
    if cell is None or cell.is_empty:
        if column.needed:
            raise Misread(f"{column.heading} is empty", f"Fill it in: {column.hint.rstrip('.')}")
        return column.empty
    if cell.value is None:
        raise Misread("holds a formula that was never worked out", "Type the value itself")
    if cell.is_error:
        raise Misread(f"shows the error {cell.value}", "Type the value itself")
    return column.holds.read(cell.value)

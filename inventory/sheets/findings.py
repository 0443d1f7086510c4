"""Gathers faults and notes while a workbook is read, so that all are told and not the first.

Takes words; gives the lists, in the order in which a keeper goes through the workbook.
"""

import re

from openpyxl.utils import column_index_from_string

from inventory.sheets.faults import Fault, Note


class Findings:
    def __init__(self):
        self.faults = []
        self.notes = []

    def in_order(self, titles):
        """Faults and notes by sheet, row and column; what is said of a whole sheet comes first."""
        return tuple(
            tuple(sorted(found, key=lambda one: _place(one, titles))) for found in (self.faults, self.notes)
        )

    def fault(self, sheet, cell, what, remedy):
        self.faults.append(Fault(sheet=sheet, cell=cell, what=what, remedy=remedy))

    def note(self, sheet, cell, what):
        self.notes.append(Note(sheet=sheet, cell=cell, what=what))


def _place(one, titles):
    ranks = {"": -1, **{title: rank for rank, title in enumerate(titles)}}
    order = ranks.get(one.sheet, len(titles))
    cell = re.fullmatch(r"([A-Z]{1,3})(\d+)", one.cell)
    if cell:
        return order, int(cell[2]), column_index_from_string(cell[1])
    row = re.fullmatch(r"row (\d+)", one.cell)
    return order, int(row[1]) if row else 0, 0

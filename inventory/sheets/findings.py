"""Gathers faults and notes while a workbook is read, so that all are told and not the first.

Takes words; gives the lists, in the order of the sheets, rows and columns they were found in.
"""

from inventory.sheets.faults import Fault, Note


class Findings:
    def __init__(self):
        self.faults = []
        self.notes = []

    def fault(self, sheet, cell, what, remedy):
        self.faults.append(Fault(sheet=sheet, cell=cell, what=what, remedy=remedy))

    def note(self, sheet, cell, what):
        self.notes.append(Note(sheet=sheet, cell=cell, what=what))

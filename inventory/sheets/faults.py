"""What is wrong in a workbook: sheet, cell, what is wrong, what would be right. Every fault, not the first.

Takes nothing but words; gives records to show. Raises nothing of its own but Misread, inside one cell.
"""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Fault:
    """Nothing is posted while there is one. `sheet` and `cell` are empty where the file as a whole is meant."""

    sheet: str = ""
    cell: str = ""
    what: str
    remedy: str

    def __str__(self):
        where = " ".join(word for word in (self.sheet, self.cell) if word)
        return f"{where + ': ' if where else ''}{self.what}. {self.remedy}."


@dataclass(frozen=True, kw_only=True)
class Note:
    """Worth knowing, stops nothing."""

    sheet: str = ""
    cell: str = ""
    what: str

    def __str__(self):
        where = " ".join(word for word in (self.sheet, self.cell) if word)
        return f"{where + ': ' if where else ''}{self.what}."


class Misread(ValueError):
    """One cell cannot be taken for what its column wants."""

    def __init__(self, what, remedy):
        super().__init__(what)
        self.what, self.remedy = what, remedy


class Unreadable(ValueError):
    """The file as a whole cannot be opened as a workbook; carries the one fault."""

    def __init__(self, what, remedy):
        super().__init__(what)
        self.fault = Fault(what=what, remedy=remedy)

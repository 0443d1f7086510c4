"""A programme as plain columns and rows, without PuLP: for one scenario's block, built and solved by the hundred.

Takes what the families of constraints put in, as a Draft does; gives the same columns and rows. The families are the
only definition of the programme; a block only keeps their words in another book.
"""

from planner.programme.draft import SENSES, Draft


class Column:
    """A column with PuLP's names for its bounds, so that the families can set them."""

    __slots__ = ("lowBound", "name", "number", "upBound", "whole")

    def __init__(self, name, number, lowest, highest, whole):
        self.name, self.number, self.whole = name, number, whole
        self.lowBound, self.upBound = lowest, highest


class PlainDraft(Draft):
    """A Draft that keeps columns and rows in lists."""

    def __init__(self, problem):
        super().__init__(problem)
        self.columns = []
        self.rows = []  # (name, terms, sense −1, 0 or 1, bound)

    def column(self, kind, *codes, lowest=0.0, highest=None, whole=False):
        column = Column(self.names.name(kind, *codes), len(self.columns), lowest, highest, whole)
        self.columns.append(column)
        return column

    def put(self, name, terms, sense, bound):
        self.rows.append((name, dict(terms), SENSES[sense], bound))

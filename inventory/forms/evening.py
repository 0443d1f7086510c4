"""An evening's table as it is sent: rows without limit, each as typed, each with its faults beside it.

Takes fields named number-column; gives Typed rows. What was typed is never lost, whatever was wrong.
"""

import re
from dataclasses import dataclass

from inventory.catching_up.rows import Typed
from inventory.forms.acts import ActForm

FIRST, MORE = 12, 12
FIELD = re.compile(r"(\d{1,5})-(day|act|where|gear|many|other)")
COLUMN_OF = {"where": "place", "many": "quantity"}  # names a place has elsewhere are left to places


@dataclass(frozen=True, kw_only=True)
class ShownRow:
    """A row as the page shows it."""

    typed: Typed
    faults: list

    @property
    def number(self):
        return self.typed.number


class EveningForm(ActForm):
    """Rows as typed; `refuse_rows` tells what the books refuse of which row."""

    covers = asks_first = True

    def __init__(self, data=None, *, day):
        super().__init__(data, day=day)
        self.row_faults = {}

    def typed(self):
        """All rows sent, in the order of their numbers."""
        rows: dict[int, dict] = {}
        for name in self.data:
            match = FIELD.fullmatch(name)
            if match:
                column = COLUMN_OF.get(match[2], match[2])
                rows.setdefault(int(match[1]), {})[column] = self.data[name]
        return [Typed(number=number, **rows[number]) for number in sorted(rows)]

    @property
    def table(self):
        """The rows to show: those sent, and empty ones to go on with."""
        rows = self.typed() or [Typed(number=1, day=self.initial["day"])]
        last = max(row.number for row in rows)
        wanted = last + MORE if "add" in self.data else max(FIRST, last)
        rows += [Typed(number=number) for number in range(last + 1, wanted + 1)]
        return [ShownRow(typed=row, faults=self.row_faults.get(row.number, [])) for row in rows]

    def refuse_rows(self, refused):
        """Tells each row's faults beside it, and asks for what the book has not."""
        self.row_faults = refused.faults
        self.short += refused.short
        count = len(refused.faults)
        rows = "1 row is" if count == 1 else f"{count} rows are"
        self.add_error(None, f"Nothing was booked: {rows} not right yet. Mend what is told below it.")

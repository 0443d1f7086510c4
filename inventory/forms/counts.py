"""A count: what was counted beside what the book says, row by row.

Takes the rows of a place on a day; gives counted Lines, zero too. A row left empty was not counted. Where the book
changed while the page was open, the count is not posted over it.
"""

from django import forms

from inventory.forms.lines import NUMBER, LinesForm, number

WAS = "was__"


class CountForm(LinesForm):
    covers = False

    def __init__(self, data=None, **kwargs):
        super().__init__(data, **kwargs)
        for row in self.rows:
            self.fields[WAS + row.key] = forms.IntegerField(
                required=False, initial=row.booked, widget=forms.HiddenInput
            )

    def field_of(self, row):
        return number(row.name, initial=row.booked)

    def clean(self):
        given = super().clean() or {}
        for row in self.rows:
            was = given.get(WAS + row.key)
            if was is not None and was != row.booked:
                self.add_error(
                    NUMBER + row.key,
                    f"The book changed while you counted: it said {was}, it says {row.booked} now. Look once more.",
                )
        shown = {WAS + row.key: row.booked for row in self.rows}  # from here on what the book says now
        self.data = {**{name: self.data[name] for name in self.data}, **shown}
        return given

    def counted(self):
        return [row.line(quantity) for row, quantity in self.numbers()]

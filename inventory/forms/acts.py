"""What every act's form carries: the key that makes a resend harmless, the day, a note, and what was refused.

Takes what was sent; gives the keyword arguments all acts share. A refusal is told on the form and loses nothing.
"""

import uuid

from django import forms
from django.utils.translation import gettext_lazy as _

from inventory.errors import NotEnough


class ActForm(forms.Form):
    """`covers`: the act books what the hand holds beyond the book as found; with `asks_first` only once that is ticked.

    In the field nothing waits for a tick: the book is asked about later, from this week's page.
    """

    covers = False
    asks_first = False
    key = forms.CharField(max_length=64, widget=forms.HiddenInput)
    day = forms.DateField(widget=forms.HiddenInput)
    note = forms.CharField(label=_("Note"), max_length=200, required=False)

    def __init__(self, data=None, *, day):
        super().__init__(data, auto_id="act-%s")
        self.initial.update(key=str(uuid.uuid4()), day=day.isoformat())
        self.short = []
        if self.asks_first:
            self.fields["found"] = forms.BooleanField(
                label=_("The hand holds them: book what is missing as found"), required=False
            )

    def told(self, who):
        """day, who, key, note and, where the act can, found_allowed."""
        given = self.cleaned_data
        told = {"day": given["day"], "who": who, "key": given["key"], "note": given["note"]}
        return {**told, "found_allowed": given.get("found", True)} if self.covers else told

    def fill(self, address):
        """Numbers that the address of the page tells for its rows; for a page that opens, not for one that was sent."""
        for name, value in address.items():
            if (
                name in self.fields
                and (name == "times" or name.startswith("n__"))
                and value.isdecimal()
                and len(value) < 10
            ):
                self.initial[name] = int(value)

    def refuse(self, refusal):
        """Tells what the books refuse; where only pieces are missing, asks whether the hand holds them."""
        for problem in refusal.problems:
            if isinstance(problem, NotEnough) and self.asks_first:
                self.short.append(problem)
            self.add_error(None, str(problem))

    @property
    def asks_found(self):
        """The tick shows once pieces were missing, and stays while it is set."""
        return self.asks_first and (bool(self.short) or bool(self.data.get("found")))

    @property
    def found_words(self):
        return [
            f"The book says {problem.booked}, you have {problem.wanted}: "
            f"book {problem.wanted - problem.booked} of {problem.part} as found."
            for problem in self.short
        ]

    @property
    def faults(self):
        """All that is not told at a field one can see."""
        hidden = [fault for field in self.hidden_fields() for fault in field.errors]
        return [*self.non_field_errors(), *hidden]

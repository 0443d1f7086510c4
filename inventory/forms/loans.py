"""Forms of a loan: to whom and until when, and what became of each piece when it is back.

Takes the rows of a store, or what is out of a loan; gives lines or returns.
"""

from dataclasses import dataclass

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Yard
from inventory.forms.acts import ActForm
from inventory.forms.lines import LinesForm, number
from inventory.gear import Condition
from inventory.ledger import Return
from inventory.models import Loan
from inventory.pieces import Row

FATES = (("sound", _("Back sound")), ("to_mend", _("Back, to mend")), ("lost", _("Not coming back")))


class LendForm(LinesForm):
    """Rows of a store, who gets them, and when they are due."""

    def __init__(self, data=None, **kwargs):
        super().__init__(data, **kwargs)
        self.fields["to"] = forms.CharField(
            label=_("Lent to"), max_length=Loan._meta.get_field("to").max_length
        )
        self.fields["due_on"] = forms.DateField(
            label=_("Due back"),
            required=False,
            widget=forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"}),
        )

    def chosen(self):
        return {"to": self.cleaned_data["to"], "due_on": self.cleaned_data["due_on"]}


@dataclass(frozen=True, kw_only=True)
class OutRow:
    """A part of the loan that is out, with a number for each thing that may have become of it."""

    row: Row
    fields: list

    @property
    def out(self):
        return self.row.booked


class BackForm(ActForm):
    """`out`: {(Part, condition): pieces still out}."""

    def __init__(self, data=None, *, out, into, day):
        super().__init__(data, day=day)
        self.rows = [
            Row(part=part, condition=Condition(condition), booked=count)
            for (part, condition), count in sorted(
                out.items(), key=lambda each: (each[0][0].code, each[0][1])
            )
        ]
        for row in self.rows:
            for fate, words in FATES:
                self.fields[f"{fate}__{row.key}"] = number(f"{words}: {row.name}")
        self.fields["into"] = forms.ModelChoiceField(
            Yard.objects.all(),
            label=_("Back into the store of"),
            to_field_name="code",
            initial=into.code if into else None,
            empty_label=_("choose a place"),
        )

    @property
    def table(self):
        return [
            OutRow(row=row, fields=[(words, self[f"{fate}__{row.key}"]) for fate, words in FATES])
            for row in self.rows
        ]

    def returns(self):
        """What became of each part, where anything was told."""
        return [Return(part=row.part, condition=row.condition, **self._fates(row)) for row in self.rows]

    def _fates(self, row):
        return {fate: self.cleaned_data.get(f"{fate}__{row.key}") or 0 for fate, _words in FATES}

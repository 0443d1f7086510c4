"""Forms of rows with a number each: what is moved, placed, taken off, scrapped, used.

Takes the rows of a place; gives Lines of those that were told. A row can be added for gear the book does not
know there: the field is never blocked.
"""

from dataclasses import dataclass

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Yard
from inventory.forms.acts import ActForm
from inventory.gear import Condition
from inventory.ledger.lines import MOST
from inventory.models import Part
from inventory.pieces import by_head, rows_at

NUMBER = "n__"
CONDITIONS = [(condition.name.lower(), condition.value) for condition in Condition]


@dataclass(frozen=True, kw_only=True)
class Told:
    """A row as the page shows it."""

    row: object
    field: forms.BoundField

    @property
    def value(self):
        return self.field.value() or 0


def number(label, *, required=False, initial=None):
    """A whole number of pieces, zero or more."""
    return forms.IntegerField(label=label, min_value=0, max_value=MOST, required=required, initial=initial)


def kinds(number):
    return "1 kind" if number == 1 else f"{number} kinds"


class LinesForm(ActForm):
    """A number for each row. `ground` is the yard (its store) or colony whose gear is told."""

    covers = True

    def __init__(self, data=None, *, ground, day, as_of=None, only=None):
        super().__init__(data, day=day)
        self.also = sorted(self._also())
        rows = rows_at(ground, as_of=as_of, also=self.also)
        self.rows = [row for row in rows if only is None or row.key in self.also or only(row)]
        for row in self.rows:
            self.fields[NUMBER + row.key] = self.field_of(row)
        self.fields["also"] = forms.ChoiceField(
            label=_("Another piece"), required=False, choices=self._catalogue
        )
        self.fields["also_condition"] = forms.ChoiceField(
            label=_("Its condition"), required=False, choices=CONDITIONS
        )

    def field_of(self, row):
        return number(row.name)

    @staticmethod
    def _catalogue():
        names = Part.objects.order_by("name").values_list("code", "name")
        return [("", _("choose one")), *names]

    def _also(self):
        """Keys of rows that were sent, and the one to be added."""
        sent = {name.removeprefix(NUMBER) for name in self.data if name.startswith(NUMBER)}
        if self.data.get("add") and self.data.get("also"):
            sent.add(f"{self.data['also']}__{self.data.get('also_condition') or 'sound'}")
        return sent

    @property
    def groups(self):
        """[(head, rows as the page shows them)]."""
        return [
            (head, [Told(row=row, field=self[NUMBER + row.key]) for row in rows])
            for head, rows in by_head(self.rows)
        ]

    @property
    def kinds_words(self):
        return kinds(len(self.rows))

    def so_far(self):
        """[(row, number)] as typed, zero for what is no number; for the sums that are shown, not for the books."""
        typed = [(row, str(self[NUMBER + row.key].value() or 0)) for row in self.rows]
        return [(row, int(value) if value.isdecimal() else 0) for row, value in typed]

    def numbers(self):
        """[(row, number)] of all rows in which a number stands."""
        given = [(row, self.cleaned_data.get(NUMBER + row.key)) for row in self.rows]
        return [(row, quantity) for row, quantity in given if quantity is not None]

    def lines(self):
        """Lines of all that is more than zero."""
        return [row.line(quantity) for row, quantity in self.numbers() if quantity]


class MendForm(LinesForm):
    """Rows to mend."""


class MoveForm(LinesForm):
    """A load: rows of the source, and the store it goes to."""

    def __init__(self, data=None, *, target=None, **kwargs):
        super().__init__(data, **kwargs)
        self.fields["target"] = forms.ModelChoiceField(
            Yard.objects.all(),
            label=_("Goes to the store of"),
            to_field_name="code",
            initial=target.code if target else None,
            empty_label=_("choose a place"),
        )

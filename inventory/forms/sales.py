"""Forms of a sale of bees: what goes with them, what comes back and by when; and the coming back.

Takes the rows of the hives sold, or what a buyer still owes; gives Lines, Terms and cents.
"""

import datetime as dt
from dataclasses import dataclass

from django import forms
from django.utils.translation import gettext_lazy as _

from inventory.forms.bees import store_choice
from inventory.forms.lines import LinesForm, number
from inventory.gear import Condition, Kind
from inventory.ledger.lines import MOST
from inventory.yardwork.selling import Terms

BACK = "b__"
COMES_BACK = (Kind.BOX, Kind.NUC_BOX, Kind.FRAME)
USUAL_WEEKS, MOST_WEEKS = 4, 104


def money(label, **options):
    """An amount with two places, zero or more; as cents by `cents_of`."""
    usual = {"min_value": 0, "max_digits": 9, "decimal_places": 2, "required": False}
    return forms.DecimalField(label=label, **{**usual, **options})


def cents_of(amount):
    return int(amount * 100) if amount is not None else None


@dataclass(frozen=True, kw_only=True)
class SoldRow:
    """A piece as the page shows it: how many go, how many come back."""

    row: object
    field: forms.BoundField
    back: forms.BoundField | None

    @property
    def value(self):
        return self.field.value() or 0


class SellForm(LinesForm):
    """`n__…`: what goes with the bees; `b__…`: what of it the buyer brings back."""

    def __init__(self, data=None, *, into, **kwargs):
        super().__init__(data, **kwargs)
        self.fields["buyer"] = forms.CharField(
            label=_("Sold to"), max_length=80, widget=forms.TextInput(attrs={"autocomplete": "off"})
        )
        self.fields["price"] = money(_("Price of all"))
        self.fields["deposit"] = money(_("Deposit taken"))
        self.fields["weeks"] = forms.IntegerField(
            label=_("Back within, weeks"), min_value=0, max_value=MOST_WEEKS, initial=USUAL_WEEKS
        )
        self.fields["into"] = store_choice(_("What stays goes into the store of"), into)
        for row in self.rows:
            if row.part.kind in COMES_BACK:
                self.fields[BACK + row.key] = number(f"{row.name}, comes back")

    def field_of(self, row):
        return number(row.name, initial=row.booked if row.condition != Condition.HELD else 0)

    @property
    def pieces(self):
        return [
            SoldRow(
                row=row,
                field=self[f"n__{row.key}"],
                back=self[BACK + row.key] if BACK + row.key in self.fields else None,
            )
            for row in self.rows
        ]

    @property
    def returning(self):
        return [piece for piece in self.pieces if piece.back is not None]

    @property
    def any_back(self):
        """Whether something is told to come back, or wrongly told: the fold stands open."""
        fields = [piece.back for piece in self.returning] + [self["deposit"]]
        return any(field.value() or field.errors for field in fields)

    def terms(self, day):
        given = self.cleaned_data
        owed = [row.line(given[BACK + row.key]) for row in self.rows if given.get(BACK + row.key)]
        waits = owed or given["deposit"]
        return Terms(
            buyer=given["buyer"],
            price_cents=cents_of(given["price"]),
            deposit_cents=cents_of(given["deposit"]) or 0,
            owed=tuple(owed),
            back_by=day + dt.timedelta(weeks=given["weeks"]) if waits else None,
        )


class BroughtBackForm(LinesForm):
    """What the buyer brought, beside what is still owed; another piece can be added, as in a swap."""

    def __init__(self, data=None, *, still, into, deposit_left, sees_money, day):
        self.still = still
        super().__init__(data, ground=[], day=day)
        self.fields["into"] = store_choice(_("Goes into the store of"), into)
        self.fields["settles"] = forms.BooleanField(label=_("Nothing more is waited for"), required=False)
        if sees_money and deposit_left > 0:
            words = _("Deposit given back, of %s") % f"{deposit_left / 100:,.2f}"
            self.fields["refund"] = money(words)
        self.deposit_left = deposit_left

    def _also(self):
        owed = {f"{part.code}__sound" for part in self.still}
        return super()._also() | owed

    def field_of(self, row):
        sound = row.condition == Condition.SOUND
        return forms.IntegerField(
            label=row.name,
            min_value=0,
            max_value=MOST,
            required=False,
            initial=self.still.get(row.part, 0) if sound else 0,
        )

    def refund_cents(self):
        return cents_of(self.cleaned_data.get("refund")) or 0

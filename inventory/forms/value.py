"""What the pages of value ask: a day, a stretch, a year with its convention; prices and work told by the keeper.

Takes what was sent or asked; gives days and cents. Without an answer: today, the calendar year.
"""

import datetime as dt
from decimal import Decimal

from django import forms
from django.utils.dates import MONTHS
from django.utils.translation import gettext_lazy as _

from inventory.models import Part, ValueBasis
from inventory.value import Convention

DAY = forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"})
MOST = Decimal("9999999.99")
EARLIEST, LATEST = 1990, 2200


def money(label, **more):
    """A price in whole cents, zero or more."""
    return forms.DecimalField(label=label, min_value=0, max_value=MOST, decimal_places=2, **more)


class Asking(forms.Form):
    """A form in the address: what was not asked, or not understood, stays as it is given at first."""

    def __init__(self, data, **usual):
        self.usual = usual
        super().__init__({**self.first_values(usual), **{k: v for k, v in data.items() if v}})
        self.is_valid()

    def first_values(self, usual):
        return usual

    def told(self, name):
        """What was asked, else what is usual."""
        value = getattr(self, "cleaned_data", {}).get(name)
        return self.usual[name] if value in (None, "") else value


class DayForm(Asking):
    day = forms.DateField(label=_("On the evening of"), widget=DAY)


class StretchForm(Asking):
    first = forms.DateField(label=_("From"), widget=DAY)
    last = forms.DateField(label=_("To"), widget=DAY)

    def clean(self):
        first, last = self.cleaned_data.get("first"), self.cleaned_data.get("last")
        if first and last and last < first:
            self.cleaned_data = {}
            raise forms.ValidationError(_("The stretch ends before it begins: give a later day to end on."))
        return self.cleaned_data


def calendar_year(day):
    return {"first": dt.date(day.year, 1, 1), "last": dt.date(day.year, 12, 31)}


class YearForm(Asking):
    year = forms.IntegerField(label=_("Year"), min_value=EARLIEST, max_value=LATEST)
    convention = forms.ChoiceField(label=_("Convention"), choices=ValueBasis.Convention.choices)
    begins = forms.TypedChoiceField(label=_("The year begins in"), choices=MONTHS.items(), coerce=int)

    @property
    def rule(self):
        monthly = self.told("convention") == ValueBasis.Convention.MONTHLY
        return Convention(monthly=monthly, begins=self.told("begins"))


class BasisForm(forms.Form):
    """What own work at the bench is worth, and which convention the accountant wants."""

    work = money(
        _("Own work at the bench, an hour"),
        required=False,
        help_text=_("Empty: own work adds nothing to what is assembled, as most accountants want it."),
    )
    convention = forms.ChoiceField(label=_("Depreciation"), choices=ValueBasis.Convention.choices)

    rest_percent = forms.IntegerField(
        label=_("Rest value at the end of its years, per cent of cost"),
        required=False,
        min_value=0,
        max_value=100,
        help_text=_("Empty: gear wears down to nothing."),
    )


class ToldPriceForm(forms.Form):
    """What a piece of opening or found stock cost."""

    part = forms.ModelChoiceField(Part.objects.order_by("name"), label=_("Part"), to_field_name="code")
    price = money(_("A piece cost"), required=False, help_text=_("Empty: its list price counts again."))


class ToldRestForm(forms.Form):
    """What a piece is still worth once its years are over."""

    worn = forms.ModelChoiceField(Part.objects.order_by("name"), label=_("Part"), to_field_name="code")
    rest = money(
        _("Rest value of a piece"), required=False, help_text=_("Empty: the share told for all gear counts.")
    )

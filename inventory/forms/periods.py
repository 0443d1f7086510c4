"""The days of a history: from the morning of one to the evening of the other; a year up to today where none are told.

Takes the address's query; gives two days. A wrong one is told and passed over.
"""

import datetime as dt
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

A_YEAR = dt.timedelta(days=365)
DAY: dict[str, Any] = {"format": "%Y-%m-%d", "attrs": {"type": "date"}}


class PeriodForm(forms.Form):
    since = forms.DateField(label=_("From the morning of"), required=False, widget=forms.DateInput(**DAY))
    until = forms.DateField(label=_("To the evening of"), required=False, widget=forms.DateInput(**DAY))

    def __init__(self, data, *, today):
        super().__init__(data, auto_id="at-%s")
        self.today = today
        self.full_clean()
        self.data = {
            **{name: self.data[name] for name in self.data},
            "since": self.first.isoformat(),
            "until": self.last.isoformat(),
        }

    def clean_until(self):
        return min(self.cleaned_data["until"] or self.today, self.today)

    def clean(self):
        given = super().clean() or {}
        since, until = given.get("since"), given.get("until")
        if since and until and since > until:
            self.add_error("since", _("This is after the other day: give an earlier one."))
        return given

    @property
    def last(self):
        return self.cleaned_data.get("until") or self.today

    @property
    def first(self):
        return self.cleaned_data.get("since") or self.last - A_YEAR

"""What is supposed of a run, as it is typed: budget, survival, colonies wanted, prices, a supplier left out, mediums.

Takes a done run and what was typed; gives the supposition as supposing.py takes it, with the fault at its field. Writes
nothing.
"""

from typing import Any

from django import forms

from planner import variants
from planner.errors import NoMediumSet
from planner.supposing import ALL, LEAST_PERCENT, MOST_COLONIES, MOST_PERCENT

MOST_BUDGET = 1_000_000


class AgainForm(forms.Form):
    """The day to plan again from."""

    day = forms.DateField(
        label="With the books of the evening of",
        widget=forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"}),
    )


class WhatIfForm(forms.Form):
    """Each field may stay as it is; something must be changed."""

    budget = forms.DecimalField(
        label="Budget",
        required=False,
        min_value=0,
        max_value=MOST_BUDGET,
        decimal_places=2,
        help_text="Empty: as in this run.",
    )
    survival = forms.FloatField(
        label="Of a hundred colonies that go into winter, how many come out?",
        required=False,
        min_value=0,
        max_value=100,
        help_text="Empty: as in this run.",
    )
    target = forms.IntegerField(
        label="Colonies wanted going into next winter",
        required=False,
        min_value=0,
        max_value=MOST_COLONIES,
        help_text="Empty: as in this run.",
    )
    prices_of = forms.ChoiceField(label="Prices of", required=False)
    percent = forms.IntegerField(
        label="Dearer by, per cent",
        required=False,
        min_value=LEAST_PERCENT,
        max_value=MOST_PERCENT,
        help_text="−10 is ten per cent cheaper. Empty: as listed.",
    )
    without = forms.ChoiceField(label="Leave out a supplier", required=False)
    mediums = forms.BooleanField(
        label="New hives and supers in mediums alone",
        required=False,
        help_text="What stands today stays as it is; splits are hived in boxes of one depth.",
    )

    def __init__(self, run, data=None):
        super().__init__(data)
        self.run = run
        suppliers = sorted(variants.supplier_names(run).items(), key=lambda row: row[1])
        self.choose("prices_of", [(ALL, "all suppliers"), *suppliers])
        self.choose("without", [("", "none"), *suppliers])

    def choose(self, name, choices):
        field = self.fields[name]
        assert isinstance(field, forms.ChoiceField)
        field.choices = choices

    def clean(self):
        typed: dict[str, Any] = super().clean() or {}
        wanted: dict[str, Any] = {}
        answers: dict[str, Any] = {}
        if typed.get("budget") is not None:
            wanted["budget"] = str(typed["budget"])
        if typed.get("survival") is not None:
            answers["survival_share"] = round(typed["survival"] / 100, 4)
        if typed.get("target") is not None:
            answers["target_colonies"] = typed["target"]
        if typed.get("percent"):
            wanted["prices"] = {typed.get("prices_of") or ALL: typed["percent"]}
        if typed.get("without"):
            wanted["without"] = [typed["without"]]
        if typed.get("mediums"):
            supposed = variants.mediums(self.run)
            if supposed is None:
                self.add_error("mediums", NoMediumSet.sentence)
            else:
                wanted["home"] = supposed["home"]
                answers |= supposed["answers"]
        return {**typed, "wanted": wanted | ({"answers": answers} if answers else {})}

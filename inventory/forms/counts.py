"""Forms of a count: how it is begun, what was counted row by row, and where found gear came from.

Takes a Sheet or what was sent; gives rows for the draft. A row left empty was not counted: it is no zero. A part that
is not in the catalogue is refused by name.
"""

import re
from dataclasses import dataclass
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Colony, Yard
from apiary.rights import narrow
from inventory.errors import UnknownPart
from inventory.forms.acts import ActForm
from inventory.forms.lines import CONDITIONS, kinds, number
from inventory.models import Location, Part
from inventory.pieces import by_head

ROW = re.compile(r"^n(\d*)__(.+)$")  # n__ of the count's own place, n17__ of the place of that key


class BeginCountForm(ActForm):
    """Blind or beside the book; a yard's count may take the boxes of its colonies with it."""

    blind = forms.ChoiceField(
        label=_("How do you count?"),
        choices=(("", _("Beside the book")), ("yes", _("Blind"))),
        widget=forms.RadioSelect,
        required=False,
    )

    def __init__(self, data=None, *, day, place):
        super().__init__(data, day=day)
        if isinstance(place, Yard) and not place.is_shed:
            self.fields["with_colonies"] = forms.BooleanField(
                label=_("Count the boxes on its colonies too"), required=False
            )

    def begun(self):
        """What begin() is told beside day, who, key and note."""
        given = self.cleaned_data
        return {"blind": bool(given["blind"]), "with_colonies": given.get("with_colonies", False)}


@dataclass(frozen=True, kw_only=True)
class CountRow:
    """A row as the page shows it. Blind, it does not tell what the book has."""

    row: Any
    field: forms.BoundField
    blind: bool

    @property
    def shown(self):
        value = self.field.value()
        return "" if value is None else value

    @property
    def booked(self):
        return "" if self.blind else self.row.booked


class CountForm(forms.Form):
    """A number for each row of the count's Sheet."""

    def __init__(self, data=None, *, count, sheet):
        super().__init__(data, auto_id="act-%s")
        self.count, self.sheet = count, sheet
        for place, row in sheet.rows:
            entered = sheet.entered.get((place.location.pk, row.key))
            usual = None if count.blind else row.booked
            self.fields[self._name(place, row)] = number(
                row.name, initial=usual if entered is None else entered
            )
        self.fields["also"] = forms.ChoiceField(
            label=_("Another piece"), required=False, choices=self._catalogue
        )
        self.fields["also_condition"] = forms.ChoiceField(
            label=_("Its condition"), required=False, choices=CONDITIONS
        )

    def _name(self, place, row):
        own = place.location == self.count.location
        return f"n{'' if own else place.location.pk}__{row.key}"

    @staticmethod
    def _catalogue():
        return [("", _("choose one")), *Part.objects.order_by("name").values_list("code", "name")]

    @staticmethod
    def added(data):
        """Keys of rows of the own place that were sent, and the one to be added."""
        keys = {match[2] for match in map(ROW.match, data) if match and not match[1]}
        if data.get("add") and data.get("also"):
            keys.add(f"{data['also']}__{data.get('also_condition') or 'sound'}")
        return sorted(keys)

    def clean(self):
        for name in self.data:
            match = ROW.match(name)
            if match and name not in self.fields:
                self.add_error(None, str(UnknownPart(part=match[2].rpartition("__")[0] or match[2])))
        return super().clean()

    @property
    def places(self):
        """[(place, [(head, rows as the page shows them)])]; on a hive the head is left out."""
        shown = []
        for place in self.sheet.places:
            heads = by_head(place.rows) if place.location == self.count.location else [("", place.rows)]
            rows = [(head, [self._row(place, row) for row in rows]) for head, rows in heads]
            shown.append((place.location, rows))
        return shown

    def _row(self, place, row):
        return CountRow(row=row, field=self[self._name(place, row)], blind=self.count.blind)

    @property
    def kinds_words(self):
        return kinds(len(self.sheet.rows))

    @property
    def faults(self):
        return self.non_field_errors()

    def told(self):
        """[(place, part's code, condition, pieces or None)] of all rows that were sent."""
        return [
            (place.location, row.part, row.condition, self.cleaned_data.get(name))
            for place, row in self.sheet.rows
            if (name := self._name(place, row)) in self.data
        ]


class FoundForm(forms.Form):
    """Where found gear came from: one of the likely answers, another place, or simply missing from the book."""

    key = forms.CharField(max_length=64, widget=forms.HiddenInput)
    note = forms.CharField(label=_("Note"), max_length=200, required=False)

    def __init__(self, data=None, *, key, answers, who):
        super().__init__(data, auto_id="act-%s", initial={"key": key})
        others = (
            ("other", _("From another place, named below")),
            ("missing", _("It was simply missing from the book")),
        )
        self.fields["came"] = forms.ChoiceField(
            label=_("Where did it come from?"), choices=(*answers, *others), widget=forms.RadioSelect
        )
        self.fields["store"] = forms.ModelChoiceField(
            Yard.objects.all(),
            label=_("A store"),
            to_field_name="code",
            required=False,
            empty_label=_("choose a place"),
        )
        self.fields["hive"] = forms.ModelChoiceField(
            Colony.objects.real().order_by("tag"),
            label=_("Or a colony"),
            required=False,
            empty_label=_("choose a colony"),
        )
        narrow(self, who)

    def clean(self):
        given = super().clean() or {}
        if given.get("came") == "other" and bool(given.get("store")) == bool(given.get("hive")):
            self.add_error("store", _("Name one place: a store or a colony."))
        return given

    @property
    def faults(self):
        return self.non_field_errors()

    def place(self):
        """The place that was named, where it was not among the likely ones."""
        word, _mark, key = self.cleaned_data["came"].partition(":")
        if word == "other":
            return self.cleaned_data["store"] or self.cleaned_data["hive"]
        return Location.objects.get(pk=key) if word == "place" else None


class IntervalForm(forms.Form):
    """After how many months a yard is to be counted again."""

    months = forms.IntegerField(label=_("Count a yard every, months"), min_value=1, max_value=60)

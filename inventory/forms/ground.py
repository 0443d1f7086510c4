"""Where and when an act is done, as the address of its page says it: store, colony, day.

Takes the address's query; gives what was chosen, today where no day is told. A wrong word in it is told and passed over.
"""

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.colonies import refuse_future
from apiary.models import Colony, Yard
from apiary.rights import narrow
from inventory.errors import FutureDay
from inventory.gear import Comb, Kind
from inventory.models import Part, Recipe
from inventory.yardwork.boxsets import brood_boxes, supers


class GroundForm(forms.Form):
    """The day. Acts add what else they have to know: see ground_form. `who` is offered what is theirs."""

    day = forms.DateField(
        label=_("Day it was done"),
        required=False,
        widget=forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"}),
    )

    def __init__(self, data, *, today, who=None):
        super().__init__(data, auto_id="at-%s")
        self.today = today
        if who is not None:
            narrow(self, who)
        self.full_clean()

    def clean_day(self):
        day = self.cleaned_data["day"] or self.today
        try:
            refuse_future(day)
        except FutureDay as refusal:
            raise forms.ValidationError(str(refusal)) from refusal
        return day

    def chosen(self, name):
        return self.cleaned_data.get(name)

    def settle(self, **chosen):
        """What is shown as chosen: what the address says, filled up with what the page took for it."""
        self.data = {**{name: self.data[name] for name in self.data}, "day": self.on.isoformat(), **chosen}
        return self

    @property
    def on(self):
        return self.cleaned_data.get("day") or self.today

    @property
    def as_of(self):
        """None for today: the present is asked of the balances, a past evening of the movements."""
        return self.on if self.on < self.today else None


def store_field(label):
    return forms.ModelChoiceField(
        Yard.objects.all(), label=label, to_field_name="code", required=False, empty_label=_("choose a place")
    )


def colony_field(label, colonies):
    return forms.ModelChoiceField(colonies, label=label, required=False, empty_label=_("choose a colony"))


def box_field(label, boxes):
    return forms.ChoiceField(
        label=label, choices=lambda: [(one.code, one.name) for one in boxes()], required=False
    )


FIELDS = {
    "yard": lambda: store_field(_("Store of")),
    "source": lambda: store_field(_("From the store of")),
    "target": lambda: store_field(_("To the store of")),
    "foundation": lambda: forms.ModelChoiceField(
        Part.objects.filter(kind=Kind.FRAME, comb=Comb.FOUNDATION, flat=False),
        label=_("Which frames"),
        to_field_name="code",
        required=False,
    ),
    "stops": lambda: forms.ModelMultipleChoiceField(
        Yard.objects.all(),
        label=_("Dropped at, where it is more than one"),
        to_field_name="code",
        required=False,
        widget=forms.CheckboxSelectMultiple,
    ),
    "colony": lambda: colony_field(_("Colony"), Colony.objects.select_related("yard", "hive_set")),
    "recipe": lambda: forms.ModelChoiceField(
        Recipe.objects.all(), label=_("What is made"), to_field_name="code", required=False
    ),
    "super": lambda: box_field(_("Super"), supers),
    "brood_box": lambda: box_field(_("Brood box"), brood_boxes),
}


def ground_form(*names, hidden=()):
    """A GroundForm that asks for these things too, in this order, and for the day last; hidden ones are carried."""
    fields = {name: FIELDS[name]() for name in (*names, *hidden)}
    for name in hidden:
        fields[name].widget = forms.HiddenInput()
    return type("AskedGround", (GroundForm,), {**fields, "field_order": [*names, "day"]})

"""What the gear page and the books can be narrowed to: kind, depth, place, condition, day.

Takes the address's query; gives parts or acts. A wrong word is told and narrows nothing.
"""

import django_filters as filters
from django import forms
from django.db.models import Exists, OuterRef, Q
from django.utils.translation import gettext_lazy as _

from apiary.errors import told
from apiary.models import Colony, Yard
from inventory.gear import Condition, Depth, Kind
from inventory.models import Act, Movement, Part

DAY = forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"})


def _words(words):
    return [(word.value, word.value) for word in words]


class Asked(filters.FilterSet):
    """A filter that can say what was chosen."""

    @property
    def chosen(self):
        """{name: value} of all that was chosen and understood."""
        self.is_valid()
        return {name: value for name, value in getattr(self.form, "cleaned_data", {}).items() if value}

    @property
    def chosen_words(self):
        words = [(self.form.fields[name].label, value) for name, value in self.chosen.items()]
        return ", ".join(f"{str(label).lower()} {told(value)}" for label, value in words)


class GearFilter(Asked):
    """Kind and depth narrow the parts; place, condition and day the stock: `keeps` says which rows stay."""

    kind = filters.ChoiceFilter(label=_("Kind"), choices=_words(Kind), empty_label=_("all kinds"))
    depth = filters.ChoiceFilter(label=_("Depth"), choices=_words(Depth), empty_label=_("all depths"))
    place = filters.ModelChoiceFilter(
        label=_("Place"),
        queryset=Yard.objects.all(),
        to_field_name="code",
        empty_label=_("all places"),
        method="_stock",
    )
    condition = filters.ChoiceFilter(
        label=_("Condition"), choices=_words(Condition), empty_label=_("all conditions"), method="_stock"
    )
    day = filters.DateFilter(label=_("As it was on the evening of"), widget=DAY, method="_stock")

    class Meta:
        model = Part
        fields = ["kind", "depth"]

    def _stock(self, parts, name, value):
        return parts

    def keeps(self, row):
        place, condition = self.chosen.get("place"), self.chosen.get("condition")
        return (place is None or row.yard == place.code) and (not condition or row.condition == condition)


class BooksFilter(Asked):
    """Acts by what their movements touched."""

    place = filters.ModelChoiceFilter(
        label=_("Place"),
        queryset=Yard.objects.all(),
        to_field_name="code",
        empty_label=_("all places"),
        method="_rows",
    )
    colony = filters.ModelChoiceFilter(
        label=_("Colony"),
        queryset=Colony.objects.order_by("tag"),
        to_field_name="tag",
        empty_label=_("all colonies"),
        method="_rows",
    )
    part = filters.ModelChoiceFilter(
        label=_("Part"),
        queryset=Part.objects.order_by("name"),
        to_field_name="code",
        empty_label=_("all parts"),
        method="_rows",
    )
    since = filters.DateFilter(label=_("From day"), widget=DAY, field_name="day", lookup_expr="gte")
    until = filters.DateFilter(label=_("To day"), widget=DAY, field_name="day", lookup_expr="lte")

    class Meta:
        model = Act
        fields: list[str] = []

    def _rows(self, acts, name, value):
        return acts.filter(Exists(self.movements(name, value).filter(act=OuterRef("pk"))))

    @staticmethod
    def movements(name, value):
        """Movements that touched a place (its store or its colonies), a colony or a part."""
        ends = {"place": ("yard", "colony__yard"), "colony": ("colony",)}
        if name == "part":
            return Movement.objects.filter(part=value)
        touched = Q()
        for end in ("source", "target"):
            for field in ends[name]:
                touched |= Q(**{f"{end}__{field}": value})
        return Movement.objects.filter(touched)

    def shown(self):
        """The movements to show of each act: those that were asked for."""
        rows = Movement.objects.all()
        for name in ("place", "colony", "part"):
            if value := self.chosen.get(name):
                rows = rows & self.movements(name, value)
        return rows

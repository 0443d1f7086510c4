"""Forms of acts on bees: which colonies, how many splits, which queen, where to.

Takes the colonies of a yard; gives those chosen and what was told of them. Nothing needs a keyboard but tags, and
the next free ones stand there.
"""

import math
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Colony, HiveSet, Yard
from apiary.queens import QueenFrom
from apiary.tags import following, free_tags, usual_tag
from inventory.forms.acts import ActForm
from inventory.forms.lines import LinesForm, number
from inventory.gear import Comb, Condition, Kind
from inventory.yardwork.splitting import Daughters, SplitPlan

MOST_SPLITS, MOST_FRAMES = 9, 40
SPLITS = "n__"
FILLS = (
    (Comb.FOUNDATION.value, _("with foundation")),
    (Comb.DRAWN.value, _("drawn comb")),
)


def radio(label, choices, initial, **options):
    """Joined cells, one of them chosen."""
    return forms.ChoiceField(
        label=label, choices=choices, initial=initial, widget=forms.RadioSelect, **options
    )


def store_choice(label, initial):
    """A yard, meaning its store."""
    return forms.ModelChoiceField(
        Yard.objects.all(),
        label=label,
        to_field_name="code",
        initial=initial.code if initial else None,
        empty_label=_("choose a place"),
    )


def set_choice(label, rows, initial):
    return forms.ModelChoiceField(
        rows,
        label=label,
        to_field_name="code",
        initial=initial.code if initial else None,
        empty_label=None,
        widget=forms.RadioSelect,
    )


def counted(number_of, one, many):
    return f"{number_of:,} {one if number_of == 1 else many}"


@dataclass(frozen=True, kw_only=True)
class HiveChoice:
    """A colony as the page shows it, chosen or not."""

    colony: Colony
    chosen: bool
    empty_lb: int = 0
    full_lb: int = 0
    cubic_ft: Decimal = Decimal(0)


class HivesAsked:
    """Colonies to choose from, each a cell to press; those in `chosen` are from the start."""

    one, many = "colony", "colonies"
    fields: dict
    data: Any
    cleaned_data: dict
    is_bound: bool

    def ask_hives(self, hives, chosen, *, required=True, weights=None):
        self.hives, self.weights = list(hives), weights or {}
        self.first_chosen = {colony.pk for colony in chosen}
        self.fields["colonies"] = forms.ModelMultipleChoiceField(
            Colony.objects.filter(pk__in=[colony.pk for colony in self.hives]),
            label=_("Colonies"),
            required=required,
            initial=sorted(self.first_chosen),
            error_messages={"required": _("Press the tag of each colony it is about: none was chosen.")},
        )

    @property
    def pressed(self):
        """Keys of the colonies that are chosen on the page."""
        if not self.is_bound:
            return self.first_chosen
        sent = self.data.getlist("colonies") if hasattr(self.data, "getlist") else self.data["colonies"]
        return {int(pk) for pk in sent if str(pk).isdecimal()}

    @property
    def choices(self):
        pressed = self.pressed
        return [self._choice(colony, colony.pk in pressed) for colony in self.hives]

    def _choice(self, colony, chosen):
        weight = self.weights.get(colony.pk)
        load = vars(weight) if weight else {}
        return HiveChoice(colony=colony, chosen=chosen, **load)

    @property
    def tally_words(self):
        return counted(sum(choice.chosen for choice in self.choices), self.one, self.many)

    @property
    def empty_lb(self):
        return sum(choice.empty_lb for choice in self.choices if choice.chosen)

    @property
    def full_lb(self):
        return sum(choice.full_lb for choice in self.choices if choice.chosen)

    @property
    def cubic_ft(self):
        """Whole cubic feet of all that are chosen, rounded up."""
        return math.ceil(sum(choice.cubic_ft for choice in self.choices if choice.chosen))

    def picked(self):
        return sorted(self.cleaned_data["colonies"], key=lambda colony: colony.tag)


class RequeenForm(HivesAsked, ActForm):
    """Which colonies have a new queen, and where she is from."""

    result = _("The queen's origin is kept with the colony")

    def __init__(self, data=None, *, hives, chosen, day):
        super().__init__(data, day=day)
        self.ask_hives(hives, chosen)
        self.fields["queen"] = radio(_("The queen is"), QueenFrom.choices, QueenFrom.BOUGHT)


class MoveColoniesForm(HivesAsked, ActForm):
    """Which colonies go, and to which yard."""

    result = _("Each colony keeps its gear on it")

    def __init__(self, data=None, *, hives, chosen, weights, yard, day):
        super().__init__(data, day=day)
        self.ask_hives(hives, chosen, weights=weights)
        self.fields["target"] = forms.ModelChoiceField(
            Yard.objects.exclude(pk=yard.pk).filter(is_shed=False),
            label=_("They go to"),
            to_field_name="code",
            empty_label=_("choose a yard"),
        )


@dataclass(frozen=True, kw_only=True)
class MotherRow:
    """A colony and how many splits it gives, as the page shows it. `rank`: the strongest is 0."""

    colony: Colony
    field: forms.BoundField
    rank: int


class SplitForm(ActForm):
    """How many splits each colony gives; how they are made is told once for all."""

    one, many = "split", "splits"

    def __init__(self, data=None, *, mothers, hive_set, into, day):
        super().__init__(data, day=day)
        self.mothers = list(mothers)
        alone = len(self.mothers) == 1
        for mother in self.mothers:
            field = number(_("Splits of %s") % mother, initial=int(alone))
            field.max_value = MOST_SPLITS
            field.validators.append(forms.IntegerField(max_value=MOST_SPLITS).validators[-1])
            self.fields[f"{SPLITS}{mother.pk}"] = field
        self.fields["hive_set"] = set_choice(_("Each stands in"), HiveSet.objects.all(), hive_set)
        self.fields["frames"] = number(_("Combs that go along with each"), required=True, initial=5)
        self.fields["fill"] = radio(_("Frames that fill up"), FILLS, Comb.FOUNDATION.value)
        self.fields["refill"] = forms.BooleanField(
            label=_("Fill the mother's gaps too"), required=False, initial=True
        )
        queens = [("", _("not told")), *QueenFrom.choices]
        self.fields["queen"] = radio(_("The new colony's queen"), queens, "", required=False)
        self.fields["into"] = store_choice(_("They stand in"), into)
        self.fields["tags"] = forms.CharField(
            label=_("Tags of the new colonies"),
            max_length=600,
            initial=free_tags(usual_tag([mother.tag for mother in self.mothers]))[0],
            help_text=_("The first; the others are counted on. Or all of them, parted by commas."),
        )

    @property
    def rows(self):
        ranks = {word: rank for rank, word in enumerate(Colony.Strength.values)}
        strongest = sorted(self.mothers, key=lambda one: (ranks.get(one.strength, 9), one.tag))
        places = {one.pk: place for place, one in enumerate(strongest)}
        return [
            MotherRow(colony=one, field=self[f"{SPLITS}{one.pk}"], rank=places[one.pk])
            for one in self.mothers
        ]

    def _typed(self, name):
        value = str(self[name].value() or 0)
        return min(int(value), MOST_FRAMES) if value.isdecimal() and len(value) < MOST_SPLITS else 0

    @property
    def tally(self):
        return sum(self._typed(f"{SPLITS}{mother.pk}") for mother in self.mothers)

    @property
    def tally_words(self):
        return counted(self.tally, self.one, self.many)

    @property
    def result(self):
        combs = counted(self.tally * self._typed("frames"), "comb goes", "combs go")
        return f"{combs} along" if self.tally else _("Tell how many splits each colony gives")

    def clean(self):
        given = super().clean() or {}
        splits = sum(given.get(f"{SPLITS}{mother.pk}") or 0 for mother in self.mothers)
        if not splits and not self.errors:
            self.add_error(None, _("No split was told: give at least one colony a number."))
        tags = [" ".join(tag.split()) for tag in given.get("tags", "").split(",") if tag.strip()]
        if len(tags) > splits > 0:
            self.add_error("tags", f"{len(tags)} tags for {splits} splits: leave some out, or split more.")
        elif tags:
            taken = [*Colony.objects.values_list("tag", flat=True), *tags]
            self.tags = [*tags, *following(tags[-1], taken, splits - len(tags))]
        return given

    def daughters(self):
        """The tags of each mother that gives any, dealt out in the order of the page."""
        tags, told = iter(self.tags), []
        for mother in self.mothers:
            splits = self.cleaned_data[f"{SPLITS}{mother.pk}"] or 0
            if splits:
                told.append(Daughters(mother=mother, tags=tuple(next(tags) for _ in range(splits))))
        return told

    def plan(self, source):
        given = self.cleaned_data
        return SplitPlan(
            hive_set=given["hive_set"],
            source=source,
            frames=given["frames"],
            fill=Comb(given["fill"]),
            refill=given["refill"],
            yard=given["into"],
            queen=given["queen"],
        )


class HiveNucForm(ActForm):
    """The full set a nuc comes into, and where its box goes."""

    result = _("Its frames go along; the store gives the rest of the set")

    def __init__(self, data=None, *, hive_set, into, day):
        super().__init__(data, day=day)
        sets = HiveSet.objects.filter(is_nuc=False)
        self.fields["hive_set"] = set_choice(_("From now on it stands in"), sets, hive_set)
        self.fields["fill"] = radio(_("Frames that fill up"), FILLS, Comb.FOUNDATION.value)
        self.fields["into"] = store_choice(_("The nuc box goes into the store of"), into)


class UniteForm(LinesForm):
    """How many of each piece go on the hive that stays; all else goes into a store."""

    def __init__(self, data=None, *, others, wanted_width, into, **kwargs):
        self.wanted_width = wanted_width
        super().__init__(data, **kwargs)
        self.fields["onto"] = forms.ModelChoiceField(
            Colony.objects.filter(pk__in=[colony.pk for colony in others]),
            label=_("It is united with"),
            empty_label=None,
            widget=forms.RadioSelect,
            error_messages={"required": _("Press the tag of the colony it goes to.")},
        )
        self.fields["into"] = store_choice(_("The rest goes into the store of"), into)

    def field_of(self, row):
        goes_on = row.part.kind in (Kind.BOX, Kind.FRAME) and row.condition == Condition.SOUND
        fits = row.part.width in (None, self.wanted_width)
        return number(row.name, initial=row.booked if goes_on and fits else 0)

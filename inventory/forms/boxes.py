"""Boxes for a whole yard: one number for every hive, and a number of their own for the exceptions.

Takes the hives of a yard and what was sent; gives {colony: boxes} and the words of what is about to happen.
"""

from dataclasses import dataclass

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Colony, Yard
from inventory.forms.acts import ActForm
from inventory.forms.lines import number
from inventory.gear import CombUse
from inventory.yardwork.boxes import FEWER
from inventory.yardwork.filling import Fill

OWN = "own__"  # a hive's own number
AS_OTHERS = "as-others-"
MOST = 10  # boxes a hive in one act


@dataclass(frozen=True, kw_only=True)
class HiveRow:
    """A living colony and how many boxes it can be told: by the rule for all at most `usual`, where that is known."""

    colony: Colony
    fits: bool = True
    usual: int | None = None
    words: str = ""

    def by_rule(self, every):
        if not self.fits:
            return 0
        return every if self.usual is None else min(every, self.usual)


@dataclass(frozen=True, kw_only=True)
class OwnRow:
    """An exception as the page shows it."""

    hive: HiveRow
    field: forms.BoundField
    back: str  # what its button sends to make it one of the others again


class Named(list):
    """Colonies as a sentence names them: F-05, F-06 and F-08; of many the first few."""

    FEW = 8

    def __str__(self):
        names = [str(colony) for colony in self[: self.FEW]]
        more = len(self) - len(names)
        last = f"{more} more" if more else names.pop() if len(names) > 1 else ""
        return " and ".join(filter(None, [", ".join(names), last]))


class BoxesForm(ActForm):
    """`add` names a hive that becomes an exception, or one that is none any more."""

    one, many = "box", "boxes"
    most = MOST

    def __init__(self, data=None, *, hives, day, every=1):
        self.hives = hives
        self.known = {str(hive.colony.pk): hive for hive in hives if hive.fits}
        super().__init__(self._with_exceptions(data, every), day=day)
        asked = number(_("Every hive that takes them"), required=True, initial=every)
        asked.max_value = self.most
        self.fields["every"] = asked
        for hive in self.excepted:
            self.fields[self._name(hive)] = number(str(hive.colony), required=True)
        for field in self.fields.values():
            if isinstance(field, forms.IntegerField):
                field.validators.append(forms.IntegerField(max_value=self.most).validators[-1])

    def _with_exceptions(self, data, every):
        """What was sent, with the hive that was asked for."""
        asked = (data or {}).get("add", "")
        if not asked:
            return data
        data = data.copy()
        if asked in self.known:
            rule = data.get("every", str(every))
            usual = self.known[asked].by_rule(int(rule) if rule.isdecimal() else every)
            data.setdefault(f"{OWN}{asked}", str(usual))
        elif asked.startswith(AS_OTHERS):
            data.pop(f"{OWN}{asked.removeprefix(AS_OTHERS)}", None)
        return data

    @staticmethod
    def _name(hive):
        return f"{OWN}{hive.colony.pk}"

    @property
    def excepted(self):
        return [hive for pk, hive in self.known.items() if f"{OWN}{pk}" in self.data]

    @property
    def exceptions(self):
        return [
            OwnRow(hive=hive, field=self[self._name(hive)], back=f"{AS_OTHERS}{hive.colony.pk}")
            for hive in self.excepted
        ]

    def so_far(self):
        """{hive: number} as typed, zero for what is no number; for what is shown, not for the books."""
        typed = {hive: self._typed(self._name(hive)) for hive in self.excepted}
        every = self._typed("every")
        return {hive: typed.get(hive, hive.by_rule(every)) for hive in self.hives}

    def _typed(self, name):
        value = str(self[name].value() or 0)
        return min(int(value), self.most) if value.isdecimal() and len(value) < 10 else 0

    def colonies(self):
        """{colony: boxes} as it was sent and found good."""
        own = {hive: self.cleaned_data[self._name(hive)] for hive in self.excepted}
        every = self.cleaned_data["every"]
        return {hive.colony: own.get(hive, hive.by_rule(every)) for hive in self.hives if hive.fits}

    @property
    def boxes(self):
        return sum(self.so_far().values())

    @property
    def hives_words(self):
        told = sum(1 for boxes in self.so_far().values() if boxes)
        return "1 colony" if told == 1 else f"{told} colonies"

    @property
    def misfits(self):
        return Named([hive.colony for hive in self.hives if not hive.fits])

    @property
    def without(self):
        """Hives that fit and that the rule for all gives none."""
        own = set(self.excepted)
        rule = (hive for hive in self.hives if hive.fits and hive.usual == 0 and hive not in own)
        return Named([hive.colony for hive in rule])

    def box_words(self, boxes):
        return f"{boxes:,} {self.one if boxes == 1 else self.many}"


class GoingOnForm(BoxesForm):
    """Boxes that go on, and what is in them. `booked`: what the store has of the box."""

    def __init__(self, data=None, *, box, booked, **kwargs):
        self.booked = booked
        self.one, self.many = (f"{box.depth}", f"{box.depth}s") if box else ("box", "boxes")
        super().__init__(data, **kwargs)
        self.fields["fill"] = forms.ChoiceField(
            label=_("What is in them"),
            choices=[
                (Fill.STORE.value, _("comb first, then foundation")),
                (Fill.DRAWN.value, _("drawn comb")),
                (Fill.FOUNDATION.value, _("foundation")),
            ],
            widget=forms.RadioSelect,
            initial=Fill.STORE.value,
        )
        if box and box.use == CombUse.HONEY:
            numbers = range(box.frames, box.frames - FEWER - 1, -1)
            self.fields["combs"] = forms.TypedChoiceField(
                label=_("Drawn combs in a super"),
                choices=[(n, str(n)) for n in numbers],
                coerce=int,
                widget=forms.RadioSelect,
                initial=box.frames,
            )

    def chosen(self):
        return {name: self.cleaned_data[name] for name in ("fill", "combs") if name in self.fields}

    @property
    def result(self):
        boxes, beyond = self.boxes, max(0, self.boxes - self.booked)
        if not boxes:
            return _("Nothing goes on")
        rest = f"{beyond:,} beyond the book, booked as found" if beyond else self._left(boxes)
        return f"{self.box_words(boxes)} {'goes' if boxes == 1 else 'go'} on, {rest}"

    def _left(self, boxes):
        left = self.booked - boxes
        return f"{left:,} {'stays' if left == 1 else 'stay'} in the store"


class PullForm(BoxesForm):
    """Supers that come off, where they go, and whether their foundation was drawn out."""

    one, many = "super", "supers"

    def __init__(self, data=None, *, target, **kwargs):
        super().__init__(data, **kwargs)
        self.fields["target"] = forms.ModelChoiceField(
            Yard.objects.all(),
            label=_("Goes to the store of"),
            to_field_name="code",
            initial=target.code if target else None,
            empty_label=_("choose a place"),
        )
        self.fields["drawn"] = forms.TypedChoiceField(
            label=_("Frames that went on with foundation"),
            choices=[("yes", _("drawn out by now")), ("no", _("as they went on"))],
            coerce=lambda word: word == "yes",
            widget=forms.RadioSelect,
            initial="yes",
        )

    def chosen(self):
        return {"target": self.cleaned_data["target"], "drawn": self.cleaned_data["drawn"]}

    @property
    def result(self):
        boxes = self.boxes
        beyond = sum(max(0, number - (hive.usual or 0)) for hive, number in self.so_far().items())
        if not boxes:
            return _("Nothing comes off")
        rest = f", {beyond:,} beyond the book, booked as found" if beyond else ""
        return f"{self.box_words(boxes)} {'comes' if boxes == 1 else 'come'} off{rest}"

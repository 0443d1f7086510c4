"""A yard fed, and the comb its hives drew: one number for every hive, and one of their own for the exceptions.

Takes the hives of a yard and what was sent; gives {colony: number} and the words of what is about to happen.
"""

from django import forms
from django.utils.translation import gettext_lazy as _

from inventory.forms.boxes import BoxesForm
from inventory.gear import CombUse, Depth
from inventory.syrup import QUARTS_A_GALLON, RATIONS


class FeedForm(BoxesForm):
    """What every hive gets: quarts of syrup, or lb of sugar or patties. `booked`: {part's code: lb in the store}."""

    one, many, most = "quart or lb", "quarts or lb", 200
    every_words = _("Quarts of syrup each, or lb of sugar or patties")
    help = _("Four quarts are a gallon.")

    def __init__(self, data=None, *, booked, **kwargs):
        self.booked = booked
        super().__init__(data, every=QUARTS_A_GALLON, **kwargs)
        self.fields["ration"] = forms.ChoiceField(
            label=_("What is fed, by weight of sugar to water"),
            choices=[(code, ration.words) for code, ration in RATIONS.items()],
            widget=forms.RadioSelect,
            initial=next(iter(RATIONS)),
        )

    @property
    def rations(self):
        """[(ration, lb of its part in the store)]: what the foot has to know of each."""
        return [(ration, self.booked.get(ration.part, 0)) for ration in RATIONS.values()]

    @property
    def ration(self):
        return RATIONS.get(self["ration"].value()) or RATIONS["syrup-1-1"]

    @property
    def result(self):
        told = self.boxes
        if not told:
            return _("Nothing is fed")
        ration = self.ration
        lb = ration.lb(told)
        whole = f"{ration.amount(told)} of {ration.words.lower()}"
        beyond = max(0, lb - self.booked.get(ration.part, 0))
        rest = f", {beyond:,} lb beyond the book, booked as found" if beyond else ""
        taken = f"{whole}, {lb:,} lb of sugar" if ration.is_syrup else whole
        return f"{taken} from the store{rest}"

    def portions(self):
        return list(self.colonies().items())


class DrawForm(BoxesForm):
    """Frames with foundation that became comb, what for, and whether on a treated colony."""

    one, many, most = "frame", "frames", 60
    every_words = _("Frames drawn in every hive, as far as it has them")
    help = _("A box is seldom drawn to the last frame: the outer two or three come late.")

    def __init__(self, data=None, *, part, **kwargs):
        hives = kwargs["hives"]
        super().__init__(data, every=max((hive.usual or 0 for hive in hives), default=0), **kwargs)
        use = CombUse.BROOD if part and part.depth == Depth.DEEP else CombUse.HONEY
        self.fields["use"] = forms.ChoiceField(
            label=_("Comb for"),
            choices=[(each.value, each.value) for each in CombUse],
            widget=forms.RadioSelect,
            initial=use.value,
        )
        self.fields["treated"] = forms.TypedChoiceField(
            label=_("While a treatment was on"),
            choices=[("no", _("no")), ("yes", _("yes: never under honey for sale"))],
            coerce=lambda word: word == "yes",
            widget=forms.RadioSelect,
            initial="no",
        )

    @property
    def result(self):
        told = self.boxes
        beyond = sum(max(0, number - (hive.usual or 0)) for hive, number in self.so_far().items())
        if not told:
            return _("No comb is drawn")
        rest = f", {beyond:,} beyond the book, booked as found" if beyond else ""
        return f"{self.box_words(told)} became comb{rest}"

    def chosen(self):
        return {name: self.cleaned_data[name] for name in ("use", "treated")}

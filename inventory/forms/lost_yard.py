"""The form of a lost yard: why, which colonies, whether the store too, and what was saved.

Takes the colonies and store of a yard; gives the words of the act and Lines of what was saved.
"""

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Colony
from inventory.forms.bees import HivesAsked, radio, store_choice
from inventory.forms.lines import LinesForm, number
from inventory.gear import Condition
from inventory.yardwork.lost_yard import Cause

ENDS = ((Colony.Ended.LOST.value, _("gone")), (Colony.Ended.DIED.value, _("dead, still there")))
GEAR = (("gone", _("lost with them")), ("stands", _("still there, to be worked")))
SAVED_AS = (
    (Condition.SOUND.value, _("sound")),
    (Condition.TO_MEND.value, _("to mend")),
    (Condition.HELD.value, _("held back")),
)


class LostYardForm(HivesAsked, LinesForm):
    """`n__…`: how many of each were saved, of all hives and the store together."""

    def __init__(self, data=None, *, hives, chosen, into, **kwargs):
        super().__init__(data, **kwargs)
        self.ask_hives(hives, chosen, required=False)
        self.fields["cause"] = radio(_("What happened?"), [(one.value, one.value) for one in Cause], "flood")
        self.fields["why"] = radio(_("The bees are"), ENDS, Colony.Ended.LOST.value)
        self.fields["gear"] = radio(_("Their hives are"), GEAR, "gone")
        self.fields["store_too"] = forms.BooleanField(label=_("The store here is lost too"), required=False)
        self.fields["saved_as"] = radio(_("What was saved is"), SAVED_AS, Condition.TO_MEND.value)
        self.fields["into"] = store_choice(_("What was saved goes into the store of"), into)

    def field_of(self, row):
        return number(row.name, initial=0)

    @property
    def any_saved(self):
        return any(quantity for _row, quantity in self.so_far())

    def told_of_yard(self):
        given = self.cleaned_data
        return {
            "colonies": self.picked(),
            "cause": given["cause"],
            "why": given["why"],
            "gear_stands": given["gear"] == "stands",
            "store_too": given["store_too"],
            "saved": self.lines(),
            "saved_as": Condition(given["saved_as"]),
            "into": given["into"],
        }

"""Forms of the workbench and of care: what is assembled how often, what is marked as what."""

from django import forms
from django.utils.translation import gettext_lazy as _

from inventory.forms.acts import ActForm
from inventory.forms.lines import LinesForm, number
from inventory.gear import Condition


class AssembleForm(ActForm):
    """How often the recipe is carried out."""

    covers = True

    def __init__(self, data=None, *, day, possible):
        super().__init__(data, day=day)
        self.fields["times"] = number(_("Times"), required=True, initial=possible)


class MarkForm(LinesForm):
    """Rows, and the condition they are in from now on."""

    def __init__(self, data=None, **kwargs):
        super().__init__(data, **kwargs)
        self.fields["becomes"] = forms.ChoiceField(
            label=_("From now on they are"),
            choices=[(word.value, word.value) for word in (Condition.TO_MEND, Condition.HELD)],
            widget=forms.RadioSelect,
            initial=Condition.TO_MEND.value,
        )

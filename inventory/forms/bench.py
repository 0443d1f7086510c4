"""Forms of the workbench and of care: what is assembled how often, what is marked as what."""

from typing import Any

from django import forms
from django.core.validators import MaxLengthValidator
from django.utils.translation import gettext_lazy as _

from inventory.forms.acts import ActForm
from inventory.forms.lines import LinesForm, number
from inventory.gear import Condition

NOTE = 170  # letters, so that the reason fits before it


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


class ScrapForm(LinesForm):
    """Rows, and why they are thrown away; the reason stands first in the act's note."""

    WHY = (
        ("broken or rotten", _("broken or rotten")),
        ("old comb culled", _("old comb culled")),
        ("wax moth or mice", _("wax moth or mice")),
        ("worn out", _("worn out")),
    )

    def __init__(self, data=None, **kwargs):
        super().__init__(data, **kwargs)
        self.fields["why"] = forms.ChoiceField(
            label=_("Thrown away because"), choices=self.WHY, widget=forms.RadioSelect
        )
        note: Any = self.fields["note"]
        note.max_length = NOTE
        note.validators.append(MaxLengthValidator(NOTE))

    def told(self, who):
        told = super().told(who)
        return {**told, "note": "; ".join(filter(None, (self.cleaned_data["why"], told["note"])))}

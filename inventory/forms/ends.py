"""What became of a colony: the form before its hive can be salvaged."""

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.colonies import ENDS
from apiary.models import Colony


class EndForm(forms.Form):
    """A colony that is no more; it cannot be taken back."""

    day = forms.DateField(widget=forms.HiddenInput)
    why = forms.ChoiceField(
        label=_("What became of it?"),
        choices=[(why, Colony.Ended(why).label) for why in ENDS],
        widget=forms.RadioSelect,
    )
    note = forms.CharField(label=_("Note"), max_length=150, required=False)

    @property
    def faults(self):
        return self.non_field_errors()

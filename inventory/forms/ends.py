"""What became of a colony: the form before its hive can be worked or salvaged."""

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.colonies import ENDS
from apiary.models import Colony
from inventory.forms.acts import ActForm


class EndForm(ActForm):
    """A colony that is no more; the note is kept with its end."""

    note = forms.CharField(label=_("Note"), max_length=150, required=False)

    def __init__(self, data=None, *, day):
        super().__init__(data, day=day)
        self.fields["why"] = forms.ChoiceField(
            label=_("What became of it?"),
            choices=[(why, Colony.Ended(why).label) for why in ENDS],
            widget=forms.RadioSelect,
        )

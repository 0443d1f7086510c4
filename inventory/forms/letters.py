"""What stands on an order beside its lines: how a supplier is reached, and the keeper's note. Gives words."""

from django import forms
from django.utils.translation import gettext_lazy as _

from inventory.models import Supplier


class SupplierForm(forms.ModelForm):
    """The supplier's letterhead; name, shipping and lead time are those of the keeper's sheet."""

    class Meta:
        model = Supplier
        fields = ["address", "phone", "email", "customer_number"]
        widgets = {
            "address": forms.Textarea(attrs={"rows": 4}),
            "phone": forms.TextInput(attrs={"inputmode": "tel"}),
        }


class NoteForm(forms.Form):
    note = forms.CharField(
        label=_("Note to the supplier"),
        max_length=1000,
        required=False,
        strip=True,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text=_("Stands under the total: where to unload, whom to ring, what may come instead."),
    )

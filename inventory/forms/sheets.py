"""What a person sends on inventory's pages, checked. Changes nothing: the acts do."""

from django import forms
from django.utils.translation import gettext_lazy as _

from inventory.sheets.opening import LARGEST, MEGABYTE


class SheetForm(forms.Form):
    """A workbook to try. What is in it is judged by the dry run, not here."""

    file = forms.FileField(
        label=_("Workbook (.xlsx)"),
        allow_empty_file=True,
        help_text=_("The template, filled in. It is tried first: nothing is posted yet."),
        widget=forms.FileInput(
            attrs={"accept": ".xlsx,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"}
        ),
    )

    def clean_file(self):
        file = self.cleaned_data["file"]
        if file.size > LARGEST:
            size, most = f"{file.size / MEGABYTE:.1f}", LARGEST // MEGABYTE
            raise forms.ValidationError(
                _(
                    "The file has %(size)s MB, more than %(most)s: delete pictures and sheets that do not belong."
                ),
                params={"size": size, "most": most},
            )
        return file

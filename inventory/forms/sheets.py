"""What a person sends on inventory's pages, checked. Changes nothing: the acts do."""

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Yard
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


class CountSheetForm(forms.Form):
    """Which places a count sheet is made for, and how."""

    place = forms.ModelMultipleChoiceField(
        Yard.objects.all(),
        label=_("Places"),
        to_field_name="code",
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text=_("None ticked: all of them, each on a sheet of paper of its own."),
    )
    blind = forms.BooleanField(
        label=_("Blind"),
        required=False,
        help_text=_("What the book has is left off, so that nobody counts towards it."),
    )
    with_colonies = forms.BooleanField(
        label=_("With the boxes on colonies"), required=False, help_text=_("Boxes only, colony by colony.")
    )

    def asked(self):
        """As loading.workbook_of takes it."""
        chosen = self.cleaned_data
        yards = list(chosen["place"]) or None
        return {"yards": yards, "blind": chosen["blind"], "with_colonies": chosen["with_colonies"]}

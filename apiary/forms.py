"""What a person types on apiary's pages, checked. Changes nothing: the acts do."""

from django import forms
from django.contrib.auth import get_user_model
from django.contrib.auth.forms import AuthenticationForm
from django.contrib.auth.password_validation import password_validators_help_texts, validate_password
from django.utils.translation import gettext_lazy as _

from apiary.models import Access, Keeper, Yard


class SignInForm(AuthenticationForm):
    """Django's own form in the house's words."""

    error_messages = {
        "invalid_login": _("No one here has this name and password: mind capitals and try again."),
        "inactive": _("This name has been switched off: ask the keeper."),
    }

    def __init__(self, *args, **kwargs):
        super().__init__(*args, **kwargs)
        self.fields["username"].label = _("Your name")


class FirstSignInForm(forms.Form):
    """Name and password of a person who comes by link and has none yet."""

    name = forms.CharField(
        label=_("Your name"),
        max_length=150,
        help_text=_("You sign in with it from now on."),
        widget=forms.TextInput(attrs={"autocomplete": "username", "autofocus": True}),
    )
    password = forms.CharField(
        label=_("Password"),
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
    )
    again = forms.CharField(
        label=_("Password again"),
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
    )

    def __init__(self, *args, person, **kwargs):
        self.person = person
        super().__init__(*args, **kwargs)
        self.fields["password"].help_text = " ".join(password_validators_help_texts())

    def clean_name(self):
        name = get_user_model().normalize_username(self.cleaned_data["name"].strip())
        others = get_user_model().objects.exclude(pk=self.person.pk)
        if others.filter(username__iexact=name).exists():
            raise forms.ValidationError(_("Someone here has this name already: take another."))
        return name

    def clean(self):
        given = super().clean() or {}
        password, again = given.get("password"), given.get("again")
        if password and again and password != again:
            self.add_error("again", _("The two passwords differ: type the same one twice."))
        elif password:
            self.person.username = given.get("name", self.person.username)
            try:
                validate_password(password, user=self.person)
            except forms.ValidationError as faults:
                self.add_error("password", faults)
        return given


class AccessForm(forms.Form):
    """What a person may do, and where."""

    role = forms.ChoiceField(
        label=_("May"),
        choices=(
            (Access.Role.HELPER, _("Help: field acts in the yards ticked, no prices, no season")),
            (Access.Role.READER, _("Read: look at the yards ticked, book nothing")),
            (Access.Role.KEEPER, _("Keep: everything, everywhere")),
        ),
        widget=forms.RadioSelect,
    )
    yards = forms.ModelMultipleChoiceField(
        Yard.objects.all(),
        label=_("Yards"),
        to_field_name="code",
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text=_("Tick the shed too where they load there. A keeper needs none ticked."),
    )

    def clean(self):
        given = super().clean() or {}
        if given.get("role") in (Access.Role.HELPER, Access.Role.READER) and not given.get("yards"):
            self.add_error("yards", _("Tick at least one yard: without one nothing is open to them."))
        return given


class InviteForm(AccessForm):
    """A new person."""

    name = forms.CharField(
        label=_("Name"),
        max_length=150,
        help_text=_("They may choose another when they first sign in."),
        widget=forms.TextInput(attrs={"autocomplete": "off"}),
    )
    field_order = ["name", "role", "yards"]

    def clean_name(self):
        name = " ".join(self.cleaned_data["name"].split())
        if get_user_model().objects.filter(username__iexact=name).exists():
            raise forms.ValidationError(_("Someone here has this name already: give the new one another."))
        return name


class OperationForm(forms.ModelForm):
    """Whose bees these are, as on a letterhead."""

    class Meta:
        model = Keeper
        fields = ["name", "address", "phone", "email"]
        widgets = {
            "name": forms.TextInput(attrs={"autocomplete": "organization"}),
            "address": forms.Textarea(attrs={"rows": 4, "autocomplete": "street-address"}),
            "phone": forms.TextInput(attrs={"autocomplete": "tel", "inputmode": "tel"}),
            "email": forms.EmailInput(attrs={"autocomplete": "email"}),
        }

    address = forms.CharField(
        label=_("Address"),
        max_length=500,
        required=False,
        help_text=_("As on a parcel, line by line. Gear is sent here."),
        widget=forms.Textarea(attrs={"rows": 4, "autocomplete": "street-address"}),
    )

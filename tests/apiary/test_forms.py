"""Name and password by link: what is refused, and with which sentence."""

import pytest

from apiary import people
from apiary.forms import AccessForm, FirstSignInForm, InviteForm
from tests.makers import make_person, make_yard

pytestmark = pytest.mark.django_db
GOOD = {
    "name": "Robin Ash",
    "password": "forty frames of foundation",
    "again": "forty frames of foundation",
}


def form(**changes):
    return FirstSignInForm({**GOOD, **changes}, person=people.first_keeper())


def test_it_takes_a_name_with_a_space_and_a_long_password():
    assert form().is_valid()


def test_a_name_somebody_has_is_refused_whatever_its_letters():
    make_person("robin ash")
    assert "has this name already" in str(form().errors["name"])


def test_two_different_passwords_are_refused():
    assert "differ" in str(form(again="forty frames of wax").errors["again"])


@pytest.mark.parametrize("weak", ["short", "password123", "Robin Ash"])
def test_a_weak_password_is_refused(weak):
    assert "password" in form(password=weak, again=weak).errors


@pytest.mark.parametrize("field", ["name", "password", "again"])
def test_each_field_must_be_filled(field):
    assert field in form(**{field: ""}).errors


def test_an_invitation_needs_a_name_nobody_has():
    make_person("sam")
    yard = make_yard("fern-hollow")
    given = {"name": "  SAM ", "role": "helper", "yards": [yard.code]}
    assert "has this name already" in str(InviteForm(given).errors["name"])
    good = InviteForm({**given, "name": "Kim  Reed"})
    assert good.is_valid()
    assert good.cleaned_data["name"] == "Kim Reed"
    assert list(good.cleaned_data["yards"]) == [yard]


@pytest.mark.parametrize("role", ["helper", "reader"])
def test_a_helper_or_reader_needs_a_yard(role):
    assert "Tick at least one yard" in str(AccessForm({"role": role}).errors["yards"])


def test_a_keeper_needs_no_yard_and_no_other_role_is_known():
    assert AccessForm({"role": "keeper"}).is_valid()
    assert "role" in AccessForm({"role": "chief"}).errors

"""Name and password by link: what is refused, and with which sentence."""

import pytest

from apiary import people
from apiary.forms import FirstSignInForm
from tests.makers import make_person

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

"""A new link for someone who forgot the password."""

import io

import pytest
from django.core.management import CommandError, call_command

from tests.makers import make_person

pytestmark = pytest.mark.django_db


def test_it_prints_a_link_that_asks_for_a_new_password(client):
    make_person("robin")
    out = io.StringIO()
    call_command("sign_in_link", "robin", at="http://127.0.0.1:8000/", stdout=out)
    (line,) = out.getvalue().splitlines()
    assert line.startswith("Sign in: http://127.0.0.1:8000/sign-in/")
    assert b"Password again" in client.get(line.removeprefix("Sign in: http://127.0.0.1:8000")).content


def test_a_name_nobody_has_is_refused():
    with pytest.raises(CommandError, match="Nobody here signs in as 'wren'"):
        call_command("sign_in_link", "wren")

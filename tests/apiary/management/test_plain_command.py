"""Help of every command of ours: what a keeper may set, and none of the options that are for programmers."""

import pytest
from django.core.management import call_command, get_commands, load_command_class

OURS = {name: app for name, app in get_commands().items() if app in ("apiary", "inventory", "planner")}
PROGRAMMERS = ("--settings", "--pythonpath", "--traceback", "--no-color", "--force-color", "--skip-checks")


@pytest.mark.parametrize("name", sorted(OURS))
def test_help_lists_no_option_that_means_nothing_to_a_keeper(name):
    text = load_command_class(OURS[name], name).create_parser("manage.py", name).format_help()
    assert "--help" in text
    assert not [option for option in (*PROGRAMMERS, "--verbosity", "--version") if option in text]


def test_what_help_leaves_out_still_works(db, capsys):
    call_command("load_catalogue", "--skip-checks", "--no-color", "--verbosity", "0")
    assert capsys.readouterr().out == ""
    call_command("load_catalogue")
    assert "The catalogue is in place." in capsys.readouterr().out

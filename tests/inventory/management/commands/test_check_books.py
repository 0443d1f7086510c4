"""manage.py check_books: one line and 0 where all is right, every fault and 1 where not."""

import pytest
from django.core.management import CommandError, call_command
from django.db import connection

from inventory.models import BookSeal, Evening, Holding
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def books(db):
    makers.put(makers.make_shed(), {"stand": 10})


def check_books(capsys, *options):
    """(exit code, what was printed)."""
    try:
        call_command("check_books", *options)
    except SystemExit as exit:
        return exit.code, capsys.readouterr().out
    return 0, capsys.readouterr().out


def test_right_books_take_one_line(capsys):
    code, text = check_books(capsys)
    assert code == 0
    assert text.count("\n") == 1
    assert text.startswith("The books are right: 1 movement of 1 act, 10 pieces in 1 place,")


def test_the_same_books_give_the_same_text(capsys):
    assert check_books(capsys) == check_books(capsys)


def test_each_fault_is_printed_and_the_command_ends_with_one(capsys):
    with connection.cursor() as cursor:
        cursor.execute("UPDATE inventory_movement SET quantity = 11")
    code, text = check_books(capsys)
    assert code == 1
    assert "does not carry the digest" in text
    assert "the balance kept is 10, the movements give 11" in text
    assert text.endswith("3 faults in the books.\n")


def test_a_lone_fault_is_one_fault(capsys):
    Holding.objects.create(location=Holding.objects.get().location, part=makers.part("sugar"), quantity=0)
    assert check_books(capsys)[0] == 0
    with connection.cursor() as cursor:
        cursor.execute("UPDATE inventory_bookseal SET length = 2")
    assert check_books(capsys)[1].endswith("1 fault in the books.\n")


def test_the_line_of_an_earlier_check_is_held_against_the_books(capsys):
    seal = check_books(capsys)[1].split()[-1].strip(".")
    makers.put(makers.make_shed(), {"jar": 3})
    assert check_books(capsys, "--noted", "1", seal)[0] == 0
    code, text = check_books(capsys, "--noted", "1", "abcdef123456")
    assert (code, "is not that of movement 1" in text) == (1, True)
    code, text = check_books(capsys, "--noted", "1,000", seal)
    assert (code, "some are gone" in text) == (1, True)


@pytest.mark.parametrize(
    ("noted", "said"),
    [(("many", "abcdef"), "many is no number of movements"), (("1", "so long"), "so long is no seal")],
)
def test_what_is_no_number_or_seal_is_said(capsys, noted, said):
    with pytest.raises(CommandError, match=said):
        call_command("check_books", "--noted", *noted)


def test_after_a_change_of_the_secret_key_the_seal_is_signed_again(capsys, settings):
    settings.SECRET_KEY = "another, as long as a key should be"
    code, text = check_books(capsys)
    assert (code, "check_books --seal-again" in text) == (1, True)
    assert check_books(capsys, "--seal-again")[0] == 0
    assert check_books(capsys)[0] == 0


def test_no_seal_is_signed_again_where_anything_else_is_wrong(capsys, settings):
    settings.SECRET_KEY = "another, as long as a key should be"
    with connection.cursor() as cursor:
        cursor.execute("UPDATE inventory_holding SET quantity = 11")
    mark = BookSeal.objects.get().mark
    assert check_books(capsys, "--seal-again")[0] == 1
    assert BookSeal.objects.get().mark == mark


def test_evenings_are_worked_out_again_where_asked(capsys):
    Evening.objects.create(day=makers.DAY, length=5, balances={})
    assert check_books(capsys)[0] == 1
    assert check_books(capsys, "--evenings-again")[0] == 0

"""manage.py check_books: one line and 0 where all is right, every fault and 1 where not."""

import pytest
from django.core.management import call_command
from django.db import connection

from inventory.models import Holding
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def books(db):
    makers.put(makers.make_shed(), {"stand": 10})


def check_books(capsys):
    """(exit code, what was printed)."""
    try:
        call_command("check_books")
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

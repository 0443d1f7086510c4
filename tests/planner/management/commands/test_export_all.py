"""export_all: the whole of the books in a folder, and what it says of books that are not right."""

import pytest
from django.core.management import CommandError, call_command
from django.db import connection

from tests import makers

pytestmark = pytest.mark.django_db


def test_it_writes_and_says_how_much_and_to_keep_it_well(tmp_path, capsys):
    makers.make_yard("creek")
    call_command("export_all", str(tmp_path / "out"))
    text = capsys.readouterr().out
    assert "rows in" in text and "keep the folder" in text
    assert (tmp_path / "out" / "yards.csv").exists()


def test_a_folder_in_the_way_is_refused(tmp_path):
    (tmp_path / "mine.txt").write_text("mine")
    with pytest.raises(CommandError, match="not empty"):
        call_command("export_all", str(tmp_path))


def test_books_that_are_not_right_go_out_and_it_says_so(tmp_path, capsys):
    makers.put(makers.make_shed(), {"stand": 10})
    with connection.cursor() as cursor:
        cursor.execute("UPDATE inventory_movement SET quantity = 11")
    call_command("export_all", str(tmp_path / "out"))
    text = capsys.readouterr().out
    assert "does not carry the digest" in text and "load_all refuses" in text
    assert (tmp_path / "out" / "manifest.json").exists()

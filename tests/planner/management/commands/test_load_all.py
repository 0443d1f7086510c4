"""load_all: back in with a link for the keeper; every fault as a row; from SQLite to PostgreSQL and back."""

import contextlib
import os
import re
import subprocess
import sys
from urllib.parse import urlsplit, urlunsplit

import pytest
from django.contrib.auth import get_user_model
from django.core.management import CommandError, call_command

from apiary import people
from apiary.models import Yard
from planner.management.commands import load_all
from tests import makers
from tests.conftest import need
from tests.planner.plain_data.emptied import changed, empty, files_of
from tests.processes import MANAGE


@pytest.fixture
def folder(tmp_path, db):
    makers.make_shed(name="Shed")
    makers.make_person("robin")
    makers.make_person("lee", role="helper")
    makers.put(Yard.objects.get(), {"stand": 10})
    call_command("export_all", str(tmp_path / "out"))
    empty()
    return tmp_path / "out"


def test_it_loads_proves_and_prints_a_link_for_the_keeper(folder, capsys, client):
    call_command("load_all", str(folder), "--at", "http://shed.example:8000/")
    text = capsys.readouterr().out
    assert "The books are right: 1 movement of 1 act, 10 pieces" in text
    path = re.search(r"Sign in: http://shed\.example:8000(\S+)", text).group(1)
    assert client.get(path).status_code == 200
    link = people.link_of(path.strip("/").split("/")[-1], now=load_all.timezone.now())
    assert link.user.username == "robin"


def test_books_without_any_keeper_get_one(db):
    makers.make_person("lee", role="helper")
    assert load_all.keeper_of_these().is_superuser
    assert get_user_model().objects.count() == 2


def test_every_fault_is_a_row_with_file_line_and_column_and_nothing_is_loaded(folder, capsys):
    changed(folder, "yards.csv", "shed,Shed", "shed,")
    changed(folder, "movements.csv", ",sound,10,", ",rotten,ten,")
    with pytest.raises(CommandError, match="4 faults: nothing was loaded"):
        call_command("load_all", str(folder))
    lines = capsys.readouterr().out.splitlines()
    assert lines[-5].split() == [
        "File",
        "Line",
        "Column",
        "What",
        "is",
        "wrong",
        "What",
        "would",
        "be",
        "right",
    ]
    assert any(re.match(r"movements\.csv +2 +condition +'rotten' is no word", line) for line in lines)
    assert any(re.match(r"movements\.csv +2 +quantity +'ten' is no whole number", line) for line in lines)
    assert not Yard.objects.exists()


def test_many_faults_are_shown_up_to_a_thousand_and_counted(folder, capsys):
    text = (folder / "yards.csv").read_text()
    (folder / "yards.csv").write_text(text + "x,y\n" * 1200)
    with pytest.raises(CommandError, match="1,200 faults"):
        call_command("load_all", str(folder), "--edited")
    assert "And 200 more." in capsys.readouterr().out


def test_edited_files_are_taken_where_the_keeper_says_so_and_each_is_named(folder, capsys):
    changed(folder, "yards.csv", "shed,Shed", "shed,Barn")
    changed(folder, "movements.csv", ",sound,10,", ",sound,12,")
    call_command("load_all", str(folder), "--edited")
    text = capsys.readouterr().out
    assert "yards.csv was changed" in text and "movements.csv was changed" in text
    assert "sealed anew" in text and "12 pieces" in text


def test_over_books_that_are_there_it_refuses(folder):
    makers.make_yard("mine")
    with pytest.raises(CommandError, match="empty installation only"):
        call_command("load_all", str(folder))


def test_a_folder_that_is_none_is_refused(db, tmp_path):
    with pytest.raises(CommandError, match=r"no manifest\.json"):
        call_command("load_all", str(tmp_path / "nowhere"))


@pytest.mark.postgres
def test_from_sqlite_to_postgresql_and_back_the_files_are_the_same(books, tmp_path):
    url = os.environ.get("POSTGRES_URL")
    need(url, "a PostgreSQL server (its address in POSTGRES_URL)")
    with database(url) as there:
        manage(books.env, "export_all", tmp_path / "sqlite")
        postgres = {**books.env, "DATABASE_URL": there}
        assert "The books are right" in manage(postgres, "load_all", tmp_path / "sqlite")
        manage(postgres, "export_all", tmp_path / "postgres")
        fresh = {**books.env, "DATA_DIR": str(tmp_path / "fresh")}
        assert "The books are right" in manage(fresh, "load_all", tmp_path / "postgres")
        manage(fresh, "export_all", tmp_path / "back")
    first = files_of(tmp_path / "sqlite")
    assert len(first) > 50
    assert files_of(tmp_path / "postgres") == first
    assert files_of(tmp_path / "back") == first


def manage(env, *words):
    command = [sys.executable, str(MANAGE), *map(str, words)]
    done = subprocess.run(command, env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


@contextlib.contextmanager
def database(url):
    """The address of a new database on the server, dropped in the end."""
    psycopg = pytest.importorskip("psycopg")
    name = f"plain_{os.getpid()}"
    with psycopg.connect(url, autocommit=True) as server:
        server.execute(f"CREATE DATABASE {name}")
        try:
            yield urlunsplit(urlsplit(url)._replace(path=f"/{name}"))
        finally:
            server.execute(f"DROP DATABASE {name} WITH (FORCE)")

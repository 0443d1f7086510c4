"""The database backend on a file: writers have their turn, readers none, and every end of a transaction makes room."""

import sqlite3
import threading

import pytest
from django.conf import settings
from django.db import DatabaseError, connection, connections, transaction
from django.db.utils import ConnectionHandler, OperationalError

from apiary.sqlite.base import DatabaseWrapper
from apiary.sqlite.queue import HAS_LOCKS, Queue

pytestmark = pytest.mark.skipif(not HAS_LOCKS, reason="queues are kept on Linux only")
LOCKED = r"^database is locked$"


@pytest.fixture(autouse=True)
def files_of_our_own(django_db_blocker):
    with django_db_blocker.unblock():
        yield


@pytest.fixture
def base(tmp_path, monkeypatch):
    """Connections to one file with a table; `base()` opens one more."""
    path, opened = tmp_path / "bees.sqlite3", []
    options = {"transaction_mode": "IMMEDIATE", "timeout": 0.05, "init_command": "PRAGMA journal_mode=WAL;"}

    def one(**changed):
        told = {"default": {"ENGINE": "apiary.sqlite", "NAME": path, "OPTIONS": {**options, **changed}}}
        handler = ConnectionHandler(told)
        opened.append(handler["default"])
        monkeypatch.setattr(transaction, "connections", _Named(opened))
        opened[-1].alias = len(opened) - 1
        return opened[-1]

    yield one
    for wrapper in opened:
        wrapper.close()


class _Named:
    """Connections by their number, as transaction.atomic asks for them by name."""

    def __init__(self, opened):
        self.opened = opened

    def __getitem__(self, number):
        return self.opened[number]


@pytest.fixture
def two(base):
    one, other = base(), base()
    run(one, "CREATE TABLE hive (tag TEXT UNIQUE)")
    return one, other


def run(wrapper, sql, values=()):
    with wrapper.cursor() as cursor:
        cursor.execute(sql, values)
        return cursor.fetchall() if sql.startswith("SELECT") else None


def is_taken(wrapper):
    """True where somebody is in, as a stranger sees it."""
    onlooker = Queue(f"{wrapper.settings_dict['NAME']}-queue")
    taken = not onlooker.enter(0.0)
    onlooker.close()
    return taken


def tags(wrapper):
    return [tag for (tag,) in run(wrapper, "SELECT tag FROM hive ORDER BY tag")]


def add(wrapper, tag):
    run(wrapper, "INSERT INTO hive VALUES (%s)", [tag])


def test_the_keepers_file_is_opened_by_it():
    if connection.vendor == "sqlite":
        assert isinstance(connections["default"], DatabaseWrapper)
        assert settings.DATABASES["default"]["ENGINE"] == "apiary.sqlite"


def test_a_transaction_has_its_turn_until_its_outermost_end(two):
    one, _ = two
    with transaction.atomic(using=one.alias):
        assert is_taken(one)
        with transaction.atomic(using=one.alias):
            add(one, "A1")
        assert is_taken(one)
    assert not is_taken(one)
    assert tags(one) == ["A1"]


def test_a_transaction_that_fails_makes_room(two):
    one, _ = two
    with pytest.raises(KeyError), transaction.atomic(using=one.alias):
        add(one, "A1")
        raise KeyError
    assert not is_taken(one)
    assert tags(one) == []


def test_a_savepoint_rolled_back_keeps_the_turn(two):
    one, _ = two
    with transaction.atomic(using=one.alias):
        with pytest.raises(KeyError), transaction.atomic(using=one.alias):
            raise KeyError
        assert is_taken(one)
    assert not is_taken(one)


def test_a_connection_closed_midway_makes_room(two):
    one, other = two
    with pytest.raises(DatabaseError), transaction.atomic(using=one.alias):
        add(one, "A1")
        one.close()
        assert not is_taken(other)
        add(one, "A2")
    assert tags(other) == []
    with transaction.atomic(using=one.alias):
        assert is_taken(other)
    assert not is_taken(other)


def test_reading_never_stands_in_line(two):
    one, other = two
    with transaction.atomic(using=one.alias):
        add(one, "A1")
        assert tags(other) == []
        other.transaction_mode = "DEFERRED"
        with transaction.atomic(using=other.alias):
            assert tags(other) == []
    assert tags(other) == ["A1"]


def test_a_second_writer_waits_and_then_writes(base, two):
    one, _ = two
    late, done = base(timeout=60), threading.Event()

    def write():
        late.inc_thread_sharing()
        try:
            with transaction.atomic(using=late.alias):
                add(late, "B1")
        finally:
            done.set()

    with transaction.atomic(using=one.alias):
        add(one, "A1")
        thread = threading.Thread(target=write)
        late.inc_thread_sharing()
        thread.start()
        assert not done.wait(0.05)
    thread.join(60)
    assert tags(one) == ["A1", "B1"]


def test_who_waits_too_long_is_told_as_by_sqlite(two):
    one, other = two
    with transaction.atomic(using=one.alias):
        with pytest.raises(OperationalError, match=LOCKED):
            transaction.atomic(using=other.alias).__enter__()
        with pytest.raises(OperationalError, match=LOCKED):
            add(other, "B1")
    add(other, "B1")
    assert tags(one) == ["B1"]


def test_a_stranger_who_knows_no_queue_is_waited_for_by_sqlite_and_room_is_made(two):
    one, other = two
    stranger = sqlite3.connect(one.settings_dict["NAME"], isolation_level=None)
    stranger.execute("BEGIN IMMEDIATE")
    with pytest.raises(OperationalError, match="locked"):
        transaction.atomic(using=one.alias).__enter__()
    assert not is_taken(other)
    stranger.execute("ROLLBACK")
    stranger.close()
    add(one, "A1")
    assert tags(other) == ["A1"]


@pytest.mark.parametrize("sql", ["INSERT INTO hive VALUES ('A1')", "  update hive SET tag = 'A2'"])
def test_a_single_writing_statement_has_its_turn_and_makes_room(two, sql):
    one, other = two
    with transaction.atomic(using=other.alias), pytest.raises(OperationalError, match=LOCKED):
        run(one, sql)
    run(one, sql)
    assert not is_taken(other)


def test_a_single_statement_that_fails_makes_room(two):
    one, other = two
    add(one, "A1")
    with pytest.raises(DatabaseError):
        add(one, "A1")
    assert not is_taken(other)
    with one.cursor() as cursor:
        cursor.executemany("INSERT INTO hive VALUES (%s)", [["A2"], ["A3"]])
    assert tags(other) == ["A1", "A2", "A3"]


def test_a_database_in_memory_has_no_queue():
    handler = ConnectionHandler({"default": {"ENGINE": "apiary.sqlite", "NAME": ":memory:"}})
    wrapper = handler["default"]
    run(wrapper, "CREATE TABLE hive (tag TEXT)")
    add(wrapper, "A1")
    assert wrapper.queue is None
    assert tags(wrapper) == ["A1"]

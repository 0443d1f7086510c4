"""The database backend: Django's for SQLite, with writers waiting in the order in which they came.

Takes the usual settings; the queue's file lies beside the database. A transaction that begins as a writer
(IMMEDIATE or EXCLUSIVE) stands in line before it begins and makes room when it ends; so does a single statement that
writes outside any. Reading never waits, and a database in memory has no queue. Who waits longer than `timeout` gets
SQLite's own "database is locked".
"""

from functools import partial

from django.db.backends.sqlite3 import base

from apiary.sqlite.queue import Queue

WRITES = ("INSERT", "UPDATE", "DELETE", "REPLACE")
USUAL_SECONDS = 5.0  # as SQLite waits where no timeout is told


class DatabaseWrapper(base.DatabaseWrapper):
    """One connection with its own place in the queue."""

    queue: Queue | None = None

    def connect(self):
        self._leave()
        if not self.is_in_memory_db():
            self.queue = Queue(f"{self.settings_dict['NAME']}-queue")
        super().connect()

    def create_cursor(self, name=None):
        return self.connection.cursor(factory=partial(QueuedCursor, line=self))

    def enter(self):
        """Waits for the turn to write. True where it was not one's turn already."""
        if self.queue is None or self.queue.is_in:
            return False
        if not self.queue.enter(self.settings_dict["OPTIONS"].get("timeout", USUAL_SECONDS)):
            raise self.Database.OperationalError("database is locked")
        return True

    def leave(self):
        if self.queue is not None:
            self.queue.leave()

    def _leave(self):
        if self.queue is not None:
            self.queue.close()
            self.queue = None

    # The stubs of Django leave out the methods below; each is called by its own atomic, commit, rollback and close.

    def _start_transaction_under_autocommit(self):
        mode = getattr(self, "transaction_mode", None)
        if mode not in ("IMMEDIATE", "EXCLUSIVE"):
            super()._start_transaction_under_autocommit()  # type: ignore[misc]
            return
        with self.wrap_database_errors:
            self.enter()
        try:
            super()._start_transaction_under_autocommit()  # type: ignore[misc]
        except BaseException:
            self.leave()
            raise

    def _commit(self):
        super()._commit()  # type: ignore[misc]
        self.leave()

    def _rollback(self):
        try:
            super()._rollback()  # type: ignore[misc]
        finally:
            self.leave()

    def _close(self):
        try:
            super()._close()  # type: ignore[misc]
        finally:
            self._leave()


class QueuedCursor(base.SQLiteCursorWrapper):
    """A cursor whose single writing statements stand in line; within a transaction it is one's turn already."""

    def __init__(self, connection, *, line):
        super().__init__(connection)
        self.line = line

    def execute(self, query, params=None):
        return self._in_turn(super().execute, query, params)

    def executemany(self, query, param_list):
        return self._in_turn(super().executemany, query, param_list)

    def _in_turn(self, carry_out, query, values):
        alone = not self.connection.in_transaction and query.lstrip()[:7].upper().startswith(WRITES)
        came = alone and self.line.enter()
        try:
            return carry_out(query, values)
        finally:
            if came:
                self.line.leave()

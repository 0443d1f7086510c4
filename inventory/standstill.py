"""The books as they stand at one moment, however many questions are asked of them meanwhile.

A block reads them without holding up who writes. Inside a transaction that has begun, that one is used.
"""

from contextlib import contextmanager

from django.db import connection, transaction


@contextmanager
def standing_still():
    """One view of the whole database until the block ends. Nothing may be written in it."""
    if connection.in_atomic_block:
        yield
        return
    usual = getattr(connection, "transaction_mode", None)
    if connection.vendor == "sqlite":
        # IMMEDIATE would be the writers' lock
        connection.transaction_mode = "DEFERRED"  # type: ignore[attr-defined]
    try:
        with transaction.atomic():
            if connection.vendor == "postgresql":
                with connection.cursor() as cursor:
                    cursor.execute("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY")
            yield
    finally:
        if connection.vendor == "sqlite":
            connection.transaction_mode = usual  # type: ignore[attr-defined]

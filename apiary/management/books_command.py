"""The base of every command that reads or writes the books: their tables are brought up to date before it runs.

Takes nothing; makes the tables of an empty database and changes those of an older one. Loads no rows.
"""

from django.core.management import call_command
from django.core.management.base import BaseCommand
from django.db import connection
from django.db.migrations.executor import MigrationExecutor


class BooksCommand(BaseCommand):
    def execute(self, *args, **options):
        bring_up_to_date()
        return super().execute(*args, **options)


def bring_up_to_date():
    """Runs the migrations that wait, where any do; tells whether there were some."""
    executor = MigrationExecutor(connection)
    waiting = bool(executor.migration_plan(executor.loader.graph.leaf_nodes()))
    if waiting:
        call_command("migrate", interactive=False, verbosity=0)
    return waiting

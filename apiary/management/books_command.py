"""The base of every command that reads or writes the books: their tables are brought up to date before it runs.

Takes nothing; makes the tables of an empty database and changes those of an older one. Loads no rows.
Tells too where the books are newer than the program that reads them.
"""

from django.apps import apps
from django.core.management import call_command
from django.db import connection
from django.db.migrations.executor import MigrationExecutor
from django.db.migrations.loader import MigrationLoader
from django.db.migrations.recorder import MigrationRecorder

from apiary.management.plain_command import PlainCommand


class BooksCommand(PlainCommand):
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


def changes_known():
    """The changes of tables this program has on disk, as (app, name)."""
    return frozenset(MigrationLoader(connection).disk_migrations)


def are_newer_than(known):
    """True where the books have gone through a change of this program's tables that is not among the known ones."""
    labels = {config.label for config in apps.get_app_configs()}
    applied = MigrationRecorder(connection).applied_migrations()
    return any(change not in known and change[0] in labels for change in applied)

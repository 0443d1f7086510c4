"""An installation with nothing in it, within one test: every row of every table of ours gone, people too.

And the files of a folder as bytes, to hold two exports side by side.
"""

from pathlib import Path

from django.apps import apps
from django.db import connection

from planner.plain_data.tables import OURS, PEOPLE


def empty():
    """As after `migrate` alone."""
    models = [
        model
        for model in apps.get_models(include_auto_created=True)
        if model._meta.app_label in OURS or model._meta.label == PEOPLE
    ]
    with connection.cursor() as cursor:
        for model in models:
            cursor.execute(f"DELETE FROM {connection.ops.quote_name(model._meta.db_table)}")
        if connection.vendor == "postgresql":
            cursor.execute("SET CONSTRAINTS ALL IMMEDIATE")
            cursor.execute("SET CONSTRAINTS ALL DEFERRED")


def files_of(folder):
    """{name: bytes} of all files in it."""
    folder = Path(folder)
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def changed(folder, name, old, new):
    """Puts other text into a file, once."""
    path = Path(folder) / name
    text = path.read_bytes().decode()
    assert old in text, (old, text[:500])
    path.write_bytes(text.replace(old, new, 1).encode())

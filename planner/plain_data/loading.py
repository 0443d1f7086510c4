"""Puts plain data back into an empty installation: every row as it was, in one transaction, proven before it counts.

Takes the folder; gives Loaded. The only writer beside the packages' own that fills their tables, and only where
nothing is: rows keep their ids, since the chains of digests cover them. Passwords and links are not in the files.
"""

from dataclasses import dataclass
from pathlib import Path

from django.apps import apps
from django.contrib.auth import get_user_model
from django.contrib.auth.hashers import make_password
from django.core.management.color import no_style
from django.db import DataError, IntegrityError, connection, transaction

from apiary.models import Access
from inventory.ledger.posting import lock_books
from inventory.ledger.sealing import seal_again, work_out_evenings
from inventory.models import BookSeal
from inventory.proof import prove
from planner.plain_data.checking import file_faults, row_faults
from planner.plain_data.errors import BooksThere, DatabaseRefuses, NotProven, StillNotProven
from planner.plain_data.faults import MISSING, FaultsFound
from planner.plain_data.manifest import read_manifest
from planner.plain_data.reading import rows_of
from planner.plain_data.resealing import balance_anew, seal_anew
from planner.plain_data.tables import PEOPLE, all_tables

BATCH = 2000
SHIPPED = (  # what a fresh installation has before anybody was let in
    "apiary.HiveSet",
    "inventory.GearSetLine",
    "inventory.GearSet",
    "inventory.RecipeLine",
    "inventory.Recipe",
    "inventory.Part",
)
FILLED = {"auth.User.password": lambda: make_password(None)}
TOLD = 20  # faults of the proof that a sentence names


@dataclass(frozen=True, kw_only=True)
class Loaded:
    """How many rows of each file; which files were not as written; whether the chains had to be made anew."""

    rows: dict[str, int]
    changed: tuple[str, ...]
    sealed_anew: bool
    line: str


def load(folder, *, edited=False):
    """All of the folder or nothing; with `edited` files that were changed since are taken as they stand."""
    folder = Path(folder).absolute()
    manifest = read_manifest(folder)
    refuse_books()
    faults, changed = file_faults(folder, manifest, edited=edited)
    if not any(fault.what == MISSING for fault in faults):
        faults += row_faults(folder)
    if faults:
        raise FaultsFound(faults)
    with transaction.atomic():
        lock_books()
        refuse_books()
        _clear_shipped()
        rows = {table.file: _insert(folder, table) for table in all_tables()}
        _count_on()
        sealed_anew, line = _prove(bool(changed))
    return Loaded(rows=rows, changed=tuple(changed), sealed_anew=sealed_anew, line=line)


def refuse_books():
    """BooksThere where anything was written or anybody let in; the catalogue as shipped does not count."""
    there = []
    for table in all_tables():
        rows = table.model._base_manager.all()
        if table.label in SHIPPED:
            continue
        if table.label == BookSeal._meta.label:
            rows = rows.exclude(length=0, acts=0)
        if table.label == PEOPLE:
            rows = rows.exclude(password__startswith="!", access__isnull=True)
        if count := rows.count():
            there.append(f"{table.file.removesuffix('.csv').replace('-', ' ')}: {count:,}")
    if there:
        raise BooksThere(what=", ".join(there))


def _clear_shipped():
    """The catalogue, the seal of no acts, and keepers nobody has used the link of."""
    for label in SHIPPED:
        apps.get_model(label)._base_manager.all().delete()
    BookSeal.objects.all().delete()
    get_user_model().objects.exclude(pk__in=Access.objects.values("user")).delete()


def _insert(folder, table):
    """Writes the rows of one file as they are: no default, no stamp of today, no check but the database's own."""
    fields = (*table.columns, *table.left)
    quote = connection.ops.quote_name
    columns = ", ".join(quote(field.column) for field in fields)
    sql = f"INSERT INTO {quote(table.model._meta.db_table)} ({columns}) VALUES ({', '.join(['%s'] * len(fields))})"
    fillers = [FILLED.get(f"{table.label}.{field.name}", field.get_default) for field in table.left]
    count, batch = 0, []
    with connection.cursor() as cursor:
        for _line, values in rows_of(folder, table, tell=_changed_meanwhile):
            values += [fill() for fill in fillers]
            batch.append(
                [
                    field.get_db_prep_save(value, connection)
                    for field, value in zip(fields, values, strict=True)
                ]
            )
            count += 1
            if len(batch) == BATCH:
                _put(cursor, sql, batch, table)
                batch = []
        _put(cursor, sql, batch, table)
    return count


def _put(cursor, sql, batch, table):
    try:
        if batch:
            cursor.executemany(sql, batch)
    except (IntegrityError, DataError) as error:
        why = " ".join(str(error).split())
        raise DatabaseRefuses(file=table.file, why=why) from error


def _changed_meanwhile(fault):
    raise FaultsFound([fault])


def _count_on():
    """The next number of each table comes after those loaded."""
    models = [table.model for table in all_tables()]
    with connection.cursor() as cursor:
        for sql in connection.ops.sequence_reset_sql(no_style(), models):
            cursor.execute(sql)


def _prove(changed):
    """(whether the chains were made anew, the line of the proof); refuses books that are not right."""
    _sign()
    proof = prove()
    if not proof.faults:
        return False, proof.line
    if not changed:
        raise NotProven(faults=_some(proof.faults))
    balance_anew()
    seal_anew()
    _sign()
    proof = prove()
    if proof.faults:
        raise StillNotProven(faults=_some(proof.faults))
    return True, proof.line


def _sign():
    if BookSeal.objects.exists():
        seal_again()
    work_out_evenings()


def _some(faults):
    rest = len(faults) - TOLD
    return " ".join((*faults[:TOLD], *([f"And {rest} more."] if rest > 0 else [])))

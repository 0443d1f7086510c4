"""Checks the files of a folder against the manifest, the tables' rules and each other, before anything is loaded.

Takes the folder and its Manifest; gives every fault there is. Reads each file once from first row to last; keeps ids
and what must be there once, never the rows.
"""

from django.db import models

from planner.plain_data import dictionary
from planner.plain_data.conditions import NotPlain, judge_of
from planner.plain_data.faults import MISSING, PUT_BACK, Fault
from planner.plain_data.manifest import sha256_of
from planner.plain_data.reading import rows_of
from planner.plain_data.tables import all_tables, pointed_to

EDITED = f"{PUT_BACK}; where you changed it and mean it, say --edited"


def file_faults(folder, manifest, *, edited):
    """(faults, names of files that are not as they were written). A missing file is always a fault."""
    faults, changed = [], []
    tables = {table.file for table in all_tables()}
    for name in sorted(tables - set(manifest.files)):
        faults.append(Fault(file=name, what="the manifest does not name it", remedy="export the books again"))
    for name, written in sorted(manifest.files.items()):
        try:
            same = sha256_of(folder / name) == written.sha256
        except OSError:
            if name != dictionary.NAME:
                faults.append(Fault(file=name, what=MISSING, remedy=PUT_BACK))
            continue
        if not same:
            changed.append(name)
            if not edited:
                what = "the file is not as it was written (SHA-256 differs)"
                faults.append(Fault(file=name, what=what, remedy=EDITED))
    return faults, changed


def row_faults(folder):
    """Every fault of every row, file by file, then what points to rows that are not there."""
    faults: list[Fault] = []
    checks = [TableCheck(table, faults.append) for table in all_tables()]
    for check in checks:
        check.read(folder)
    ids = {check.table.label: check.ids for check in checks}
    for check in checks:
        check.lost(folder, ids)
    return faults


class TableCheck:
    """One table's rows: what may be there once, what each row must keep to, what it points to."""

    def __init__(self, table, tell):
        self.table, self.tell = table, tell
        self.ids: set[int] = set()
        self.at = {column.name: at for at, column in enumerate(table.columns)}
        self.at |= {column.attname: at for at, column in enumerate(table.columns)} | {"pk": 0}
        self.pointing = {
            at: target for at, column in enumerate(table.columns) if (target := pointed_to(column))
        }
        self.pointed: dict[int, set] = {at: set() for at in self.pointing}
        self.once = list(self._uniques())
        self.seen: list[dict] = [{} for _ in self.once]
        self.rules = list(self._rules())

    def read(self, folder):
        for line, row in rows_of(folder, self.table, tell=self.tell):
            self.ids.add(row[0])
            for at, targets in self.pointed.items():
                targets.add(row[at])
            self._keep_once(line, row)
            for words, holds in self.rules:
                if holds(row) is False:
                    what = f"this row breaks the rule {words}"
                    self.tell(Fault(file=self.table.file, line=line, what=what, remedy="put its cells right"))

    def lost(self, folder, ids):
        """Cells that point to no row: the file is read once more only where there are any."""
        missing = {}
        for at, target in self.pointing.items():
            gone = self.pointed[at] - ids[target.label] - {None}
            if gone:
                missing[at] = gone
        if not missing:
            return
        for line, row in rows_of(folder, self.table, tell=lambda _: None):
            for at, gone in missing.items():
                if row[at] in gone:
                    self._lost_at(line, at, row[at])

    def _lost_at(self, line, at, value):
        target = self.pointing[at].file
        self.tell(
            Fault(
                file=self.table.file,
                line=line,
                column=self.table.headings[at],
                what=f"{target} has no row {value}",
                remedy=f"name an id that stands in {target}",
            )
        )

    def _uniques(self):
        """(places, names, condition) of what may be there once."""
        meta = self.table.model._meta
        for column in self.table.columns:
            if column.unique:
                yield (self.at[column.name],), column.name, None
        for names in meta.unique_together:
            yield tuple(self.at[name] for name in names), ", ".join(names), None
        for constraint in meta.constraints:
            if isinstance(constraint, models.UniqueConstraint) and constraint.fields:
                condition = constraint.condition and self._test(constraint.condition)
                places = tuple(self.at[name] for name in constraint.fields)
                yield places, ", ".join(constraint.fields), condition

    def _rules(self):
        for constraint in self.table.model._meta.constraints:
            if isinstance(constraint, models.CheckConstraint) and (holds := self._test(constraint.condition)):
                yield constraint.name.replace("_", " "), holds

    def _test(self, condition):
        """Left to the database where plain values do not tell."""
        try:
            return judge_of(condition, self.at)
        except NotPlain:
            return None

    def _keep_once(self, line, row):
        for (places, names, condition), seen in zip(self.once, self.seen, strict=True):
            if condition is not None and condition(row) is not True:
                continue
            key = row[places[0]] if len(places) == 1 else tuple(row[at] for at in places)
            if key is None or (len(places) > 1 and None in key):
                continue
            first = seen.setdefault(key, line)
            if first != line:
                self.tell(
                    Fault(
                        file=self.table.file,
                        line=line,
                        column=names,
                        what=f"the same stands in line {first}",
                        remedy="there may be one only: change or remove one of the two",
                    )
                )

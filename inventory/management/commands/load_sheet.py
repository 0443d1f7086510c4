"""manage.py load_sheet: a keeper's workbook into the books, tried first where asked, every fault as a table row."""

import datetime as dt
from pathlib import Path

from django.core.management.base import CommandError
from django.utils import timezone

from apiary.errors import Refused
from apiary.management.books_command import BooksCommand
from inventory import loading
from inventory.loading.changes import NEW


class Command(BooksCommand):
    help = (
        "Brings your workbook (yards, flows, colonies, gear by place, suppliers, prices) into the books. "
        "Either all of it is posted or nothing, and the same file posts once. "
        "Begin with --template my-gear.xlsx, fill that in, try it with --dry-run, then load it."
    )

    def add_arguments(self, parser):
        parser.add_argument("file", nargs="?", metavar="FILE", help="the workbook, filled in (.xlsx)")
        parser.add_argument("--dry-run", action="store_true", help="only show what would be posted")
        parser.add_argument("--day", help="the day the sheet speaks of, as 2026-11-30 (today if left out)")
        parser.add_argument("--template", metavar="FILE", help="write an empty workbook to fill in, and stop")

    def handle(self, *args, file=None, dry_run=False, day=None, template=None, **options):
        if template:
            self._write_template(Path(template))
        elif file:
            self._load(self._content(Path(file)), day=_day_of(day), dry_run=dry_run)
        else:
            raise CommandError("Name the workbook to load, or --template FILE to get one to fill in.")

    def _write_template(self, path):
        content = loading.blank_workbook()
        try:
            with path.open("xb") as target:
                target.write(content)
        except FileExistsError:
            raise CommandError(f"{path} is there already and may be filled in: name another file.") from None
        except OSError as error:
            raise CommandError(f"{path} cannot be written: {error.strerror}.") from None
        self.stdout.write(f"{path} is ready to fill in. Its first sheet says how.")

    def _content(self, path):
        try:
            return path.read_bytes()
        except OSError as error:
            raise CommandError(f"{path} cannot be read: {error.strerror}.") from None

    def _load(self, content, *, day, dry_run):
        reading, digest = loading.read(content, day=day), loading.digest_of(content)
        for note in reading.notes:
            self.stdout.write(f"Note: {note}")
        if reading.faults:
            heads = ("Sheet", "Cell", "What is wrong", "What would be right")
            rows = [
                (fault.sheet or "the file", fault.cell, fault.what, fault.remedy) for fault in reading.faults
            ]
            self.stdout.write(_table(heads, rows))
            raise CommandError(f"{_counted(len(rows), 'fault')}: nothing was posted.")
        try:
            done = (loading.dry_run if dry_run else loading.load)(
                reading.sheet, day=day, who=None, digest=digest
            )
        except Refused as refusal:
            raise CommandError(f"Nothing was posted. {refusal}") from None
        self._tell(done)

    def _tell(self, done):
        if done.refusals:
            raise CommandError("Nothing was posted. " + " ".join(done.refusals))
        if done.counts:
            self.stdout.write(_table(("", "New", "Changed", "As it is"), done.counts))
        for change in done.differences:
            if change.becomes != NEW:
                self.stdout.write(f"{change.name}: {change.becomes}, {change.detail}")
        self.stdout.write(done.sentence)


def _day_of(text):
    if text is None:
        return timezone.localdate()
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise CommandError(f"{text!r} is not a day: write it as 2026-11-30.") from None


def _counted(count, noun):
    return f"{count} {noun}" + ("" if count == 1 else "s")


def _table(heads, rows):
    """Columns as wide as their widest word, two spaces apart; figures to the right."""
    cells = [[str(cell) for cell in row] for row in (heads, *rows)]
    widths = [max(len(row[at]) for row in cells) for at in range(len(heads))]
    figures = [at > 0 and all(isinstance(row[at], int) for row in rows) for at in range(len(heads))]
    lines = [
        "  ".join(
            cell.rjust(width) if figure else cell.ljust(width)
            for cell, width, figure in zip(row, widths, figures, strict=True)
        ).rstrip()
        for row in cells
    ]
    return "\n".join(lines)

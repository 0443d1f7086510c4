"""manage.py load_sheet: a keeper's workbook into the books, tried first where asked, every fault as a table row."""

import datetime as dt
from pathlib import Path

from django.core.management.base import CommandError
from django.db import transaction
from django.utils import timezone

from apiary.errors import Refused
from apiary.management.books_command import BooksCommand
from apiary.management.in_columns import in_columns
from apiary.models import Yard
from inventory import counting, loading
from inventory.models import Count
from inventory.sheets.kinds import BY_CODE, KINDS
from inventory.views.explaining import sentences_of


class Command(BooksCommand):
    help = (
        "Brings your workbook into the books: yards and colonies, gear by place, price lists, past winters, counts, "
        "all in one file or one matter alone. Either all of it is posted or nothing, and the same file posts once. "
        "Begin with --template my-gear.xlsx, fill that in, try it with --dry-run, then load it. "
        "What was counted becomes drafts; --correct corrects the book by them at once."
    )

    def add_arguments(self, parser):
        parser.add_argument("file", nargs="?", metavar="FILE", help="the workbook, filled in (.xlsx)")
        parser.add_argument("--dry-run", action="store_true", help="only show what would be posted")
        parser.add_argument("--day", help="the day the sheet speaks of, as 2026-11-30 (today if left out)")
        parser.add_argument(
            "--as-tried", metavar="MARK", help="load only what the dry run with this mark showed"
        )
        parser.add_argument("--correct", action="store_true", help="post the drafts of counts too")
        parser.add_argument("--template", metavar="FILE", help="write a workbook to fill in, and stop")
        kinds = "; ".join(f"{kind.code}: {kind.name.lower()}" for kind in KINDS)
        parser.add_argument("--kind", choices=BY_CODE, default="everything", help=f"which one ({kinds})")
        parser.add_argument(
            "--place", action="append", metavar="CODE", help="count sheet: only this yard or shed"
        )
        parser.add_argument("--blind", action="store_true", help="count sheet: without what the book has")
        parser.add_argument("--hives", action="store_true", help="count sheet: with the boxes on colonies")

    def handle(self, *args, file=None, day=None, template=None, **options):
        if template:
            self._write_template(Path(template), day=_day_of(day), **options)
        elif file:
            self._load(self._content(Path(file)), day=_day_of(day), **options)
        else:
            raise CommandError("Name the workbook to load, or --template FILE to get one to fill in.")

    def _write_template(self, path, *, kind, place, blind, hives, day, **options):
        yards = None if place is None else [_yard_of(code) for code in place]
        content = loading.workbook_of(kind, day=day, yards=yards, blind=blind, with_colonies=hives)
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

    def _load(self, content, *, day, dry_run, as_tried, correct, **options):
        reading, asked = loading.read(content, day=day), {"day": day, "who": None}
        for note in reading.notes:
            self.stdout.write(f"Note: {note}")
        if reading.faults:
            heads = ("Sheet", "Cell", "What is wrong", "What would be right")
            rows = [(one.sheet or "the file", one.cell, one.what, one.remedy) for one in reading.faults]
            self.stdout.write(in_columns(heads, rows))
            raise CommandError(f"{_counted(len(rows), 'fault')}: nothing was posted.")
        asked["digest"] = loading.digest_of(content)
        try:
            if dry_run:
                done = loading.dry_run(reading.sheet, **asked)
            else:
                done = self._posted(reading.sheet, correct=correct, shown=as_tried, **asked)
        except Refused as refusal:
            raise CommandError(f"Nothing was posted. {refusal}") from None
        self._tell(done)
        if dry_run and not done.first_on:
            self.stdout.write(f"To post exactly this: --as-tried {done.mark}")

    def _posted(self, sheet, *, correct, **asked):
        """All of it or nothing, the corrections of counts too."""
        with transaction.atomic():
            done = loading.load(sheet, **asked)
            for draft in done.drafts if correct else ():
                counting.post_count(Count.objects.get(pk=draft.count), who=None)
        return done

    def _tell(self, done):
        if done.refusals:
            raise CommandError("Nothing was posted. " + " ".join(done.refusals))
        if done.counts:
            self.stdout.write(in_columns(("", "New", "Changed", "As it is"), done.counts))
        for change in done.changes:
            words = ", ".join(filter(None, (change.becomes, change.detail)))
            self.stdout.write(f"{change.where or 'not on the sheet'}: {change.name}: {words}")
        for draft in done.drafts:
            self._tell_draft(draft)
        self.stdout.write(done.sentence)

    def _tell_draft(self, draft):
        self.stdout.write(f"{draft.place}, {draft.day}: {draft.words}")
        for row in draft.differing:
            told = f"booked {row.difference.booked}, counted {row.difference.counted}"
            self.stdout.write(f"  {row.location}: {row.name}: {told}, {row.words}")
        for sentence in sentences_of(draft.explanations):
            self.stdout.write(f"  perhaps: {sentence}")


def _yard_of(code):
    yard = Yard.objects.filter(code=code).first()
    if yard is None:
        codes = ", ".join(Yard.objects.values_list("code", flat=True)) or "none yet"
        raise CommandError(f"There is no place {code!r}. The books have: {codes}.")
    return yard


def _day_of(text):
    if text is None:
        return timezone.localdate()
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise CommandError(f"{text!r} is not a day: write it as 2026-11-30.") from None


def _counted(count, noun):
    return f"{count} {noun}" + ("" if count == 1 else "s")

"""manage.py export_all DIR: all of the books as plain files that any program reads, with a dictionary and a manifest."""

from django.core.management.base import CommandError

from apiary.errors import Refused
from apiary.management.books_command import BooksCommand
from inventory.proof import prove
from planner.plain_data.writing import export


class Command(BooksCommand):
    help = (
        "Writes everything in the books into a folder as plain CSV files, one for each table, with dictionary.csv "
        "(what each column means) and manifest.json (how many rows, a SHA-256 of each file). Of people only names "
        "and roles go out, no password and no link. The folder must be empty or not there yet. "
        "load_all brings it back into an empty installation."
    )

    def add_arguments(self, parser):
        parser.add_argument("folder", metavar="DIR", help="the folder to write into, empty or not there yet")

    def handle(self, *args, folder, **options):
        try:
            files = export(folder)
        except Refused as refusal:
            raise CommandError(str(refusal)) from None
        rows = sum(one.rows or 0 for one in files.values())
        self.stdout.write(
            f"{folder}: {rows:,} rows in {len(files)} files. dictionary.csv says what they mean."
        )
        self.stdout.write(
            "Names, addresses and prices stand in them: keep the folder as you keep your books."
        )
        faults = prove().faults
        for fault in faults:
            self.stdout.write(f"Not right in these books: {fault}")
        if faults:
            self.stdout.write("All of it was written, but load_all refuses such books: look into this first.")

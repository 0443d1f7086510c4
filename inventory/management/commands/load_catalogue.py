"""manage.py load_catalogue: brings the catalogue of gear as sold into the database; run again, it changes nothing."""

from apiary.management.books_command import BooksCommand
from inventory.catalogue import ensure_catalogue


class Command(BooksCommand):
    help = "Bring the catalogue (parts, recipes, gear sets, hive sets) into the database. Safe to run again."

    def handle(self, *args, **options):
        ensure_catalogue()
        if options["verbosity"]:
            self.stdout.write("The catalogue is in place.")

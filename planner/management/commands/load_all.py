"""manage.py load_all DIR: what export_all wrote, back into an empty installation, proven, with a link for the keeper."""

from django.contrib.auth import get_user_model
from django.core.management.base import CommandError
from django.utils import timezone

from apiary import people
from apiary.errors import Refused
from apiary.management.books_command import BooksCommand
from apiary.management.in_columns import in_columns
from apiary.models import Access
from planner.plain_data.faults import FaultsFound
from planner.plain_data.loading import load

MANY = 1000  # faults shown one by one


class Command(BooksCommand):
    help = (
        "Brings the files that export_all wrote back into an empty installation: all of them or nothing. Every file "
        "is held against its SHA-256 and every cell is checked; each fault is shown with file, line and column. "
        "Then the books are proven as by check_books, and a sign-in link for the keeper is printed; the others get "
        "theirs from the keeper."
    )

    def add_arguments(self, parser):
        parser.add_argument("folder", metavar="DIR", help="the folder that export_all wrote")
        parser.add_argument(
            "--edited",
            action="store_true",
            help="take files that were changed since as they stand; the chain of the books is then sealed anew",
        )
        parser.add_argument("--at", default="http://127.0.0.1:8000", help="Where the site is served.")

    def handle(self, *args, folder, edited, at, **options):
        try:
            done = load(folder, edited=edited)
        except FaultsFound as found:
            self._tell_faults(found.faults)
        except Refused as refusal:
            raise CommandError(str(refusal)) from None
        for name in done.changed:
            self.stdout.write(f"Note: {name} was changed since it was written and was taken as it stands.")
        if done.sealed_anew:
            self.stdout.write(
                "Note: the books were sealed anew: a line of check_books noted before fits no more."
            )
        self.stdout.write(f"{sum(done.rows.values()):,} rows of {len(done.rows)} tables are loaded.")
        self.stdout.write(done.line)
        token = people.make_link(keeper_of_these(), now=timezone.now())
        self.stdout.write("Nobody has a password here yet.")
        self.stdout.write(f"Sign in: {at.rstrip('/')}{people.path_of(token)}")

    def _tell_faults(self, faults):
        heads = ("File", "Line", "Column", "What is wrong", "What would be right")
        self.stdout.write(in_columns(heads, [fault.row for fault in faults[:MANY]]))
        if len(faults) > MANY:
            self.stdout.write(f"And {len(faults) - MANY:,} more.")
        count = f"{len(faults):,} {'fault' if len(faults) == 1 else 'faults'}"
        raise CommandError(f"{count}: nothing was loaded.")


def keeper_of_these():
    """Who gets the first link: whoever set the house up, else a keeper of theirs, else one made for it."""
    User = get_user_model()
    keepers = User.objects.filter(is_active=True).order_by("pk")
    named = keepers.filter(access__role=Access.Role.KEEPER, access__ended_at=None)
    return keepers.filter(is_superuser=True).first() or named.first() or people.first_keeper()

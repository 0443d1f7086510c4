"""manage.py sign_in_link NAME: a one-time link for someone who has forgotten the password."""

from django.contrib.auth import get_user_model
from django.core.management.base import CommandError
from django.utils import timezone

from apiary import people
from apiary.management.books_command import BooksCommand


class Command(BooksCommand):
    help = "Print a link that lets one person in once, to set a new password. Older links of theirs stop working."

    def add_arguments(self, parser):
        parser.add_argument("name", help="The name they sign in with.")
        parser.add_argument("--at", default="http://127.0.0.1:8000", help="Where the site is served.")

    def handle(self, *args, name, at, **options):
        person = get_user_model().objects.filter(username=name, is_active=True).first()
        if person is None:
            raise CommandError(f"Nobody here signs in as {name!r}: look the name up under More, or in admin.")
        token = people.make_link(person, now=timezone.now(), renew=True)
        self.stdout.write(f"Sign in: {at.rstrip('/')}{people.path_of(token)}")

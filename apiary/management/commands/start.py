"""manage.py start: everything a keeper needs in one command; the first time it prints the link that lets them in."""

from django.core.management.base import CommandError
from django.utils import timezone

from apiary import people, serving
from apiary.management.plain_command import PlainCommand


class Command(PlainCommand):
    help = (
        "Start the planner: bring the books up to date, serve the pages and work out orders, until Ctrl-C. "
        "The first time, one line starting 'Sign in:' gives a link that works once: open it and choose "
        "your name and password."
    )

    def add_arguments(self, parser):
        parser.add_argument(
            "--host",
            default="127.0.0.1",
            help="Address to serve at (default 127.0.0.1: this machine only; 0.0.0.0: the whole house).",
        )
        parser.add_argument("--port", type=int, default=8000, help="Port to serve at (default 8000).")

    def handle(self, *args, host, port, **options):
        try:
            door = serving.open_port(host, port)
        except serving.PortNotOpen as why:
            raise CommandError(str(why)) from why
        serving.prepare()
        address = serving.address_of(door)
        if people.someone_can_sign_in():
            self.stdout.write(f"Serving at {address}/ until Ctrl-C.")
        else:
            token = people.make_link(people.first_keeper(), now=timezone.now())
            self.stdout.write(f"Sign in: {address}{people.path_of(token)}")
        self.stdout.flush()
        serving.serve(door)
        self.stdout.write("Stopped.")

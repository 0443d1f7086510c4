"""`bench`: measures how fast the books and the planning are and how good the plans; one line of JSON a figure.

Takes --quick and --only; prints figures with their targets. Needs no database and changes nothing. Exit 0 whatever
they say.
"""

import argparse
import json

from django.conf import settings

from apiary.bench.measuring import Stopwatch
from apiary.management.plain_command import PlainCommand
from inventory.bench import rows as of_books
from planner.bench import rows as of_plans
from planner.bench.runner import Runner
from planner.bench.scales import FULL, QUICK

HELP = """Measure how fast the books and the planning are on this machine and how good its orders are.

It fills books of an invented outfit, of a thousand movements and of a million, and asks and writes in both.

It invents beekeepers of several sizes (6 yards and 90 colonies up to 40 yards and 1,000), plans their winter orders in
several ways and compares: against a plain way of writing the same problem, from few yards to many, from few ways the
year may go to many, against rules of thumb. Your own books are not read and nothing is changed. Let the machine do
nothing else meanwhile.

Each figure is printed as soon as it is found, one a line, with what it should reach and whether it does:
{"bench": ..., "figure": ..., "value": ..., "unit": ..., "target": ">= 8", "ok": true}
What is slow is stopped once it took enough to tell, and then says "at least" or "over". What could not be measured is
left out and said on the error output."""

END = """The whole takes about three quarters of an hour on two cores; --quick leaves out all that takes over a minute and
ends within five minutes. It always ends with 0."""

ROWS = {**of_books.ROWS, **of_plans.ROWS}
SCALES = {"full": FULL, "quick": QUICK}


class Command(PlainCommand):
    help = HELP
    requires_system_checks = []

    def create_parser(self, *args, **kwargs):
        kwargs.update(epilog=END, formatter_class=argparse.RawDescriptionHelpFormatter)
        return super().create_parser(*args, **kwargs)

    def add_arguments(self, parser):
        parser.add_argument(
            "--quick", action="store_true", help="only what takes under a minute, five minutes in all"
        )
        parser.add_argument(
            "--only",
            metavar="NAME",
            action="append",
            choices=sorted(ROWS),
            help="only this: " + ", ".join(ROWS),
        )

    def handle(self, *args, **options):
        scale = SCALES["quick" if options["quick"] else "full"]
        runner = Runner(
            scale=scale,
            catalogue=_fixture("catalogue.json"),
            market=_fixture("demo.json"),
            tell=self.stderr.write,
            stopwatch=Stopwatch(scale.total_seconds),
        )
        chosen = [row for name, row in ROWS.items() if not options["only"] or name in options["only"]]
        for number, row in enumerate(chosen):
            runner.begin_row(len(chosen) - number)
            for figure in row(runner):
                self.stdout.write(figure.as_line())
                self.stdout.flush()


def _fixture(name):
    return json.loads((settings.BASE_DIR / "fixtures" / name).read_text(encoding="utf-8"))

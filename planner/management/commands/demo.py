"""The invented demo from an empty database to a served site: sheet in, year lived, winter order out.

Loads fixtures/demo.json once; run again it serves what is there; over a keeper's own data it refuses.
"""

import datetime as dt
import json
from decimal import Decimal
from pathlib import Path

from django.conf import settings
from django.contrib.auth import get_user_model
from django.core.management.base import CommandError
from django.db import transaction
from django.utils import timezone

from apiary import people, serving
from apiary.management.plain_command import PlainCommand
from apiary.models import Colony, Keeper, Yard
from inventory import loading
from inventory.sheets.template import filled
from planner import queue, runs
from planner.demo import sheet, year
from planner.models import Run, Season
from planner.plan.json_form import report_from
from planner.plan.text import as_text
from planner.workbook import workbook_of

SEED = 41
WORKBOOK = Path("winter-order.xlsx")
BUDGET = Decimal(6000)
ORDER_MONTH_AND_DAY = (11, 15)
OPENED_DAYS_BEFORE = 259


class Command(PlainCommand):
    help = (
        "Shows the whole job on an invented keeper (8 yards, a shed, some 110 colonies, three invented suppliers): "
        "loads it into an empty database, works out the winter order, prints it with its gain over the rule of "
        "thumb, writes winter-order.xlsx, serves the site and prints a sign-in link that works once. "
        "Run again it serves what is there. It never touches books of your own."
    )

    def add_arguments(self, parser):
        parser.add_argument("--host", default="127.0.0.1", help="Where the site listens (127.0.0.1).")
        parser.add_argument("--port", type=int, default=8000, help="Its port (8000).")
        parser.add_argument(
            "--no-serve", action="store_true", help="Stop once the order is printed and written."
        )
        parser.add_argument("--scenarios", type=int, default=60, help="How many ways the year may go (60).")
        parser.add_argument("--trial", type=int, default=300, help="Fresh seasons it is tried on (300).")
        parser.add_argument("--seconds", type=int, default=180, help="The longest the solver may look (180).")

    def handle(self, *args, **options):
        door = None if options["no_serve"] else _opened(options["host"], options["port"])
        serving.prepare()
        _refuse_own_books()
        keeper = _demo_keeper()
        if not Yard.objects.exists():
            self.stdout.write("Loading the invented operation and its year …")
            _load(keeper, today=timezone.localdate())
        done = Run.objects.in_earnest().filter(status=Run.Status.DONE)
        run = done.first() or self._planned(keeper, options)
        report = report_from(run.report)
        self.stdout.write(as_text(report))
        WORKBOOK.write_bytes(workbook_of(report))
        self.stdout.write(f"Written: {WORKBOOK}")
        if door is not None:
            self._serve(keeper, door)

    def _planned(self, keeper, options):
        season = Season.objects.first()
        self.stdout.write(f"Working out the winter order in {options['scenarios']} ways the year may go …")
        asked = runs.ask(
            season,
            who=keeper,
            now=timezone.now(),
            **{name: options[name] for name in ("scenarios", "trial", "seconds")},
        )
        leased = queue.take("demo", timezone.now())
        if leased is None or leased.pk != asked.pk:
            raise CommandError("Another run is being worked just now: wait until it is done, then try again.")
        beat = queue.Beat(leased)
        run = runs.work(leased, progress=beat, cancelled=beat.cancelled)
        if not run.is_done:
            raise CommandError(f"The demo found no order: {run.message}")
        return run

    def _serve(self, keeper, door):
        token = people.make_link(keeper, now=timezone.now())
        self.stdout.write(f"Sign in: {serving.address_of(door)}{people.path_of(token)}")
        self.stdout.flush()
        serving.serve(door)
        self.stdout.write("Stopped.")


def _opened(host, port):
    """The port, taken before any long work, so that one in use is told at once."""
    try:
        return serving.open_port(host, port)
    except serving.PortNotOpen as why:
        raise CommandError(str(why)) from why


def _refuse_own_books():
    """The demo lives in a database of its own."""
    own = Keeper.objects.filter(invented=False).exists()
    if own or (not Keeper.objects.exists() and (Yard.objects.exists() or Colony.objects.exists())):
        raise CommandError(
            "These are a keeper's own books, and the demo would mix invented gear into them. "
            "Set DATA_DIR to another, empty folder to see the demo; `start` serves your own books."
        )


def _demo_keeper():
    keeper, made = get_user_model().objects.get_or_create(
        username="demo-keeper", defaults={"is_staff": True, "is_superuser": True}
    )
    if made:
        keeper.set_unusable_password()
        keeper.save(update_fields=["password"])
    return keeper


@transaction.atomic
def _load(keeper, *, today):
    """All of the demo or nothing: sheet, year, season."""
    order_day = order_day_before(today)
    opened_on = order_day - dt.timedelta(days=OPENED_DAYS_BEFORE)
    scenario = json.loads((settings.BASE_DIR / "fixtures" / "demo.json").read_text(encoding="utf-8"))
    file = filled(sheet.sheet_of(scenario, day=opened_on, order_day=order_day, seed=SEED))
    loading.load_file(file, day=opened_on, who=keeper)
    Keeper.objects.update(invented=True)
    year.live_through(who=keeper, opened_on=opened_on, seed=SEED)
    Season.objects.create(
        name=f"Winter order {order_day.year}", starts_on=order_day, budget_cents=int(BUDGET * 100)
    )


def order_day_before(today):
    """The latest day of the demo's order that is not in the future."""
    this_year = dt.date(today.year, *ORDER_MONTH_AND_DAY)
    return this_year if this_year <= today else this_year.replace(year=today.year - 1)

"""The measuring itself, in a process that has Django set up on books made to be measured.

Takes the name of a measure and its settings from the command line; prints what it found as JSON. Times are of the
clock, the quickest of a few tries or the median of many, with those of the processor beside them.
"""

import datetime as dt
import json
import resource
import secrets
import statistics
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

from django.contrib.auth import get_user_model
from django.core.management import call_command
from django.db import connection
from django.test import Client, override_settings
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from apiary.models import Yard
from inventory import ledger
from inventory.bench.filling import YEARS_DAYS, fill
from inventory.bench.sheets import there_and_back, timed
from inventory.bench.tasks import CODE, ROOT
from inventory.ledger import Line
from inventory.models import Act, Holding, Movement
from inventory.proof import prove
from inventory.stock import by_place

DAYS, TRIES = 24, 5
ACTS, LATE_DAYS = 150, 3
PEOPLE, ACTS_EACH = 8, 25
PLAIN_FILES = {"staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"}}


def fill_books(**size):
    call_command("migrate", verbosity=0)
    _, seconds, _ = timed(lambda: fill(last=timezone.localdate(), **size))
    return {"seconds": seconds, "holdings": Holding.objects.count()}


def stock_by_place():
    today = timezone.localdate()
    past = [today - dt.timedelta(days=1 + number * (YEARS_DAYS - 2) // (DAYS - 1)) for number in range(DAYS)]
    now, slowest = _quickest(by_place), max(_quickest(lambda day=day: by_place(as_of=day)) for day in past)
    return {
        "today": now[0],
        "today_cpu": now[1],
        "past": slowest[0],
        "past_cpu": slowest[1],
        "rows": len(by_place()),
    }


def yard_page():
    client = Client()
    client.force_login(get_user_model().objects.get())
    counts = []
    with override_settings(STORAGES=PLAIN_FILES):
        for yard in Yard.objects.all()[:12]:
            with CaptureQueriesContext(connection) as questions:
                page = client.get(reverse("yard", args=[yard.code]))
            assert page.status_code == 200, page.status_code
            counts.append(len(questions))
    return {"queries": max(counts)}


def posting():
    """The first few acts are left out: they open files and fill caches."""
    today = timezone.localdate()
    found: dict[str, float] = {}
    for name, day in (("today", today), ("late", today - dt.timedelta(days=LATE_DAYS))):
        spent = [timed(lambda n=n, day=day, name=name: _load(f"{name}-{n}", day))[1:] for n in range(ACTS)]
        clock, processor = zip(*spent[10:], strict=True)
        found |= {name: statistics.median(clock), f"{name}_cpu": statistics.median(processor)}
    return found


def writers():
    """Eight processes at once, then eight threads of one process, as the site's pages are."""
    acts, movements = Act.objects.count(), Movement.objects.count()
    apart, together = _processes(), _threads()
    came = Act.objects.count() - acts, Movement.objects.count() - movements
    told = len(apart) + len(together)
    return {
        "lost": abs(told - came[0]) + abs(4 * told - came[1]),
        "acts": came[0],
        "processes": {"longest": max(apart), "median": statistics.median(apart)},
        "threads": {"longest": max(together), "median": statistics.median(together)},
    }


def _processes():
    """Seconds of every act of people each in a process of their own; they begin together."""
    people = [_process(f"process-{number}") for number in range(PEOPLE)]
    for person in people:
        person.stdout.readline()  # it is ready
    for person in people:
        person.stdin.write("begin\n")
        person.stdin.flush()
    return [wait for person in people for wait in json.loads(person.communicate()[0])]


def _process(name):
    return subprocess.Popen(
        [sys.executable, "-c", CODE, "one_writer", json.dumps({"name": name})],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=ROOT,
    )


def _threads():
    def person(number):
        spent = _acts_of(f"thread-{number}")
        connection.close()
        return spent

    with ThreadPoolExecutor(PEOPLE) as pool:
        return [wait for spent in pool.map(person, range(PEOPLE)) for wait in spent]


def one_writer(name):
    """One of the eight: says that it is ready, waits for the others, gives the seconds of each of its acts."""
    Act.objects.count()
    print("ready", flush=True)
    sys.stdin.readline()
    return _acts_of(name)


def _acts_of(name):
    name = f"{name}-{secrets.token_hex(4)}"  # a measure may be asked for twice
    return [timed(lambda n=n: _load(f"{name}-{n}", timezone.localdate()))[1] for n in range(ACTS_EACH)]


def check_books():
    proof, seconds, processor = timed(prove)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return {"seconds": seconds, "cpu": processor, "megabytes": memory, "faults": len(proof.faults)}


def _load(key, day):
    """A load of four kinds from the shed to a yard and, the next time, back."""
    shed, yard = Yard.objects.get(is_shed=True), Yard.objects.filter(is_shed=False).first()
    codes = ("box-deep-10", "box-deep-10-flat", "box-medium-10", "box-medium-10-flat")
    return ledger.move(
        source=shed,
        target=yard,
        lines=[Line(code, 1) for code in codes],
        day=day,
        who=None,
        key=key,
        found_allowed=True,
    )


def _quickest(question):
    return min(timed(question)[1:] for _ in range(TRIES))


MEASURES = {
    measure.__name__: measure
    for measure in (
        fill_books,
        stock_by_place,
        yard_page,
        posting,
        writers,
        one_writer,
        check_books,
        there_and_back,
    )
}


def answer():
    """What the command line asks for, as one line of JSON."""
    name, settings = sys.argv[1:]
    print(json.dumps(MEASURES[name](**json.loads(settings))))

"""What people do at once on one set of books, played in a process of its own or in the test's.

`python -m tests.inventory.beside WHAT ...` plays it on the database of the environment and prints what came of it as
JSON. Each act is made of its key alone, so that the same acts can be told again in another order.
"""

import datetime as dt
import itertools
import json
import os
import random
import sys
from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

import django
from django.apps import apps

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "apiary.settings")
if not apps.ready:
    django.setup()

from django.core.management import call_command
from django.db import connection

from inventory import ledger, stock
from inventory.errors import Refused
from inventory.ledger import Line, evenings
from inventory.models import Act, Evening, Movement
from inventory.proof import prove
from tests import makers

PEOPLE, ACTS = 4, 12
PARTS = ("stand", "box-medium-10", "frame-medium")
LINES = 3  # of each act that is killed midway


def lay_out():
    """A shed and two yards with a little of each part."""
    evenings.STEP = 10
    makers.make_catalogue()
    grounds = [makers.make_shed(), makers.make_yard("creek"), makers.make_yard("hill")]
    lines = [Line(part, 15) for part in PARTS]
    for ground in grounds:
        key = f"open {ground.code}"
        ledger.open_stock(location=ground, lines=lines, day=makers.DAY, who=None, key=key)
    return grounds


def tell(key, grounds):
    """One act as its key has it: a load, a count, some scrapped; told late as often as not."""
    chance = random.Random(key)
    here, there = chance.sample(grounds, 2)
    lines = [Line(part, chance.randint(1, 9)) for part in chance.sample(PARTS, 2)]
    told = {"day": makers.DAY + dt.timedelta(days=chance.randint(0, 20)), "who": None, "key": key}
    kind = chance.choice(("move", "move", "found", "scrap", "count"))
    if kind == "scrap":
        return ledger.scrap(at=here, lines=lines, **told)
    if kind == "count":
        return ledger.correct(location=here, counted=lines, **told)
    return ledger.move(source=here, target=there, lines=lines, found_allowed=kind == "found", **told)


def tried(key, grounds):
    """Whether the trade took it."""
    try:
        tell(key, grounds)
    except Refused:
        return False
    return True


def interleaved():
    """Everybody at once; the order in which the books took the acts, what they wrote, who was refused."""
    grounds, start = lay_out(), Barrier(PEOPLE)

    def person(name):
        start.wait(30)
        refused = [key for key in (f"{name}-{n}" for n in range(ACTS)) if not tried(key, grounds)]
        connection.close()
        return refused

    with ThreadPoolExecutor(PEOPLE) as pool:
        refused = sorted(itertools.chain(*pool.map(person, range(PEOPLE))))
    order = list(Act.objects.exclude(key__startswith="open").order_by("id").values_list("key", flat=True))
    return {"order": order, "refused": refused, "wrote": wrote(), "faults": list(prove().faults)}


def in_order(*keys):
    """The same acts one after another."""
    grounds = lay_out()
    taken = [tried(key, grounds) for key in keys]
    return {"taken": all(taken), "wrote": wrote()}


def wrote():
    """Every movement in words, in the order of the chain."""
    rows = Movement.objects.order_by("id").select_related("act", "part", "source__yard", "target__yard")
    return [
        f"{row.act.key}: {row.day} {row.quantity} {row.part.code} {row.condition} {row.source} {row.target} "
        f"{row.reason} {row.found}"
        for row in rows
    ]


def last_five():
    """Two people each take the last five boxes, at once."""
    shed, creek, start = makers.make_shed(), makers.make_yard("creek"), Barrier(2)
    makers.put(shed, {"box-medium-10": 5})

    def person(name):
        start.wait(30)
        lines = [Line("box-medium-10", 5)]
        told = {"day": makers.DAY, "who": None, "key": f"last-{name}", "found_allowed": True}
        ledger.move(source=shed, target=creek, lines=lines, **told)
        connection.close()

    with ThreadPoolExecutor(2) as pool:
        list(pool.map(person, ("robin", "wren")))
    found = [
        sum(row.quantity for row in act.movements.all() if row.found) for act in Act.objects.order_by("id")
    ]
    return {
        "found": found,
        "at_the_yard": sum(stock.on_hand(creek).values()),
        "in_the_shed": sum(stock.on_hand(shed).values()),
        "asked_about": [row.act.key.startswith("last-") for row in stock.found_gear()],
        "faults": list(prove().faults),
    }


def post_on(first):
    """Acts of LINES lines, every other told late, until the process is killed; says once that it has begun."""
    evenings.STEP = 10
    grounds = [makers.make_shed(), *makers.Yard.objects.filter(is_shed=False).order_by("code")]
    lines = [Line(part, 1) for part in PARTS]
    for number in itertools.count(int(first)):
        day = makers.DAY + dt.timedelta(days=number // 3 if number % 2 else 0)
        here, there = (grounds[0], grounds[1]) if number % 4 < 2 else (grounds[1], grounds[0])
        told = {"day": day, "who": None, "key": f"on-{number}", "found_allowed": True}
        ledger.move(source=here, target=there, lines=lines, **told)
        if number == int(first):
            print(json.dumps("begun"), flush=True)


def left():
    """What a killed process left: acts, those that are not whole, faults of the books."""
    acts = Act.objects.filter(key__startswith="on-")
    broken = [act.key for act in acts if act.movements.filter(found=False).count() != LINES]
    return {
        "acts": acts.count(),
        "broken": broken,
        "faults": list(prove().faults),
        "evenings": Evening.objects.count(),
    }


PLAYS = {play.__name__: play for play in (interleaved, in_order, last_five, lay_out, post_on, left)}

if __name__ == "__main__":
    call_command("migrate", verbosity=0)
    what, *words = sys.argv[1:]
    print(json.dumps(PLAYS[what](*words), default=str))

"""Eight people at once: each sends acts against one store, some of them twice, until it is empty.

`python -m tests.inventory.race` plays it on the database of the environment and prints what came of it.
"""

import os
from concurrent.futures import ThreadPoolExecutor

import django
from django.apps import apps

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "apiary.settings")
if not apps.ready:
    django.setup()

from django.core.management import call_command
from django.db import connection

from inventory import ledger, stock
from inventory.errors import NotEnough
from inventory.ledger import Line
from inventory.models import Act, Movement
from inventory.proof import prove
from tests import makers

PEOPLE, ACTS, STANDS = 8, 12, 60


def play():
    """{what: figure} after 8 people each tried to take one stand twelve times, every act sent twice."""
    shed, creek = makers.make_shed(), makers.make_yard("creek")
    makers.put(shed, {"stand": STANDS})

    def person(name):
        taken = refused = 0
        for number in range(ACTS):
            told = {
                "source": shed,
                "target": creek,
                "lines": [Line("stand", 1)],
                "day": makers.DAY,
                "who": None,
            }
            try:
                first = ledger.move(key=f"{name}-{number}", **told)
                assert ledger.move(key=f"{name}-{number}", **told) == first
                taken += 1
            except NotEnough:
                refused += 1
        connection.close()
        return taken, refused

    def twin(number):
        act = ledger.open_stock(
            location=creek, lines=[Line("jar", 5)], day=makers.DAY, who=None, key=f"twin-{number // 2}"
        )
        connection.close()
        return act.pk

    with ThreadPoolExecutor(PEOPLE) as pool:
        results = list(pool.map(person, range(PEOPLE)))
        twins = set(pool.map(twin, range(8)))
    return {
        "taken": sum(taken for taken, _ in results),
        "refused": sum(refused for _, refused in results),
        "twins": len(twins),
        "acts": Act.objects.count(),
        "movements": Movement.objects.count(),
        "faults": len(prove().faults),
        "left": sum(stock.on_hand(shed).values()),
    }


if __name__ == "__main__":
    call_command("migrate", verbosity=0)
    print(play())

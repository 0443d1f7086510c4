"""Makers of rows for tests: yards, colonies, parts in place, suppliers, offers, orders. All of it invented.

Each takes what a test cares about and fills in the rest; gear is put in place through the ledger.
"""

import datetime as dt
import itertools

from django.contrib.auth import get_user_model

from apiary import colonies
from apiary.models import Access, Colony, FlowWindow, HiveSet, Keeper, Yard
from inventory import ledger
from inventory.catalogue import ensure_catalogue
from inventory.ledger import Line
from inventory.models import GearSet, Offer, Part, Supplier
from inventory.orders import OrderItem, place_order

DAY = dt.date(2025, 4, 1)  # the day most makers act on; well in the past
_numbers = itertools.count(1)


def fresh_key():
    """A key no other act has."""
    return f"test-{next(_numbers)}"


def make_catalogue():
    """The catalogue as it comes with the product."""
    ensure_catalogue()


def make_keeper(**fields):
    return Keeper.objects.create(
        **{"name": "Invented Apiary", "region": "middle", "invented": True, **fields}
    )


def make_person(name="robin", *, role=Access.Role.KEEPER, yards=(), **fields):
    """A person with that role in those yards; None for one who was given no role."""
    person = get_user_model().objects.create_user(username=name, password="long enough to guess", **fields)
    if role is not None:
        Access.objects.create(user=person, role=role).yards.set(yards)
    return person


def make_yard(code=None, **fields):
    code = code or f"yard-{next(_numbers)}"
    return Yard.objects.create(
        **{"code": code, "name": code.replace("-", " ").title(), "stands": 40, **fields}
    )


def make_shed(**fields):
    """The shed; there is one."""
    return Yard.objects.filter(is_shed=True).first() or make_yard(
        "shed", **{"is_shed": True, "stands": 0, **fields}
    )


def make_window(yard, **fields):
    usual = {"name": "clover", "first_week": 22, "last_week": 28, "gain_lb": 60}
    return FlowWindow.objects.create(yard=yard, **{**usual, **fields})


def make_hive_set(code="two-deeps-10"):
    """A hive set of the catalogue."""
    make_catalogue()
    return HiveSet.objects.get(code=code)


def make_colony(tag=None, *, yard=None, hive_set="two-deeps-10", day=DAY, who=None, gear=False, **fields):
    """A colony started on `day`; with `gear` the book has its whole set on it."""
    colony = colonies.start(
        tag=tag or f"C{next(_numbers)}",
        yard=yard or make_yard(),
        hive_set=make_hive_set(hive_set),
        day=day,
        who=who,
        **fields,
    )
    if gear:
        put(colony, gear_of(hive_set), day=day)
    return colony


def make_dead_colony(*, ended=dt.date(2025, 6, 1), why=Colony.Ended.DIED, **fields):
    colony = make_colony(**fields)
    return colonies.end(colony, why=why, day=ended, who=None)


def gear_of(hive_set):
    """{part code: pieces} of a colony in that set."""
    lines = GearSet.objects.get(hive_set=hive_set).lines.select_related("part")
    return {line.part.code: line.quantity for line in lines}


def put(ground, gear, *, day=DAY, condition="sound"):
    """Opening stock {part code: pieces} at a yard's store or on a colony."""
    make_catalogue()
    lines = [Line(code, quantity, condition) for code, quantity in gear.items()]
    return ledger.open_stock(location=ground, lines=lines, day=day, who=None, key=fresh_key())


def part(code):
    make_catalogue()
    return Part.objects.get(code=code)


def make_supplier(code=None, **fields):
    code = code or f"supplier-{next(_numbers)}"
    usual = {"name": f"Invented {code}", "lead_weeks": 2, "invented": True}
    return Supplier.objects.create(code=code, **{**usual, **fields})


def make_offer(parts, *, supplier=None, steps=((1, 2000),), code=None, **fields):
    """An offer of {part code: units a pack} at (from packs, cents) steps."""
    code = code or f"offer-{next(_numbers)}"
    offer = Offer.objects.create(
        code=code, supplier=supplier or make_supplier(), **{"name": f"Invented {code}", **fields}
    )
    for name, units in parts.items():
        offer.parts.create(part=part(name), units=units)
    for from_packs, price_cents in steps:
        offer.steps.create(from_packs=from_packs, price_cents=price_cents)
    return offer


def make_order(packs_by_offer=None, *, placed_on=DAY, **fields):
    """An order of {offer: packs}; without them ten medium boxes in two packs."""
    packs_by_offer = packs_by_offer or {make_offer({"box-medium-10": 5}): 2}
    supplier = next(iter(packs_by_offer)).supplier
    items = [OrderItem(offer=offer, packs=packs) for offer, packs in packs_by_offer.items()]
    return place_order(supplier, items, placed_on=placed_on, **fields)

"""Reads the books of one day into an Operation: the planner's only reader of other packages' tables.

Takes a day; gives yards, sets, colonies with their gear, stock, what is on order, prices and recipes.
Does not judge or plan; refuses where the books cannot tell where an order arrives or what a set is made of.
"""

import datetime as dt
from collections import Counter, defaultdict
from decimal import Decimal

from django.db.models import Prefetch

from apiary.colonies import yards_on
from apiary.models import Colony, FlowWindow, HiveSet, Keeper, Yard
from apiary.winters import winters_told
from inventory.gear import Condition
from inventory.models import (
    GearSet,
    Offer,
    Part,
    PriceStep,
    Recipe,
    Supplier,
)
from inventory.stock import by_place, on_colonies, owed
from planner.errors import NoShed, SetWithoutGear
from planner.season.operation import (
    ColonyGroup,
    OfferFacts,
    OnOrder,
    Operation,
    PartFacts,
    RecipeFacts,
    SetFacts,
    SoFar,
    StockLine,
    SupplierFacts,
    WindowFacts,
    YardFacts,
)

A_YEAR = dt.timedelta(weeks=52)


def operation_as_of(day, *, begun=None):
    """All that the books say on the evening of that day; `begun`: first day of a season that is under way."""
    keeper = keeper_facts()
    colonies = _colony_groups(day)
    return Operation(
        day=day,
        money=keeper.money,
        region=keeper.region,
        shed=_shed(),
        yards=_yards(),
        sets=_sets({group.hive_set for group in colonies}),
        colonies=colonies,
        parts=_parts(),
        stock=_stock(day),
        on_order=_on_order(day),
        suppliers=_suppliers(),
        offers=_offers(),
        recipes=_recipes(),
        truck_lb=keeper.truck_lb,
        truck_cubic_ft=keeper.truck_cubic_ft,
        so_far=_so_far(day, begun),
        winters=past_winters(day),
    )


def _so_far(day, begun):
    """What became of colonies in the season up to the day, and those found dead in the year before it."""
    ended = Colony.objects.filter(ended_on__lte=day, ended_on__gt=day - A_YEAR)
    dead = Counter(ended.filter(ended_why=Colony.Ended.DIED).values_list("ended_on", flat=True))
    found_dead = tuple(sorted((on, count) for on, count in dead.items() if on is not None))
    if begun is None or begun >= day:
        return SoFar(dead=found_dead)
    sold = ended.filter(ended_why=Colony.Ended.SOLD, ended_on__gt=begun, hive_set__is_nuc=True)
    made = Colony.objects.filter(origin=Colony.Origin.SPLIT, started_on__gt=begun, started_on__lte=day)
    return SoFar(
        colonies_begun=Colony.objects.alive(on=begun).count(),
        splits_made=made.exclude(ended_why=Colony.Ended.MISTAKE).count(),
        nucs_sold=sold.count(),
        dead=found_dead,
    )


def keeper_facts():
    """Whose bees these are: region, money, truck. The usual ones before the keeper has told any."""
    return Keeper.objects.first() or Keeper(name="")


def past_winters(day):
    """Colonies in and out of the winters told that had begun by that year."""
    return winters_told(until=day.year)


def _shed():
    code = Yard.objects.filter(is_shed=True).values_list("code", flat=True).first()
    if code is None:
        raise NoShed
    return code


def _yards():
    windows = Prefetch("windows", FlowWindow.objects.order_by("first_week", "id"))
    return tuple(
        YardFacts(
            code=yard.code,
            name=yard.name,
            stands=yard.stands,
            drive_minutes=yard.drive_minutes,
            miles=float(yard.miles),
            windows=tuple(_window(window) for window in yard.windows.all()),
            visit_every_days=yard.visit_every_days,
            region=yard.region,
        )
        for yard in Yard.objects.prefetch_related(windows)
    )


def _window(window):
    return WindowFacts(
        name=window.name,
        first_week=window.first_week,
        last_week=window.last_week,
        gain_lb=float(window.gain_lb),
        spread=float(window.spread),
    )


def _sets(used):
    """Hive sets with their gear; those without a gear set are left out unless a colony stands in one."""
    gear_sets = GearSet.objects.exclude(hive_set="").prefetch_related("lines__part")
    gear_of = {
        gear_set.hive_set: {line.part.code: line.quantity for line in gear_set.lines.all()}
        for gear_set in gear_sets
    }
    hive_sets = list(HiveSet.objects.all())
    unknown = [hive_set.name for hive_set in hive_sets if hive_set.code in used - gear_of.keys()]
    if unknown:
        raise SetWithoutGear(sets=", ".join(unknown))
    return tuple(_set(hive_set, gear_of[hive_set.code]) for hive_set in hive_sets if hive_set.code in gear_of)


def _set(hive_set, gear):
    boxes = {
        "deep": hive_set.deep_boxes,
        "medium": hive_set.medium_boxes,
        "shallow": hive_set.shallow_boxes,
    }
    return SetFacts(
        code=hive_set.code,
        name=hive_set.name,
        width=hive_set.width,
        boxes={depth: count for depth, count in boxes.items() if count},
        gear=gear,
        is_nuc=hive_set.is_nuc,
    )


def _colony_groups(day):
    """Living colonies alike in yard, set and strength, with their gear that is not held back."""
    counts: Counter[tuple[str, str, str]] = Counter()
    gear: dict[tuple[str, str, str], Counter[str]] = defaultdict(Counter)
    held_by, stood = on_colonies(as_of=day), yards_on(day)
    codes = dict(Yard.objects.values_list("id", "code"))
    rows = Colony.objects.alive(on=day).order_by("hive_set__code", "strength", "id")
    for pk, hive_set, strength in rows.values_list("id", "hive_set__code", "strength"):
        alike = codes[stood[pk]], hive_set, strength
        counts[alike] += 1
        for held, pieces in held_by.get(pk, {}).items():
            if held.condition != Condition.HELD:
                gear[alike][held.part] += pieces
    return tuple(
        ColonyGroup(
            yard=yard,
            hive_set=hive_set,
            strength=strength,
            colonies=count,
            gear=dict(sorted(gear[yard, hive_set, strength].items())),
        )
        for (yard, hive_set, strength), count in sorted(counts.items())
    )


def _parts():
    return tuple(
        PartFacts(
            code=part.code,
            name=part.name,
            kind=part.kind,
            depth=part.depth,
            width=part.width,
            comb=part.comb,
            comb_use=part.comb_use,
            treated=part.treated,
            flat=part.flat,
            unit=part.unit,
            weight_lb=float(part.tare_lb),
            list_price=part.list_price,
            years_of_life=part.years_of_life,
            length_in=part.length_in,
            width_in=part.width_in,
            height_in=part.height_in,
        )
        for part in Part.objects.all()
    )


def _stock(day):
    return tuple(
        StockLine(part=row.part, yard=row.yard, condition=row.condition, quantity=row.quantity)
        for row in by_place(as_of=day)
        if not row.on_colonies
    )


def _on_order(day):
    """What is still to come by the books of that day."""
    return tuple(
        OnOrder(
            part=row.part.code,
            quantity=row.owed,
            due=row.line.order.due_on,
            reference=row.line.order.reference,
        )
        for row in owed(as_of=day)
    )


def _suppliers():
    return tuple(
        SupplierFacts(
            code=supplier.code,
            name=supplier.name,
            order_fee=_money(supplier.order_fee_cents),
            free_from=None if supplier.free_from_cents is None else _money(supplier.free_from_cents),
            lead_weeks=supplier.lead_weeks,
        )
        for supplier in Supplier.objects.order_by("code")
    )


def _offers():
    steps = Prefetch("steps", PriceStep.objects.order_by("from_packs"))
    offers = Offer.objects.select_related("supplier").prefetch_related(steps, "parts__part")
    return tuple(
        OfferFacts(
            code=offer.code,
            supplier=offer.supplier.code,
            name=offer.name,
            parts={line.part.code: line.units for line in offer.parts.all()},
            prices=tuple((step.from_packs, step.price) for step in offer.steps.all()),
            price_rule=offer.price_rule,
            open_from=offer.open_from,
            open_until=offer.open_until,
            lead_weeks=offer.supplier.lead_weeks if offer.lead_weeks is None else offer.lead_weeks,
            max_packs=offer.max_packs,
        )
        for offer in offers.order_by("code")
        if offer.parts.all() and offer.steps.all()
    )


def _recipes():
    return tuple(
        RecipeFacts(
            code=recipe.code,
            name=recipe.name,
            takes={line.part.code: line.takes for line in recipe.lines.all() if line.takes},
            makes={line.part.code: line.makes for line in recipe.lines.all() if line.makes},
            minutes=float(recipe.minutes),
        )
        for recipe in Recipe.objects.prefetch_related("lines__part")
    )


def _money(cents):
    return Decimal(cents) / 100

"""What the books know around the day of a count, as plain records for reconciling.

Takes differences with their day, and the places they lie at; gives Facts. Looks back to the last posted count of
those places, at most REACH days, and ahead AHEAD days. Changes nothing.
"""

import datetime as dt
from collections import defaultdict

from django.db.models import Max, Q

from apiary.colonies import yards_on
from apiary.models import Colony, FlowWindow
from inventory.counting.comparing import compared, piece_of
from inventory.gear import Kind, Reason
from inventory.models import Act, Count, Location, Movement, Part, Recipe
from inventory.reconcile import Difference, Facts, Hive, Making, Moved, Owed, differing
from inventory.stock import on_colonies, owed

REACH, NEAR, AHEAD = dt.timedelta(days=200), dt.timedelta(days=30), dt.timedelta(days=14)
NOT_MOVED = (Reason.CORRECTED, Reason.FOUND, Reason.OPENING)


def facts_about(rows, day, *, count=None, without=None):
    """The Facts for these differences of a day; `count`: the one they are of, left out of what others counted;
    `without`: the key of an act left out, the one that found the gear."""
    codes = {row.part for row in rows}
    places = {row.place for row in rows}
    stores = dict(Location.objects.filter(kind=Location.Kind.STORE).values_list("pk", "yard_id"))
    return Facts(
        day=day,
        yard_of=stores,
        pieces={part.code: piece_of(part) for part in Part.objects.all()},
        moved=tuple(move for move in moved_about(codes, places, day) if move.act != without),
        elsewhere=counted_elsewhere(codes, places, day, count=count),
        hives=hives_on(day, {stores[place] for place in places if place in stores}),
        owed=tuple(
            Owed(order=row.line.order_id, part=row.part.code, quantity=row.owed)
            for row in owed()
            if row.owed and row.part.code in codes and row.line.order.placed_on <= day
        ),
        makings=makings(),
    )


def moved_about(codes, places, day):
    """Movements of acts that touched these parts here since the last count, and of hauls of them elsewhere near it."""
    counted = (
        Count.objects.posted().filter(location__in=places, day__lt=day).aggregate(last=Max("day"))["last"]
    )
    since = max(counted or day - REACH, day - REACH)
    rows = Movement.objects.filter(day__gte=since, day__lte=day + AHEAD, part__code__in=codes)
    here = Q(source__in=places) | Q(target__in=places)
    hauled = Q(reason=Reason.MOVED, day__gte=day - NEAR)
    acts = rows.filter(here | hauled).exclude(reason__in=NOT_MOVED).values("act")
    standing = Act.objects.filter(pk__in=acts, reverses__isnull=True, reversed_by__isnull=True)
    told = Movement.objects.filter(act__in=standing).exclude(reason__in=NOT_MOVED).order_by("id")
    fields = ("act_id", "day", "part__code", "condition", "quantity", "source_id", "target_id", "reason")
    names = ("act", "day", "part", "condition", "quantity", "source", "target", "reason")
    return tuple(Moved(**dict(zip(names, row, strict=True))) for row in told.values_list(*fields))


def counted_elsewhere(codes, places, day, *, count=None):
    """Differences of these parts by other counts within NEAR of the day, drafts too, at places not counted here."""
    near = Count.objects.filter(day__gte=day - NEAR, day__lte=day + NEAR).exclude(
        pk=count.pk if count is not None else 0
    )
    drafts = near.drafts().select_related("location")
    found: dict[tuple, Difference] = {}
    for other in [*near.posted().select_related("location").order_by("day", "id"), *drafts]:
        for row in differing([row.difference for row in compared(other)]):
            if row.part in codes and row.place not in places:
                found[row.key] = row
    return tuple(found.values())


def hives_on(day, yards):
    """The colonies as the books have them on the day: those of these yards, or all where none of them has any."""
    stood = yards_on(day)
    alive = Colony.objects.real().filter(started_on__lte=day).select_related("hive_set", "place")
    here = [colony for colony in alive if stood[colony.pk] in yards]
    colonies = here or list(alive)
    flowing = yards_in_flow(day)
    gear = on_colonies(as_of=day)
    parts = Part.objects.in_bulk(field_name="code")
    return tuple(
        _hive(colony, stood[colony.pk], gear.get(colony.pk, {}), parts, flowing, day)
        for colony in colonies
        if colony.ended_on is None or colony.ended_on > day or gear.get(colony.pk)
    )


def _hive(colony, yard, gear, parts, flowing, day):
    boxes: dict[str, int] = defaultdict(int)
    for held, quantity in gear.items():
        if parts[held.part].kind == Kind.BOX:
            boxes[parts[held.part].depth] += quantity
    own = colony.hive_set
    in_set = {"deep": own.deep_boxes, "medium": own.medium_boxes, "shallow": own.shallow_boxes}
    place = getattr(colony, "place", None)
    return Hive(
        colony=colony.pk,
        place=place.pk if place else 0,
        yard=yard,
        tag=colony.tag,
        ended=colony.ended_on is not None and colony.ended_on <= day,
        in_flow=yard in flowing,
        width=own.width,
        supers=sum(max(0, number - in_set.get(depth, 0)) for depth, number in boxes.items()),
        gear=tuple((held.part, held.condition.value, quantity) for held, quantity in gear.items()),
    )


def yards_in_flow(day):
    """Keys of the yards with a flow window in the week of the day."""
    week = day.isocalendar().week
    return {
        window.yard_id
        for window in FlowWindow.objects.all()
        if (window.first_week <= week <= window.last_week)
        or (window.first_week > window.last_week and (week >= window.first_week or week <= window.last_week))
    }


def makings():
    """All recipes of the workbench."""
    return tuple(
        Making(
            recipe=recipe.code,
            takes=tuple((line.part.code, line.takes) for line in recipe.lines.all() if line.takes),
            makes=tuple((line.part.code, line.makes) for line in recipe.lines.all() if line.makes),
        )
        for recipe in Recipe.objects.prefetch_related("lines__part")
    )

"""A count while it is a draft: begun, entered row by row, thrown away. Nothing of it is in the books yet.

Takes plain values; gives the Count. A row told as None was not counted: it is no zero and leaves the draft again.
"""

from django.db import transaction
from django.utils import timezone

from apiary.colonies import refuse_future
from inventory.errors import CountClosed, CountOfSeveral, Refused, refuse
from inventory.ledger.lines import condition_of, part_of, parts_by_code, whole
from inventory.ledger.rules import inside, refuse_unstarted
from inventory.locations import location_of
from inventory.models import Count, Location


@transaction.atomic
def begin(*, location, day, who, key, blind=False, with_colonies=False, note=""):
    """A draft for a store (with its colonies' boxes, if wanted) or one colony. A resend gives the first one."""
    refuse_future(day)
    here = inside(location)
    refuse_unstarted(here, day)
    if with_colonies and here.kind != Location.Kind.STORE:
        raise CountOfSeveral(location=here)
    fresh = {
        "location": here,
        "day": day,
        "blind": blind,
        "with_colonies": with_colonies,
        "who": who,
        "note": note,
        "begun_at": timezone.now(),
    }
    return Count.objects.get_or_create(key=str(key), defaults=fresh)[0]


@transaction.atomic
def enter(count, rows):
    """Rows are (store or colony, part, condition, pieces or None); the others of the draft stay as they are."""
    current = draft_of(count)
    catalogue, problems, told = parts_by_code(), [], {}
    for place, part, condition, quantity in rows:
        try:
            row = part_of(part, catalogue)
            key = (location_of(place), row, condition_of(row, condition))
            told[key] = None if quantity is None else whole(row, quantity, lowest=0)
        except Refused as problem:
            problems.append(problem)
    refuse(problems)
    for (place, part, condition), quantity in told.items():
        gear = {"location": place, "part": part, "condition": condition}
        if quantity is None:
            current.lines.filter(**gear).delete()
        else:
            current.lines.update_or_create(**gear, defaults={"quantity": quantity})
    return current


@transaction.atomic
def drop(count):
    """Throws the draft away; its lines are kept, it counts for nothing."""
    current = draft_of(count)
    current.status = Count.Status.DROPPED
    current.save(update_fields=["status"])
    return current


def draft_of(count):
    """The count's row, locked; refused where it is a draft no more."""
    current = Count.objects.select_for_update().get(pk=count.pk)
    if current.status != Count.Status.DRAFT:
        raise CountClosed(count=current, status=current.get_status_display())
    return current

"""Gear found beyond the book: which pieces still ask where they came from, and the answers.

Takes found movements; gives questions, or writes a FoundAnswer. An answer by an act books what had happened, on the
day the pieces were found, and takes the found pieces back off the book in the same act. Reversed, it asks again.
"""

from dataclasses import dataclass

from django.db import transaction
from django.utils import timezone

from inventory.errors import (
    AlreadyAnswered,
    BeforeOrdered,
    NotFoundGear,
    NotOnOrder,
    SamePlace,
    UnknownRecipe,
)
from inventory.gear import Condition, Gear, Reason
from inventory.ledger.posting import Entry, lock_books, post
from inventory.ledger.rules import inside, refuse_unstarted
from inventory.locations import outside
from inventory.models import FoundAnswer, Location, Order, Recipe
from inventory.orders import owed_lines
from inventory.reconcile import Difference
from inventory.stock import found_gear, on_hand

How = FoundAnswer.How


def unanswered(*, as_of=None):
    """Found movements, newest first, that nobody has said where they came from."""
    return found_gear(as_of=as_of).exclude(pk__in=FoundAnswer.objects.standing().values("movement"))


def difference_of(movement):
    """A found movement as the difference it was: the book had lacked these pieces that evening."""
    return Difference(
        place=movement.target_id,
        part=movement.part.code,
        condition=str(movement.condition),
        booked=0,
        counted=movement.quantity,
    )


@dataclass(frozen=True, kw_only=True)
class Making:
    """A recipe that may have made what was found; `takes` are (part's code, condition, pieces) it would use up."""

    recipe: str
    takes: tuple[tuple[str, str, int], ...]


def makings_of(movement):
    """The recipes that make what was found at a store, and all of whose parts the book had there that evening."""
    if movement.target.kind != Location.Kind.STORE or movement.condition != Condition.SOUND:
        return []
    there = on_hand(movement.target, as_of=movement.day)
    return [
        making
        for recipe in Recipe.objects.filter(lines__part=movement.part, lines__makes__gt=0).distinct()
        if (making := _making(recipe, movement)) is not None
        and all(there.get(Gear(part=code), 0) >= pieces for code, _, pieces in making.takes)
    ]


def _making(recipe, movement):
    """What making all of the found pieces takes; None where the recipe does not come out even."""
    lines = list(recipe.lines.select_related("part").order_by("id"))
    makes = sum(line.makes for line in lines if line.part == movement.part)
    if movement.quantity % makes:
        return None
    times = movement.quantity // makes
    takes = tuple((line.part.code, "sound", times * line.takes) for line in lines if line.takes)
    return Making(recipe=recipe.code, takes=takes)


@transaction.atomic
def settle(movement, *, who, note=""):
    """It was simply missing from the book: the found pieces stay, the question is closed."""
    lock_books()
    _refuse_answered(movement)
    return FoundAnswer.objects.create(
        movement=movement, how=How.MISSING, who=who, note=note, answered_at=timezone.now()
    )


def answer(movement, *, who, key, came_from=None, order=None, recipe=None, note=""):
    """They came from a store or colony, on an order, or out of a recipe: booked so, and no longer found. Gives the Act.

    A resend with the same key gives the first act.
    """

    def entries():
        _refuse_answered(movement)
        told = _came(movement, came_from, order, recipe)
        return [*told, _taken_back(movement)]

    with transaction.atomic():
        act = post("found answered", entries, day=movement.day, who=who, key=key, note=note)
        FoundAnswer.objects.get_or_create(
            act=act,
            defaults={
                "movement": movement,
                "how": How.BOOKED,
                "who": who,
                "note": note,
                "answered_at": timezone.now(),
            },
        )
    return act


def _refuse_answered(movement):
    asked = found_gear().filter(pk=movement.pk).exists()
    if not asked:
        raise NotFoundGear(part=movement.part, day=movement.day)
    if not unanswered().filter(pk=movement.pk).exists():
        raise AlreadyAnswered(quantity=movement.quantity, part=movement.part, location=movement.target)


def _came(movement, came_from, order, recipe):
    if order is not None:
        return _received(movement, order)
    if recipe is not None:
        return _made(movement, recipe)
    here = inside(came_from)
    refuse_unstarted(here, movement.day)
    if here == movement.target:
        raise SamePlace(location=here)
    if movement.target.kind == Location.Kind.COLONY:
        reason = Reason.PLACED
    else:
        reason = Reason.MOVED if here.kind == Location.Kind.STORE else Reason.TAKEN_OFF
    if here.colony is not None and here.colony.ended_on is not None and here.colony.ended_on <= movement.day:
        reason = Reason.SALVAGED
    return [_entry(movement, here, movement.target, reason)]


def _received(movement, order):
    """The pieces came on this order: its lines take them in turn, the last one what is over."""
    current = Order.objects.get(pk=order.pk)
    if movement.day < current.placed_on:
        raise BeforeOrdered(reference=current.reference, placed_on=current.placed_on, day=movement.day)
    rows = [row for row in owed_lines(current) if row.part == movement.part and row.owed]
    left, entries = movement.quantity, []
    for row in rows:
        taken = left if row is rows[-1] else min(left, row.owed)
        if taken:
            supplier = outside(Location.Kind.SUPPLIER)
            entries.append(
                _entry(
                    movement, supplier, movement.target, Reason.RECEIVED, quantity=taken, order_line=row.line
                )
            )
        left -= taken
    if not entries:
        raise NotOnOrder(part=movement.part, reference=order.reference)
    return entries


def _made(movement, recipe):
    """The pieces were assembled where they were found: what the recipe takes leaves that place."""
    row = Recipe.objects.filter(code=recipe).first()
    lines = list(row.lines.select_related("part")) if row else []
    made = next((line for line in lines if line.part == movement.part and line.makes), None)
    if made is None or movement.quantity % made.makes or movement.condition != Condition.SOUND:
        raise UnknownRecipe(recipe=recipe)
    times, bench = movement.quantity // made.makes, outside(Location.Kind.BENCH)
    return [
        Entry(
            part=line.part,
            quantity=times * (line.takes or line.makes),
            source=movement.target if line.takes else bench,
            target=bench if line.takes else movement.target,
            reason=Reason.ASSEMBLED,
        )
        for line in lines
    ]


def _taken_back(movement):
    return _entry(movement, movement.target, movement.source, Reason.FOUND)


def _entry(movement, source, target, reason, *, quantity=None, order_line=None):
    return Entry(
        part=movement.part,
        quantity=movement.quantity if quantity is None else quantity,
        condition=movement.condition,
        source=source,
        target=target,
        reason=reason,
        order_line=order_line,
    )

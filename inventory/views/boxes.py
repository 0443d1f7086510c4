"""Sheets for boxes over a whole yard: super up, pull, a brood box more. One number for all, exceptions by hive.

Each view finds yard, store and box, reads the form, calls one act and answers.
"""

from django.utils import timezone
from django.views.decorators.http import require_http_methods

from apiary.models import Colony
from inventory.forms import GoingOnForm, PullForm
from inventory.forms.boxes import HiveRow
from inventory.gear import Depth
from inventory.ledger.rules import store
from inventory.views.answering import (
    LIFTING,
    SMOKE,
    ActSheet,
    answer,
    ground_of,
    leave_to,
    needs_yards,
    stocked,
)
from inventory.yardwork.boxes import add_brood_box, in_store, super_up
from inventory.yardwork.boxsets import best_for, brood_boxes, frames_for, supers
from inventory.yardwork.hives import sound_gear_on, standing
from inventory.yardwork.pulling import kind_on, pull, supers_on

SHEET = require_http_methods(["GET", "HEAD", "POST"])

SUPER_UP = ActSheet(
    title="Super up",
    verb="Super up",
    template="inventory/boxes.html",
    nothing="No super is among your gear sets: add one first, with its box and its frames.",
    cautions=(
        LIFTING,
        SMOKE,
        (
            "treatments",
            "Before honey supers go on, take out what the label of a treatment says must be out, and keep to the days "
            "it gives. Comb that was on a colony in treatment never goes under honey for sale.",
        ),
    ),
)
PULL = ActSheet(
    title="Pull supers",
    verb="Pull from",
    template="inventory/boxes.html",
    nothing="No super is among your gear sets: add one first, with its box and its frames.",
    cautions=(
        LIFTING,
        SMOKE,
        (
            "robbing",
            "Cover pulled supers at once and load bee-tight: an open comb sets the whole yard robbing.",
        ),
    ),
)
BROOD_BOX = ActSheet(
    title="Second brood box",
    verb="Build up",
    template="inventory/boxes.html",
    nothing="No box of your catalogue is a brood box: add its gear set first.",
    cautions=(LIFTING, SMOKE),
)


@SHEET
@needs_yards
def act_super_up(request):
    return _going_on(request, SUPER_UP, "super", supers(), super_up, lambda hive_set: None)


@SHEET
@needs_yards
def act_brood_box(request):
    return _going_on(request, BROOD_BOX, "brood_box", brood_boxes(), add_brood_box, _wants_brood_box)


def _wants_brood_box(hive_set):
    """A hive that stands in one box takes a second by the rule for all; any other only as an exception."""
    return int(sum(getattr(hive_set, f"{depth}_boxes") for depth in Depth) == 1)


def _going_on(request, sheet, name, known, act, usual):
    at = ground_of(request, "source", name, hidden=("yard",))
    yard = yard_of(at)
    source = at.chosen("source") or stocked(yard, request.user)
    bees = standing(yard, on=at.on)
    box = _chosen(at, name, known, bees)
    there = _in_store(source, at.on, box)
    hives = [
        HiveRow(
            colony=one, fits=bool(box and box.fits(one.hive_set)), usual=usual(one.hive_set), words=_set(one)
        )
        for one in bees
    ]
    booked = there.get(box.box, 0) if box else 0
    form = GoingOnForm(request.POST or None, hives=hives, box=box, booked=booked, day=at.on)

    def post(told):
        code = box.code if box else None
        return act(colonies=form.colonies(), source=source, box=code, **form.chosen(), **told)

    at = at.settle(yard=yard.code, source=source.code, **({name: box.code} if box else {}))
    cells = [("Yard", yard), ("From the store of", source)]
    more = {"box": box, "yard": yard, "sub": _store_words(box, there), "cells": cells}
    return answer(request, sheet, form, post, at=at, leave=leave_to(yard), **more)


@SHEET
@needs_yards
def act_pull(request):
    at = ground_of(request, "super", hidden=("yard", "target"))
    yard = yard_of(at)
    bees, known = standing(yard, on=at.on), supers()
    gear = sound_gear_on(bees, as_of=at.as_of)
    box = _chosen(
        at, "super", known, [one for one in bees if kind_on(gear[one.pk], one.hive_set, known)] or bees
    )
    hives = [_with_supers(one, gear[one.pk], box) for one in bees]
    target = at.chosen("target") or yard
    form = PullForm(request.POST or None, hives=hives, target=target, day=at.on)

    def post(told):
        code = box.code if box else None
        return pull(colonies=form.colonies(), box=code, **form.chosen(), **told)

    at = at.settle(yard=yard.code, **({"super": box.code} if box else {}))
    booked = sum(hive.usual or 0 for hive in hives)
    more = {
        "box": box,
        "yard": yard,
        "sub": f"{booked} on these hives by the book",
        "cells": [("Yard", yard)],
    }
    return answer(request, PULL, form, post, at=at, leave=leave_to(yard), **more)


def _with_supers(colony, gear, box):
    booked = supers_on(gear, colony.hive_set, box) if box else 0
    words = f"{booked} by the book"
    return HiveRow(colony=colony, fits=bool(box and box.fits(colony.hive_set)), usual=booked, words=words)


def yard_of(at):
    """The yard of the address, else the first one with living bees that this person may see."""
    living = Colony.objects.alive(on=at.on).values("yard")
    grounds = at.fields["yard"].queryset
    return at.chosen("yard") or grounds.filter(pk__in=living).first() or grounds.first()


def _chosen(at, name, known, bees):
    """The box of the address, else the one that fits most of the hives."""
    code = at.chosen(name)
    by_code = {one.code: one for one in known}
    return by_code.get(code) or best_for(known, [one.hive_set for one in bees])


def _in_store(source, day, box):
    """{Part: pieces} of the box and its frames that lie ready."""
    if box is None:
        return {}
    parts = frames_for(box)
    return in_store(
        store(source), min(day, timezone.localdate()), [box.box, box.foundation(parts), *box.combs(parts)]
    )


def _store_words(box, there):
    """14 in the store here: 120 drawn combs, 20 frames with foundation."""
    if box is None:
        return ""
    foundation = sum(number for part, number in there.items() if part.comb == "foundation")
    drawn = sum(number for part, number in there.items() if part.comb == "drawn")
    return f"{there[box.box]:,} in the store, with {drawn:,} drawn combs and {foundation:,} frames with foundation"


def _set(colony):
    return f"{colony.get_strength_display()}, {colony.hive_set}"

"""Sheets to print for the field: a yard's, all yards', a count, a load being put together, a dead hive.

Each view asks what stands on the sheet among the places that are theirs and answers with it. Nothing is booked; the
picture in the head leads back to the page where it is told.
"""

from urllib.parse import urlencode

from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.formats import date_format
from django.views.decorators.http import require_http_methods, require_safe

from apiary.models import Colony, Yard
from apiary.paper import PAPERS, paper_of
from apiary.pictures import is_this_machine
from apiary.rights import grounds, hives, within
from apiary.titles import yard_cells
from inventory.deadouts.waiting import to_work
from inventory.field_sheets.hives import SPARE, pieces_of, pieces_of_any
from inventory.field_sheets.leaves import Leaf
from inventory.field_sheets.loads import load_list
from inventory.field_sheets.stores import places_to_count
from inventory.forms import HaulForm
from inventory.forms.deadouts import WORDS
from inventory.models import Deadout
from inventory.views.answering import ground_of, needs_yards, stocked

SHOWN = ("source", "stops", "target", "yard", "day")  # what an address of a load tells beside its numbers
LONGEST = 180  # characters a picture of 26 mm holds in squares a phone still tells apart: a judgement


def printed(request, leaves, *, name, leave, template="inventory/print.html", **more):
    """The page of these leaves on the person's paper."""
    host = request.get_host()
    page = {"leaves": leaves, "name": name, "leave": leave, "papers": PAPERS, "paper": paper_of(request)}
    page |= {"host": host, "this_machine": is_this_machine(host), **more}
    return render(request, template, page)


@require_safe
def print_yard(request, code):
    """One yard: its hives, its store, the way in."""
    today = timezone.localdate()
    yard = get_object_or_404(Yard.objects.with_colonies(on=today), code=code)
    leave = reverse("yard", args=[code])
    return printed(request, [yard_leaf(request, yard, today)], name=f"Yard sheet, {yard}", leave=leave)


@require_safe
def print_yards(request):
    """All yards of the circuit that are theirs, each on a page of its own."""
    today = timezone.localdate()
    yards = grounds(request.user).with_colonies(on=today).filter(is_shed=False)
    leaves = [yard_leaf(request, yard, today) for yard in yards]
    return printed(request, leaves, name="Yard sheets, all yards", leave=reverse("yards"))


def yard_leaf(request, yard, day):
    return Leaf(
        kind="Yard sheet",
        name=yard.name,
        address=request.build_absolute_uri(reverse("yard", args=[yard.code])),
        opens="the yard's page",
        body="inventory/print_yard.html",
        cells=(*yard_cells(yard), ("Printed", date_format(day, "D j M Y"))),
        told={"yard": yard, "day": day},
    )


@require_safe
def print_count(request, code):
    """The store of a yard or the shed to be counted, blind or beside the book, with its hives' boxes where wanted."""
    yard, today = get_object_or_404(Yard, code=code), timezone.localdate()
    blind, with_colonies = request.GET.get("how") != "booked", request.GET.get("hives") == "boxes"
    address = request.build_absolute_uri(f"{reverse('act-correct')}?yard={code}")
    how = "blind" if blind else "beside the book"
    leaf = Leaf(
        kind="Count sheet",
        name=f"Store of {yard}" if not yard.is_shed else yard.name,
        address=address,
        opens="the count",
        body="inventory/print_count_rows.html",
        cells=(("How", how), ("Book of", date_format(today, "D j M Y"))),
        told={
            "places": places_to_count(yard, day=today, blind=blind, with_colonies=with_colonies),
            "blind": blind,
            "spare": range(SPARE),
        },
    )
    page = {"blind": blind, "with_colonies": with_colonies, "yard": yard}
    page["template"] = "inventory/print_count.html"
    return printed(request, [leaf], name=f"Count sheet, {yard}", leave=reverse("yard", args=[code]), **page)


@require_http_methods(["GET", "HEAD", "POST"])
@needs_yards
def print_haul(request):
    """The load just being put together. What was typed comes by post and leads to an address that tells it."""
    if request.method == "POST":
        told = [
            (name, value) for name, values in request.POST.lists() for value in values if tells(name, value)
        ]
        where = [
            (name, each) for name in SHOWN for each in request.GET.getlist(name) if name not in request.POST
        ]
        return redirect(f"{reverse('print-haul')}?{urlencode([*where, *told])}")
    at = ground_of(request, "source", "stops", hidden=("yard", "target"))
    source = at.chosen("source") or stocked(at.chosen("yard"), request.user)
    stops = at.chosen("stops") or []
    target = next((end for end in (*stops, at.chosen("target")) if end and end != source), None)
    form = HaulForm(
        None, ground=source, stops=stops, target=target, day=at.on, as_of=at.as_of, told=request.GET
    )
    load = load_list(form.told_drops(target))
    leave = f"{reverse('act-move')}?{request.GET.urlencode()}"
    leaf = haul_leaf(request, source=source, load=load, day=at.on, back=leave)
    return printed(request, [leaf] if load.stops else [], name=f"Haul list from {source}", leave=leave)


def tells(name, value):
    """Whether a field sent says where a load goes or how many of something are on it."""
    return name in SHOWN or (
        name.startswith(("n__", "full__")) and value.isdecimal() and len(value) < 10 and int(value) > 0
    )


def haul_leaf(request, *, source, load, day, back):
    full = request.build_absolute_uri(back)
    short = request.build_absolute_uri(f"{reverse('act-move')}?{urlencode({'source': source.code})}")
    weighed = load.weighed
    return Leaf(
        kind="Haul list",
        name=", ".join(str(stop.place or "place not chosen yet") for stop in load.stops),
        address=full if len(full) <= LONGEST else short,
        opens="the load, to book it",
        body="inventory/print_load.html",
        cells=(
            ("From the store of", source),
            ("Day", date_format(day, "D j M Y")),
            *((f"Truck, {line.unit}", f"{line.amount:,} of {line.limit_amount:,}") for line in weighed.lines),
        ),
        told={"load": load},
    )


@require_safe
def print_deadout(request, pk):
    """One hive found dead, or to be opened as such."""
    colony = get_object_or_404(Colony.objects.select_related("yard"), pk=pk)
    leave = reverse("colony", args=[pk])
    return printed(request, [dead_leaf(request, colony)], name=f"Deadout sheet, {colony}", leave=leave)


@require_safe
def print_deadouts(request):
    """All hives that wait to be worked, of the yards that are theirs, and one sheet for a hive not yet known."""
    today = timezone.localdate()
    waiting = within(request.user, to_work(on=today), "yard")
    leaves = [dead_leaf(request, colony) for colony in waiting]
    alive = hives(request.user).alive(on=today)
    leaves.append(dead_leaf(request, None, rows=pieces_of_any(alive)))
    return printed(request, leaves, name="Deadout sheets", leave=reverse("deadouts"))


def dead_leaf(request, colony, rows=None):
    """`colony` None: the tag is written by hand, and no number of the book stands beside the pieces."""
    where = f"?colony={colony.pk}" if colony else ""
    return Leaf(
        kind="Deadout sheet",
        name=colony.tag if colony else "A hive not known yet",
        address=request.build_absolute_uri(f"{reverse('act-deadout')}{where}"),
        opens="the deadout, to work it",
        body="inventory/print_hive.html",
        cells=(("Yard", colony.yard),) if colony else (),
        told={
            "colony": colony,
            "rows": pieces_of(colony) if rows is None else rows,
            "fates": WORDS.values(),
            "causes": Deadout.Cause.labels,
            "spare": range(SPARE),
        },
    )

"""Sheets of tags to print and hang up: a yard's or a colony's name and its page's address as a picture for a phone."""

from django.shortcuts import get_object_or_404, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_GET

from apiary.models import Colony, Yard
from apiary.paper import PAPERS, paper_of
from apiary.pictures import is_this_machine, picture_of
from apiary.rights import yards_of


@require_GET
def tags(request):
    """One tag for each yard the person may see."""
    given = yards_of(request.user)
    yards = Yard.objects.all() if given is None else Yard.objects.filter(pk__in=given)
    rows = [_tag(request, yard.name, "Yard", reverse("yard", args=[yard.code])) for yard in yards]
    return _sheet(request, rows, name="Yard tags", leave=reverse("yards"))


@require_GET
def yard_tags(request, code):
    """One tag for each colony alive in a yard."""
    yard = get_object_or_404(Yard, code=code)
    colonies = Colony.objects.alive(on=timezone.localdate()).in_yard(yard).order_by("tag")
    rows = [_tag(request, bees.tag, yard.name, reverse("colony", args=[bees.pk])) for bees in colonies]
    return _sheet(request, rows, name=f"Colony tags, {yard.name}", leave=reverse("yard", args=[code]))


def _tag(request, name, kind, path):
    address = request.build_absolute_uri(path)
    return {"name": name, "kind": kind, "address": address, "picture": picture_of(address, f"{kind} {name}")}


def _sheet(request, rows, *, name, leave):
    paper = paper_of(request)
    host = request.get_host()
    page = {"tags": rows, "name": name, "leave": leave, "paper": paper, "papers": PAPERS, "host": host}
    return render(request, "apiary/tags.html", {**page, "this_machine": is_this_machine(host)})

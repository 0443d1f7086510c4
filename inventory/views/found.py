"""Where did it come from? Gear found beyond the book, with what may explain it, and the keeper's answer.

Takes one found movement; reads the answer, calls one act. What explains it is asked of the same rules as a count's.
"""

import uuid

from django.contrib import messages
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils.formats import date_format
from django.views.decorators.http import require_http_methods

from inventory import counting
from inventory.errors import Refused
from inventory.forms.counts import FoundForm
from inventory.models import FoundAnswer, Order
from inventory.reconcile import Likely, explain
from inventory.sentences import head_of
from inventory.stock import history
from inventory.views.answering import tell
from inventory.views.explaining import Names, told

FROM_SOURCE = (Likely.UNBOOKED, Likely.DEADOUT)  # the pieces came from where the explanation says they were
FROM_TARGET = (Likely.STILL_HERE, Likely.ELSEWHERE, Likely.TWICE)  # they came from where they were booked to


@require_http_methods(["GET", "HEAD", "POST"])
def found(request, pk):
    movement = get_object_or_404(history().filter(found=True), pk=pk)
    explained = explained_for(movement, request.user)
    key = request.POST.get("key") or str(uuid.uuid4())
    form = FoundForm(request.POST or None, key=key, answers=answers_of(explained, movement), who=request.user)
    if request.method == "POST" and form.is_valid():
        try:
            return _answered(request, movement, form)
        except Refused as refusal:
            for problem in refusal.problems:
                form.add_error(None, str(problem))
    standing = FoundAnswer.objects.standing().filter(movement=movement).select_related("act", "who").first()
    page = {
        "movement": movement,
        "form": form,
        "explained": explained,
        "standing": standing,
        "leave": reverse("home"),
    }
    page["cells"] = [("Found at", movement.target), ("On", date_format(movement.day, "D j M Y"))]
    page["cells"].append(("When", head_of(movement.act).lower()))
    return render(request, "inventory/found.html", page, status=422 if form.errors else 200)


def explained_for(movement, user):
    """Told explanations of a found movement, alone: its act may have found other gear too."""
    rows = [counting.difference_of(movement)]
    facts = counting.facts_about(rows, movement.day, without=movement.act_id)
    return told(explain(rows, facts), day=movement.day, user=user)


def answers_of(explained, movement):
    """[(value, words)] of what can be booked as it stands: each place and order that explains it, each recipe once."""
    answers: dict[str, str] = {}
    for one in explained:
        likely = one.explanation
        if sum(quantity for _, _, quantity in likely.pieces) != movement.quantity:
            continue  # it explains some of the pieces only
        place = _came_from(likely)
        if place and place != movement.target_id:
            answers.setdefault(f"place:{place}", one.sentence)
        if likely.order:
            answers.setdefault(f"order:{likely.order}", one.sentence)
    for making in counting.makings_of(movement):
        taken = Names([]).pieces(making.takes)
        words = f"Assembled at {movement.target} and not booked: out of {taken}, which the book has there."
        answers.setdefault(f"recipe:{making.recipe}", words)
    return list(answers.items())


def _came_from(explanation):
    """The place an explanation says they came from; None where it names none."""
    if explanation.likely in FROM_SOURCE:
        return explanation.source
    return explanation.target if explanation.likely in FROM_TARGET else None


def _answered(request, movement, form):
    came, note = form.cleaned_data["came"], form.cleaned_data["note"]
    if came == "missing":
        counting.settle(movement, who=request.user, note=note)
        messages.success(
            request,
            f"{movement.quantity} × {movement.part} at {movement.target}: put down as missing from the book.",
        )
        return redirect("home")
    word, _mark, key = came.partition(":")
    order = Order.objects.get(pk=key) if word == "order" else None
    act = counting.answer(
        movement,
        who=request.user,
        key=form.cleaned_data["key"],
        came_from=form.place(),
        order=order,
        recipe=key if word == "recipe" else None,
        note=note,
    )
    tell(request, act)
    return redirect("home")

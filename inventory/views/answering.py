"""What all sheets of acts share: showing one, posting it, telling what happened, and finding where it is done.

Takes a request, an ActSheet, its form and the act to call; answers with the sheet or leads back to the place.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps

from django.contrib import messages
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.formats import date_format

from apiary.models import Colony, Yard
from apiary.rights import grounds, narrow, within
from inventory.errors import Refused
from inventory.forms import ground_form
from inventory.models import Act, Holding
from inventory.sentences import sentence_of


@dataclass(frozen=True, kw_only=True)
class ActSheet:
    """The words of one act's sheet. `verb` begins its one filled button; `row` is the template of a row."""

    title: str
    verb: str
    rows: str = "Gear"
    lead: str = ""
    nothing: str = "The book has nothing here that this can be done to."
    template: str = "inventory/lines.html"
    row: str = "inventory/row.html"
    tells: str = "sums"  # what the foot sums up while it is told: sums, count, owed or nothing
    cautions: tuple[tuple[str, str], ...] = ()
    only: Callable | None = None


LIFTING = (
    "lifting",
    "A full deep weighs 80 to 90 lb, a full medium 55 to 60: lift with two, or frame by frame, and from the knees.",
)
SMOKE = (
    "stings and smoke",
    "Carry what you need against a severe sting reaction. Put the smoker out on bare ground: dry grass catches fire.",
)


def needs_yards(view):
    """Leads to the yards where there is none yet: nothing can be done anywhere."""

    @wraps(view)
    def checked(request, *args, **kwargs):
        if not Yard.objects.exists():
            messages.info(request, "No yard is in the books yet: load your sheet first.")
            return redirect("yards")
        return view(request, *args, **kwargs)

    return checked


def ground_of(request, *names, hidden=()):
    """What the address says about place and day, among the places that are theirs who ask."""
    return ground_form(*names, hidden=hidden)(request.GET, today=timezone.localdate(), who=request.user)


def home_store(who=None):
    """The shed, or the first yard where there is none; of a person, the first of theirs."""
    return (Yard.objects.all() if who is None else grounds(who)).first()


def stocked(yard, who=None):
    """The yard if anything lies in its store, else the home store."""
    filled = yard and Holding.objects.filter(location__yard=yard, quantity__gt=0).exists()
    return yard if filled else home_store(who)


def leave_to(*grounds):
    """The page of the first colony or yard that is known."""
    for ground in grounds:
        if isinstance(ground, Colony):
            return reverse("colony", args=[ground.pk])
        if isinstance(ground, Yard):
            return reverse("yard", args=[ground.code])
    return reverse("gear")


def which_colony(request, sheet, at, colonies):
    """The colonies this can be done to, of the yard in the address or of all that are theirs."""
    yard = at.chosen("yard")
    rows = within(request.user, colonies, "yard").select_related("yard").order_by("yard__name", "tag")
    rows = rows.filter(yard=yard) if yard else rows
    page = {"sheet": sheet, "colonies": rows, "at": at, "yard": yard, "leave": leave_to(yard)}
    page["cells"] = [("Yard", yard or "all yards"), ("Day", day_words(at))]
    return render(request, "inventory/which_colony.html", page)


def answer(request, sheet, form, post, *, at, leave, cells=(), then=None, **more):
    """Posts the act when it was sent and is good; else the sheet, with what is wrong and all that was typed.

    `then` gives the address to lead to after the act, where that is not `leave`.
    """
    narrow(form, request.user)
    if request.method != "POST":
        form.fill(request.GET)
    sent = request.method == "POST" and "add" not in request.POST
    if sent and form.is_valid():
        known = Act.objects.filter(key=form.cleaned_data["key"]).exists()
        try:
            act = post(form.told(request.user))
        except Refused as refusal:
            form.refuse(refusal)
        else:
            tell(request, act, known=known)
            return redirect(then(act) if then else leave)
    page = {"sheet": sheet, "form": form, "at": at, "leave": leave, **more}
    page["cells"] = [*cells, ("Day", day_words(at))]
    return render(request, sheet.template, page, status=422 if sent and form.errors else 200)


def day_words(at):
    words = date_format(at.on, "D j M Y")
    return f"today, {words}" if at.on == at.today else words


def tell(request, act, *, known=False):
    """What happened, with the way to undo it."""
    sentence = sentence_of(act)
    if known:
        sentence = f"This was sent before and is booked once. {sentence}"
    messages.success(request, sentence, extra_tags=reverse("books-reverse", args=[act.pk]))

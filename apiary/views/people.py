"""The keeper's page of people: who they are, what they may do and where; inviting, a new link, ending access.

A link is shown once, in the answer to the press that made it, and kept nowhere.
"""

from django.contrib import messages
from django.contrib.auth import get_user_model
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods, require_POST

from apiary import people
from apiary.errors import Refused
from apiary.forms import AccessForm, InviteForm
from apiary.pictures import is_this_machine, picture_of
from apiary.rights import KEEPER, role_of


@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def everyone(request):
    """All who were ever let in, and a form to invite one more."""
    form = InviteForm(request.POST or None, initial={"role": "helper"}, auto_id="new-%s")
    if request.method == "POST" and form.is_valid():
        try:
            person, token = people.invite(now=timezone.now(), **form.cleaned_data)
        except Refused as refusal:
            form.add_error("name", str(refusal))
        else:
            return _link_shown(request, person, token)
    page = {"form": form, "people": _rows(request.user)}
    return render(request, "apiary/people.html", page, status=422 if form.errors else 200)


@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def person(request, pk):
    """One of them: another role, other yards."""
    one = _person(pk)
    form = AccessForm(request.POST or None, initial=_given(one), auto_id="may-%s")
    if request.method == "POST" and form.is_valid():
        try:
            people.change(one, by=request.user, **form.cleaned_data)
        except Refused as refusal:
            form.add_error(None, str(refusal))
        else:
            messages.success(request, f"{one} may do what you chose, from their next page on.")
            return redirect("people")
    kept = one.is_superuser or one == request.user
    page = {"person": one, "form": form, "kept": kept, "ended": not one.is_active}
    page["cells"] = [("May", _role_words(one)), ("State", _state(one))]
    return render(request, "apiary/person.html", page, status=422 if form.errors else 200)


@require_POST
def person_end(request, pk):
    """Access ends at once."""
    one = _person(pk)
    try:
        people.end(one, by=request.user, now=timezone.now())
    except Refused as refusal:
        messages.error(request, str(refusal))
    else:
        messages.success(
            request, f"{one} is signed out everywhere and cannot come in again. A new link lets them back."
        )
    return redirect("person", pk)


@never_cache
@require_POST
def person_link(request, pk):
    """A new link, shown once; the password and links before it stop working."""
    one = _person(pk)
    try:
        token = people.let_in(one, by=request.user, now=timezone.now())
    except Refused as refusal:
        messages.error(request, str(refusal))
        return redirect("person", pk)
    return _link_shown(request, one, token)


def _link_shown(request, person, token):
    link = request.build_absolute_uri(people.path_of(token))
    page = {
        "person": person,
        "link": link,
        "days": people.LINK_LASTS.days,
        "picture": picture_of(link, "The link"),
    }
    page["only_here"] = is_this_machine(request.get_host())
    return render(request, "apiary/link_shown.html", page)


def _person(pk):
    return get_object_or_404(get_user_model().objects.select_related("access"), pk=pk)


def _given(person):
    """What they may do now, for the form."""
    access = getattr(person, "access", None)
    return {"role": access.role, "yards": access.yards.all()} if access else {"role": "helper"}


def _rows(keeper):
    """Everyone, those who may come in first."""
    everyone = get_user_model().objects.select_related("access").prefetch_related("access__yards")
    return [
        {
            "person": one,
            "role": _role_words(one),
            "state": _state(one),
            "yards": _yards(one),
            "you": one == keeper,
        }
        for one in everyone.order_by("-is_active", "username")
    ]


def _role_words(person):
    role = role_of(person)
    return role or ("nothing" if person.is_active else "nothing any more")


def _yards(person):
    if role_of(person) == KEEPER:
        return "all"
    return ", ".join(yard.name for yard in person.access.yards.all()) if hasattr(person, "access") else "none"


def _state(person):
    if not person.is_active:
        return "access ended"
    return "signs in" if person.has_usable_password() else "has not used the link yet"

"""The one gate in front of every page: asks the table of rights by the address's name, looking and sending alike.

Takes the request; lets it pass or answers with the refusal's page and one sentence. For who is no keeper it also
reads which yards and colonies the address and the form name. Books nothing and knows no page.
"""

import re

from django.contrib.auth.views import redirect_to_login
from django.db.models import Q
from django.shortcuts import render

from apiary.models import Colony, Yard
from apiary.rights import HELPER, KEEPER, READER, RIGHTS, NotYours, may, refuse_elsewhere, role_of, yards_of

SAFE = ("GET", "HEAD", "OPTIONS")
OFFICE = "admin"
LONGEST = 19  # digits; what is longer is no row's number
LAST_WORD = re.compile(r"[a-z]+$")  # of a field's name: rows of a table put theirs before it
YARDS = {"yard", "yards", "source", "target", "into", "store", "place", "shed"}
COLONIES = {"colony", "colonies", "mother", "daughter", "onto", *YARDS}
NO_ROLE = "The keeper has not said yet what your name may do here: ask for a role."
NO_YARD = "No yard is given to your name yet: ask the keeper which yards you work in."
ONLY_LOOKS = "Your name may look here, not book: nothing was changed. Ask the keeper."


class Gate:
    """Middleware after the one that asks for a name and password."""

    def __init__(self, answer):
        self.answer = answer

    def __call__(self, request):
        return self.answer(request)

    def process_view(self, request, view, args, kwargs):
        match = request.resolver_match
        try:
            if match.namespaces:
                return self._office(request, match)
            refuse(request, match.url_name, kwargs)
        except NotYours as refusal:
            return turned_away(request, refusal.why)
        return None

    def process_exception(self, request, exception):
        """A writer of books or colonies refused further in: its transaction is undone, the page is the same."""
        return turned_away(request, exception.why) if isinstance(exception, NotYours) else None

    @staticmethod
    def _office(request, match):
        """Tables behind the pages: only for who set the house up."""
        if not request.user.is_authenticated:
            return redirect_to_login(request.get_full_path())
        if match.namespaces != [OFFICE] or not request.user.is_superuser:
            raise NotYours("Only the keeper who set this house up may open its tables.")
        return None


def turned_away(request, why):
    return render(request, "403.html", {"why": why}, status=403)


def refuse(request, name, kwargs):
    """NotYours where this person may not open or send this."""
    user, right = request.user, RIGHTS.get(name)
    if right is not None and right.door:
        return
    role = role_of(user)
    if not role:
        raise NotYours(NO_ROLE)
    if not may(user, name):
        raise NotYours(
            "This is for the keeper alone." if role == HELPER else "This is not for your name to open."
        )
    if role == KEEPER:
        return
    if role == READER and request.method not in SAFE:
        raise NotYours(ONLY_LOOKS)
    if not yards_of(user):
        raise NotYours(NO_YARD)
    refuse_elsewhere(user, _named(request, right, kwargs))


def _named(request, right, kwargs):
    """Keys of all yards that the address, its query and the form name, by themselves or by a colony."""
    codes, colonies = set(), set()
    if right.yard:
        codes.add(str(kwargs[right.yard]))
    if right.colony:
        colonies.add(str(kwargs[right.colony]))
    for sent in (request.GET, request.POST):
        for field, values in sent.lists():
            word = LAST_WORD.search(field)
            codes |= set(values) if word and word[0] in YARDS else set()
            colonies |= set(values) if word and word[0] in COLONIES else set()
    yards = set(Yard.objects.filter(code__in=codes).values_list("pk", flat=True)) if codes else set()
    return yards | _standing(colonies)


def _standing(names):
    """Keys of the yards in which colonies of these numbers or tags stand."""
    if not names:
        return set()
    numbers = {int(name) for name in names if name.isdecimal() and len(name) < LONGEST}
    return set(Colony.objects.filter(Q(pk__in=numbers) | Q(tag__in=names)).values_list("yard", flat=True))

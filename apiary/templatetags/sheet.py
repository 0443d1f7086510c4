"""The head of every sheet: the ruler of words that leads to the pages.

Takes the request in the template's context; gives only words whose pages exist and are open to who asks. Knows
addresses by name alone.
"""

from django import template
from django.urls import NoReverseMatch, reverse
from django.utils.translation import gettext_lazy as _

from apiary import rights

register = template.Library()

# name of the address, word, first words of the address names it stands for, whether the phone keeps it under More
WORDS = (
    ("home", _("This week"), ("home",), False),
    ("yards", _("Yards"), ("yards", "yard", "colony", "act", "print"), False),
    ("gear", _("Gear"), ("gear", "counts", "count", "found"), False),
    ("season", _("Season"), ("season", "seasons", "run", "runs"), False),
    ("deadouts", _("Deadouts"), ("deadouts", "deadout", "held"), True),
    ("orders", _("Orders"), ("orders", "order"), True),
    ("books", _("Books"), ("books",), True),
    ("load-sheet", _("Load a sheet"), ("load", "sheet"), True),
    ("people", _("People"), ("people", "person"), True),
    ("operation", _("Your operation"), ("operation", "supplier"), True),
    ("more", _("More"), ("more",), False),
)


def words_for(here, user):
    """The words of the ruler that lead where this person may go, as the page named `here` shows them."""
    first = (here or "").split("-")[0]
    rest = {name for _name, _word, names, under_more in WORDS if under_more for name in names}
    words = []
    for name, word, names, under_more in WORDS:
        if not rights.may(user, name):
            continue
        try:
            address = reverse(name)
        except NoReverseMatch:
            continue
        current = "page" if here == name else "true" if first in names else ""
        if name == "more" and first in rest:
            current = "true"
        place = "more" if name == "more" else "rest" if under_more else ""
        words.append({"address": address, "word": word, "current": current, "place": place})
    under_more = any(word["place"] == "rest" for word in words)
    return [word for word in words if under_more or word["place"] != "more"]


@register.inclusion_tag("apiary/navigation.html", takes_context=True)
def navigation(context):
    request = context.get("request")
    if request is None or not request.user.is_authenticated:
        return {"words": []}
    return {"words": words_for(getattr(request.resolver_match, "url_name", None), request.user)}


@register.inclusion_tag("apiary/rest.html", takes_context=True)
def rest_of_words(context):
    """The words a phone's ruler has no room for."""
    words = words_for("more", context["request"].user)
    return {"words": [word for word in words if word["place"] == "rest"]}


@register.filter
def may(user, name):
    """Whether the address of that name is open to them."""
    return rights.may(user, name)


@register.filter
def may_see_money(user):
    """Whether prices, costs and values are shown to them."""
    return rights.may_see_money(user)

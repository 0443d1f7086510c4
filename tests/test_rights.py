"""Who may do what where: every address of the project against the keeper, a helper with the yard, one without, a
reader, and nobody; looking and sending. An address that has no row in the table of rights fails here.
"""

import re
from types import SimpleNamespace

import pytest
from django.test import Client
from django.urls import URLPattern, get_resolver, reverse

from apiary.rights import HELPER, KEEPER, READER, RIGHTS
from inventory import counting, ledger
from inventory.deadouts.work import work_deadout
from inventory.ledger import Line
from inventory.models import Deadout
from tests import makers

pytestmark = pytest.mark.django_db
MONEY = re.compile(r"USD|\$|(?i:value at)|\b\d[\d,]*\.\d\d\b")
OFFICE = "admin/"
CLOSED, NO_SUCH_ROW, NO_SUCH_WAY = (
    403,
    404,
    405,
)  # the gate says no; the page cannot be asked that way by anyone
OF_A_YARD = {  # addresses of a row that lies in one yard, or was booked by one person
    "books-act",
    "books-reverse",
    "act-get-back",
    "count",
    "count-enter",
    "count-drop",
    "deadout",
    "deadout-care",
}


def addresses(patterns=None, before=""):
    """(route, pattern) of every address of the project, the office's tables left out."""
    for pattern in get_resolver().url_patterns if patterns is None else patterns:
        route = before + str(pattern.pattern)
        if isinstance(pattern, URLPattern):
            yield route, pattern
        elif route != OFFICE:
            yield from addresses(pattern.url_patterns, route)


PATTERNS = {pattern.name: pattern for _route, pattern in addresses()}


@pytest.fixture
def world():
    """An invented outfit: the yard of the helper, another yard, and something of everything an address can name."""
    keeper = makers.make_person("keeper", is_superuser=True)
    shed, mine, far = makers.make_shed(), makers.make_yard("fern-hollow"), makers.make_yard("long-acre")
    colony = makers.make_colony("F-01", yard=mine, gear=True)
    makers.make_colony("L-01", yard=far)
    makers.put(shed, {"box-medium-10": 12})
    makers.put(far, {"box-medium-10": 3})
    people = {
        "keeper": keeper,
        "helper": makers.make_person("helper", role=HELPER, yards=[mine, shed]),
        "elsewhere": makers.make_person("elsewhere", role=HELPER, yards=[far]),
        "reader": makers.make_person("reader", role=READER, yards=[mine]),
    }
    return {"people": people, "yard": mine, "colony": colony, "rows": rows_of(people, shed, mine)}


def rows_of(people, shed, mine):
    """{first word of an address's name, or the whole of it: number of a row that lies in the helper's yard}."""
    told = {"day": makers.DAY, "who": people["helper"]}
    boxes = {"source": shed, "lines": [Line("box-medium-10", 4)], **told}
    moved = ledger.move(target=mine, key="moved", **boxes)
    lent = ledger.lend(to="Invented neighbor", key="lent", **{**boxes, "source": mine})
    dead = makers.make_dead_colony(tag="F-02", yard=mine)
    seen = {"cause": "starved", "brood_seen": True, "into": mine, "pieces": []}
    work_deadout(colony=dead, key="dead", **seen, **{**told, "day": dead.ended_on})
    count = counting.begin(location=mine, key="count", **told)
    return {
        "order": makers.make_order().pk,
        "books": moved.pk,
        "person": people["reader"].pk,
        "act-get-back": lent.loan.pk,
        "deadout": Deadout.objects.get().pk,
        "count": count.pk,
    }


def path_to(name, world):
    """The address of that name in the helper's yard."""
    right, given = RIGHTS[name], {}
    for argument in PATTERNS[name].pattern.converters:
        if argument == right.yard:
            given[argument] = world["yard"].code
        elif argument == right.colony:
            given[argument] = world["colony"].pk
        else:
            rows = world["rows"]
            given[argument] = rows.get(name, rows.get(name.split("-")[0], 1))
    path = reverse(name, kwargs=given)
    return f"{path}?yard={world['yard'].code}" if name.startswith("act-") and not given else path


def bound(name):
    """Whether the address names a yard, or what was booked there: then it is closed to a helper who works elsewhere."""
    right = RIGHTS[name]
    return (
        name in OF_A_YARD
        or bool(right.yard or right.colony)
        or (name.startswith("act-") and not PATTERNS[name].pattern.converters)
    )


def is_open(name, who, method):
    """What the table says of one address, one person and one way to ask."""
    right = RIGHTS[name]
    if right.door or who == "keeper":
        return True
    if who == "reader":
        return READER in right.roles and method == "get"
    if who == "elsewhere":
        return HELPER in right.roles and not bound(name)
    return HELPER in right.roles


def sign_in(person):
    client = Client()
    client.force_login(person)
    return client


def test_every_address_has_a_name_and_a_row_and_every_row_an_address():
    assert all(pattern.name for _route, pattern in addresses())
    assert set(PATTERNS) == set(RIGHTS)


def test_no_name_stands_for_two_addresses():
    names = [pattern.name for _route, pattern in addresses()]
    assert len(names) == len(set(names))


def test_every_row_is_open_to_the_keeper():
    assert all(right.door or KEEPER in right.roles for right in RIGHTS.values())


@pytest.mark.parametrize("name", sorted(RIGHTS))
def test_an_address_is_open_to_whom_the_table_says_and_tells_no_more_than_is_theirs(name, world):
    path = path_to(name, world)
    for method in ("get", "post"):
        answers = {}
        for who, person in reversed(
            world["people"].items()
        ):  # the keeper last: what is sent may change something
            answers[who] = getattr(sign_in(person), method)(path)
            if answers[who].status_code == CLOSED:
                assert "Not yours to open" in answers[who].content.decode()
            elif who in ("helper", "reader"):
                told_nothing_else(answers[who])
        known = answers["keeper"].status_code != NO_SUCH_WAY
        shut = (CLOSED, NO_SUCH_WAY, *([NO_SUCH_ROW] if name in OF_A_YARD else []))
        passed = {who: answer.status_code not in shut for who, answer in answers.items()}
        assert passed == {who: known and is_open(name, who, method) for who in answers}, method


def told_nothing_else(answer):
    """No money and no yard or colony elsewhere on a page of a helper or reader."""
    if answer.headers.get("Content-Type", "").startswith("text/html"):
        page = answer.content.decode()
        assert MONEY.findall(re.sub(r"<[^>]+>", " ", page)) == []
        assert [words for words in ("Long Acre", "long-acre", "L-01") if words in page] == []


@pytest.mark.parametrize("name", sorted(name for name, right in RIGHTS.items() if not right.door))
def test_nobody_is_sent_to_the_door(name):
    place = {"yard": SimpleNamespace(code="fern-hollow"), "colony": SimpleNamespace(pk=1), "rows": {}}
    for method in ("get", "post"):
        answer = getattr(Client(), method)(path_to(name, place))
        assert answer.status_code == 302
        assert answer.url.startswith(reverse("sign-in"))

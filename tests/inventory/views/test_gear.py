"""The gear page: part by place, narrowed, summed, valued for the keeper, as of any day, in few questions."""

import pytest
from django.urls import reverse

from tests import makers
from tests.inventory.views.sending import text

pytestmark = pytest.mark.django_db
GEAR = reverse("gear")


@pytest.fixture(autouse=True)
def signed_in(keeper, shed, colony):
    makers.put(shed, {"box-deep-10": 2}, condition="to mend")


def parts(answer):
    return {row.part.code: row.quantity for row in answer.context["rows"]}


def row_of(answer, part):
    return next(row for row in answer.context["rows"] if row.part.code == part)


def test_a_part_opens_to_its_places(client):
    answer = client.get(GEAR)
    deep = row_of(answer, "box-deep-10")
    assert (deep.in_stores, deep.on_colonies, deep.quantity) == (10, 2, 12)
    words = text(answer)
    assert "Shed , store: 10 , of them 2 to mend" in words
    assert "On hives in Fern Hollow : 2" in words
    assert f"{reverse('gear-part', args=['box-deep-10'])}" in answer.content.decode()


def test_sums_count_pieces_and_leave_pounds_of_sugar_out(client):
    rows = client.get(GEAR).context["rows"]
    pieces = sum(row.quantity for row in rows if row.part.code != "sugar")
    assert f"{pieces} pieces" in text(client.get(GEAR))


@pytest.mark.parametrize(
    ("query", "expected"),
    [
        ("kind=box", {"box-deep-10": 12, "box-deep-8": 3}),
        ("depth=medium", {"comb-medium-honey": 40}),
        ("place=shed&kind=box", {"box-deep-10": 10, "box-deep-8": 3}),
        ("place=fern-hollow&kind=box", {"box-deep-10": 2}),
        ("condition=to mend", {"box-deep-10": 2}),
        ("condition=held back", {}),
        ("day=2025-03-31", {}),
        ("day=2025-04-01&kind=feed", {"sugar": 50}),
    ],
)
def test_it_is_narrowed(client, query, expected):
    assert parts(client.get(f"{GEAR}?{query}")) == expected


def test_a_past_evening_shows_what_lay_there_then(client, moved):
    before = row_of(client.get(f"{GEAR}?day=2025-05-09"), "box-deep-10")
    after = row_of(client.get(f"{GEAR}?day=2025-05-10"), "box-deep-10")
    assert [place.yard for place in before.places] == ["shed", "fern-hollow"]
    assert [place.on_colonies for place in after.places] == [False, False, True]


def test_a_wrong_word_is_told_and_narrows_nothing(client):
    answer = client.get(f"{GEAR}?kind=chair&day=soon")
    assert "chair is not one of the available choices" in text(answer)
    assert "Enter a valid date" in text(answer)


def test_the_value_at_list_price_is_for_the_keeper(client, shed):
    """Twelve deeps at 26.00 are 312.00 (the catalogue's list price)."""
    words = text(client.get(f"{GEAR}?kind=box&place=shed"))
    assert "Value at list" in words and "260.00" in words
    client.force_login(makers.make_person("visitor", role="reader", yards=[shed]))
    assert "Value at list" not in text(client.get(GEAR))


def test_heads_sort(client):
    table = client.get(f"{GEAR}?sort=-quantity").context["table"]
    numbers = [row.record.quantity for row in table.rows]
    assert numbers == sorted(numbers, reverse=True)


def test_it_asks_the_database_no_more_for_more_gear(client, shed, django_assert_max_num_queries):
    for number in range(6):
        makers.put(makers.make_yard(f"yard-{number}x"), {"box-deep-10": 1, "floor-10": 2})
    with django_assert_max_num_queries(14):
        client.get(GEAR)


def test_empty_books_say_what_to_do(client, shed):
    assert "load your sheet first" in text(client.get(f"{GEAR}?day=2020-01-01"))

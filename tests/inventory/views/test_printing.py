"""Sheets to print: who gets which, what stands on them, no price, and a load listed as it is typed and never booked."""

import re
from urllib.parse import parse_qs, urlparse

import pytest
from django.urls import reverse

from apiary.models import Access
from inventory.deadouts.work import work_deadout
from inventory.models import Act, Count
from tests import makers
from tests.inventory.views.sending import text

pytestmark = pytest.mark.django_db
HOST = "shed.local:8000"
MONEY = re.compile(r"USD|\$|\b\d[\d,]*\.\d\d\b")
LOAD = {"n__box-deep-10__sound": "6", "n__comb-medium-honey__sound": "0", "target": "fern-hollow"}


@pytest.fixture(autouse=True)
def any_host(settings):
    settings.ALLOWED_HOSTS = ["*"]


def shown(client, name, *args, **asked):
    answer = client.get(reverse(name, args=args), asked, headers={"host": HOST})
    assert answer.status_code == 200
    return answer


def addresses(answer):
    return [leaf.address for leaf in answer.context["leaves"]]


def as_helper(client, *yards):
    client.force_login(makers.make_person("helper", role=Access.Role.HELPER, yards=yards))


def test_a_yards_sheet_has_its_hives_its_store_the_way_in_and_the_caution(
    client, keeper, colony, deadout, yard
):
    yard.gate, yard.emergency, yard.access = "4417", "218 Fern Lane", "Second gate"
    yard.save()
    makers.put(yard, {"box-medium-10": 14})
    answer = shown(client, "print-yard", "fern-hollow")
    page = text(answer)
    for words in (
        "4417",
        "218 Fern Lane",
        "Second gate",
        "Caution: stings and lifting",
        "Medium box, 10 frames",
    ):
        assert words in page, words
    assert page.count("F-01") == 1 and page.count("F-02") == 1 and "Close it against robbing" in page
    assert addresses(answer) == [f"http://{HOST}/yards/fern-hollow/"]


def test_all_yards_come_in_one_print_without_the_shed(client, keeper, shed, yard):
    makers.make_yard("long-acre")
    answer = shown(client, "print-yards")
    assert [leaf.name for leaf in answer.context["leaves"]] == ["Fern Hollow", "Long Acre"]


def test_with_no_yard_the_page_says_so(client, keeper):
    assert "nothing to print here yet" in text(shown(client, "print-yards"))


def test_a_helper_prints_only_the_yards_given_to_them(client, keeper, shed, yard, colony, deadout):
    far = makers.make_yard("long-acre")
    makers.make_dead_colony(tag="L-01", yard=far, gear=True)
    makers.make_colony("L-02", yard=far, hive_set="nuc-5", gear=True)
    as_helper(client, yard)
    for name in ("print-yards", "print-deadouts"):
        page = text(shown(client, name))
        assert (
            "Fern Hollow" in page and "Long Acre" not in page and "L-01" not in page and "Nuc box" not in page
        )
    for name, arg in (("print-yard", "long-acre"), ("print-count", "shed"), ("print-count", "long-acre")):
        assert client.get(reverse(name, args=[arg])).status_code == 403
    assert client.get(reverse("print-haul"), {"source": "shed"}).status_code == 403


def test_no_sheet_tells_a_price(client, keeper, shed, yard, colony, deadout):
    pages = [shown(client, name) for name in ("print-yards", "print-deadouts")]
    pages += [shown(client, "print-count", "shed", how="booked"), shown(client, "print-deadout", deadout.pk)]
    pages += [shown(client, "print-haul", source="shed", **LOAD)]
    assert [MONEY.findall(text(page)) for page in pages] == [[]] * len(pages)


def test_a_count_sheet_is_blind_unless_the_book_is_asked_for(client, keeper, shed):
    makers.put(shed, {"excluder-10": 8765})
    blind, beside = (text(shown(client, "print-count", "shed", **how)) for how in ({}, {"how": "booked"}))
    assert "8765" not in blind and "Queen excluder" in blind
    assert "8765" in beside
    assert Count.objects.count() == 0


def test_a_count_sheet_takes_the_boxes_on_hives_along(client, keeper, yard, colony):
    answer = shown(client, "print-count", "fern-hollow", hives="boxes", how="booked")
    assert text(answer).count("F-01") == 1 and "Boxes on hives" in text(answer)
    assert addresses(answer) == [f"http://{HOST}/acts/correct/?yard=fern-hollow"]


def test_a_load_is_listed_as_it_was_typed_and_nothing_is_booked(client, keeper, shed, yard):
    acts = Act.objects.count()
    sent = client.post(f"{reverse('print-haul')}?source=shed", {**LOAD, "key": "k", "note": "n"})
    assert sent.status_code == 302
    assert parse_qs(urlparse(sent.url).query) == {
        "source": ["shed"],
        "target": ["fern-hollow"],
        "n__box-deep-10__sound": ["6"],
    }
    page = text(client.get(sent.url))
    assert "To Fern Hollow" in page and "Deep box, 10 frames" in page and "Strap every stack" in page
    assert "honey comb" not in page
    assert Act.objects.count() == acts


def test_the_picture_of_a_short_load_opens_it_with_its_numbers(client, keeper, shed, yard):
    answer = shown(client, "print-haul", source="shed", **LOAD)
    (address,) = addresses(answer)
    act = client.get(address.removeprefix(f"http://{HOST}"))
    assert act.context["form"]["n__box-deep-10__sound"].value() == 6
    assert len(address) <= 180


def test_the_picture_of_a_long_load_opens_the_place_alone(client, keeper, shed, yard):
    more = {f"n__{code}__sound": "3" for code in ("box-deep-8", "comb-medium-honey", "sugar", "excluder-10")}
    (address,) = addresses(shown(client, "print-haul", source="shed", **{**LOAD, **more}))
    assert address == f"http://{HOST}/acts/move/?source=shed"


def test_a_load_for_several_yards_has_a_list_for_each(client, keeper, shed, yard):
    makers.make_yard("long-acre")
    query = "source=shed&stops=fern-hollow&stops=long-acre&n__fern-hollow@box-deep-10__sound=3"
    query += "&n__long-acre@box-deep-10__sound=2&n__long-acre@sugar__sound=20"
    answer = client.get(f"{reverse('print-haul')}?{query}")
    stops = answer.context["leaves"][0].told["load"].stops
    assert [(str(stop.place), [line.pieces for line in stop.lines]) for stop in stops] == [
        ("Fern Hollow", [3]),
        ("Long Acre", [2, 20]),
    ]


def test_boxes_full_of_honey_are_told_and_weighed(client, keeper, shed, yard):
    plain, full = (
        shown(client, "print-haul", source="shed", **LOAD, **more)
        for more in ({}, {"full__box-deep-10__sound": "4"})
    )
    pounds = [page.context["leaves"][0].told["load"].weighed.load.lb for page in (plain, full)]
    assert pounds[1] > pounds[0] + 200 and "4 of them full" in text(full)


def test_over_the_truck_and_held_back_are_cautioned(client, keeper, shed, yard):
    makers.put(shed, {"box-deep-10": 2}, condition="held back")
    heavy = text(shown(client, "print-haul", source="shed", target="fern-hollow", n__sugar__sound="900"))
    assert "Caution: more than the truck takes" in heavy and "Caution: disease" not in heavy
    held = text(
        shown(client, "print-haul", source="shed", **{"target": "fern-hollow", "n__box-deep-10__held": "1"})
    )
    assert "Caution: disease" in held


def test_a_load_of_nothing_or_of_nonsense_lists_nothing(client, keeper, shed):
    for asked in (
        {},
        {"n__box-deep-10__sound": "lots"},
        {"n__nothing__sound": "3"},
        {"n__sugar__sound": "9" * 5000},
    ):
        assert "nothing to print here yet" in text(shown(client, "print-haul", source="shed", **asked))


def test_the_haul_page_offers_the_list(client, keeper, shed, yard):
    page = client.get(f"{reverse('act-move')}?source=shed").content.decode()
    assert f'formaction="{reverse("print-haul")}?source=shed"' in page


def test_a_deadout_sheet_asks_first_that_the_hive_is_closed_and_lists_its_pieces(client, keeper, deadout):
    answer = shown(client, "print-deadout", deadout.pk)
    page = text(answer)
    closed, foulbrood = page.index("closed against robbing"), page.index("Caution: foulbrood")
    assert closed < foulbrood < page.index("Deep box, 10 frames")
    for word in ("Store", "Mend", "Hold", "Scrap", "Burn", "mites and virus", "call the bee inspector"):
        assert word in page, word
    assert addresses(answer) == [f"http://{HOST}/acts/deadout/?colony={deadout.pk}"]


def test_all_that_wait_have_their_sheet_and_one_is_left_to_write_the_tag_on(client, keeper, colony, deadout):
    worked = makers.make_dead_colony(tag="F-03", yard=deadout.yard, gear=True)
    seen = {"cause": "starved", "brood_seen": True, "into": deadout.yard, "pieces": [], "key": "worked"}
    work_deadout(colony=worked, day=worked.ended_on, who=None, **seen)
    leaves = shown(client, "print-deadouts").context["leaves"]
    assert [leaf.name for leaf in leaves] == ["F-02", "A hive not known yet"]


def test_the_paper_is_letter_for_dollars_and_a_choice_is_kept(client, keeper, yard):
    assert 'class="printed letter"' in shown(client, "print-yards").content.decode()
    assert 'class="printed a4"' in shown(client, "print-yards", paper="a4").content.decode()
    assert 'class="printed a4"' in shown(client, "print-yard", "fern-hollow").content.decode()


def test_from_the_machine_itself_the_page_cautions_that_no_phone_gets_there(client, keeper, yard):
    page = client.get(reverse("print-yards"), headers={"host": "localhost:8000"}).content.decode()
    assert "no phone can open" in page and "no phone can open" not in text(shown(client, "print-yards"))


def test_what_does_not_exist_is_not_found(client, keeper):
    for name, arg in (("print-yard", "nowhere"), ("print-count", "nowhere"), ("print-deadout", 999)):
        assert client.get(reverse(name, args=[arg])).status_code == 404

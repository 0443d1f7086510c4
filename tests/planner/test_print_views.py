"""Planned loads on paper: a leaf each, of one week or of all, only of yards that are theirs, without a price."""

from dataclasses import replace

import pytest
from django.urls import reverse

from apiary.rights import HELPER
from tests import makers
from tests.planner import made
from tests.planner.after import made as after_made
from tests.planner.pages import text

SECTION = after_made.section()


@pytest.fixture
def run(db):
    return made.make_done_run(report=replace(made.make_report(), after=SECTION))


def printed(client, run, **asked):
    answer = client.get(reverse("run-after-print", args=[run.pk]), asked)
    assert answer.status_code == 200
    return answer


def leaves(answer):
    return [(leaf.kind, leaf.name) for leaf in answer.context["leaves"]]


def test_each_load_is_a_leaf_with_its_lines_its_weight_and_the_caution(keeper, run):
    answer = printed(keeper, run)
    assert leaves(answer) == [(f"Load {load.number}", load.yard_name) for load in SECTION.loads]
    page = text(answer)
    for words in (
        "30 × box medium 10",
        "285 of 1,000 lb, 41 of 50 cubic ft",
        "Strap every stack",
        "Straps pulled",
        "on a due visit",
    ):
        assert words in page, words


def test_one_week_alone_is_printed_where_it_is_told(keeper, run):
    day = SECTION.loads[0].day
    expected = [load.number for load in SECTION.loads if load.day == day]
    assert leaves(printed(keeper, run, week=day.isoformat())) == [
        (f"Load {load.number}", load.yard_name) for load in SECTION.loads if load.number in expected
    ]
    assert "nothing to print here yet" in text(printed(keeper, run, week="some day"))


def test_a_helper_prints_the_loads_of_their_yards_only(client, run):
    mine = SECTION.loads[0]
    yard = makers.make_yard(mine.yard, name=mine.yard_name)
    client.force_login(makers.make_person("helper", role=HELPER, yards=[yard]))
    names = {name for _kind, name in leaves(printed(client, run))}
    assert names == {mine.yard_name} and {load.yard_name for load in SECTION.loads} != names


def test_no_price_stands_on_it(keeper, run):
    page = text(printed(keeper, run))
    assert "$" not in page and "USD" not in page


def test_a_run_that_is_not_done_has_nothing_to_print(keeper, db):
    assert "nothing to print here yet" in text(printed(keeper, made.make_run()))


def test_the_page_of_loads_leads_to_it(keeper, run):
    page = keeper.get(reverse("run-after", args=[run.pk])).content.decode()
    assert reverse("run-after-print", args=[run.pk]) in page

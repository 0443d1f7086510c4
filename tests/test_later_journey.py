"""A season under way: approved, part received, bees lost and split, planned again, a what-if taken over. All invented."""

import datetime as dt
from decimal import Decimal

import pytest
from django.utils import timezone

from apiary import colonies
from apiary.models import Colony
from inventory import ledger
from planner import queue, runs, variants
from planner.models import Run
from planner.plan.json_form import report_from
from planner.requirement.season_gear import plain
from tests.planner import outfit

SMALL = {"scenarios": 3, "seed": 3, "seconds": 30, "trial": 0}
LATER = dt.date(2025, 5, 14)


def worked(run):
    """The run worked as the worker does it."""
    taken = queue.take("test", timezone.now())
    assert taken.pk == run.pk
    beat = queue.Beat(taken)
    done = runs.work(taken, progress=beat, cancelled=beat.cancelled)
    assert done.status == Run.Status.DONE, done.message
    return done


def pieces(lines):
    found: dict = {}
    for line in lines:
        for part in line.parts:
            found[plain(part.part)] = found.get(plain(part.part), 0) + part.units
    return found


def two_die_and_one_is_split():
    first, second, mother = Colony.objects.order_by("pk")[:3]
    for colony in (first, second):
        colonies.end(colony, why=Colony.Ended.DIED, day=dt.date(2025, 3, 10), who=None)
    colonies.split(
        mother,
        tag="daughter",
        yard=mother.yard,
        hive_set=mother.hive_set,
        day=dt.date(2025, 4, 28),
        who=None,
    )


@pytest.mark.long
def test_a_season_is_planned_again_and_what_was_supposed_of_it_taken_over(db):
    outfit.make_outfit()
    season = outfit.make_season()
    first = worked(runs.ask(season, who=None, now=timezone.now(), **SMALL))
    came, *still_owed = runs.approve(first, who=None, on=season.starts_on)
    assert still_owed
    ledger.receive(order=came, into=outfit.shed(), day=came.due_on, who=None, key="came")
    two_die_and_one_is_split()

    again = worked(runs.ask(season, who=None, now=timezone.now(), day=LATER, **SMALL))
    since = variants.changes_since(again)
    assert since.since == f"run {first.pk}"
    assert (since.spend_before, since.spend_now) == tuple(
        report_from(run.report).spend for run in (first, again)
    )
    said = "\n".join(since.causes)
    # twelve colonies, of which the middle region's answer lets 0.7 through: eight, to the nearest
    assert "The winter is counted: 10 of 12 colonies came through, where 8 were expected." in said
    assert "1 split was made since and counts." in said
    assert "11 colonies live, 12 before." in said

    assert_gear_told(first, again, came, said)
    take_over_a_what_if(season, again)


def assert_gear_told(first, again, came, said):
    """What came is in the books and told so; what is owed is on the way, told so, and not bought again."""
    lines = report_from(first.report).lines
    arrived = {line.offer.code for line in came.lines.select_related("offer")}
    here = pieces(line for line in lines if line.offer in arrived)
    owed = pieces(line for line in lines if line.offer not in arrived)
    assert here and owed and again.books["on_order"] == owed
    owned = [run.books["owned"] for run in (first, again)]
    assert {part: owned[1][part] - owned[0].get(part, 0) for part in here} == here
    told = {sentence.split(":")[0]: sentence for sentence in said.splitlines()}
    for words, found in (
        ("Newly on the way, and not bought again", owed),
        ("More in the books than before", here),
    ):
        named = [f"{count} × {again.books['parts'][part]}" for part, count in found.items()]
        assert len(named) <= 8 and all(name in told[words] for name in named)
    # the two that died stood in 20 combs each; what is on them counts again once it is salvaged
    assert "40 × deep drawn brood comb" in told["Fewer in the books than before"]


def take_over_a_what_if(season, again):
    """Supposed beside, laid side by side, never approved; taken over it is the season's own and comes to the same."""
    wanted = {"answers": {"target_colonies": 20}, "budget": Decimal(900)}
    supposed = worked(variants.ask_what_if(again, wanted, who=None, now=timezone.now()))
    page = variants.beside([again, supposed])
    spends = [report_from(run.report).spend for run in (again, supposed)]
    assert [cell.cost for cell in page.spend.cells] == spends
    assert page.spend.cells[1].more == spends[1] - spends[0]
    assert spends[1] <= 900 and [column.budget for column in page.columns] == [2000, 900]
    with pytest.raises(runs.PLAIN_REFUSALS):
        runs.approve(supposed, who=None, on=LATER)

    variants.take_over(supposed)
    season.refresh_from_db()
    assert (season.answers["target_colonies"], season.budget_cents) == (20, 90_000)
    taken = worked(runs.ask(season, who=None, now=timezone.now(), day=LATER, **SMALL))
    assert report_from(taken.report).spend == spends[1]
    assert runs.approvable(taken).spend == spends[1]

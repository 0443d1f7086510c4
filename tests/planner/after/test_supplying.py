"""What comes into the shed: stock, orders with their lead, what is bought in season; and what it uses up itself."""

from planner.after.supplying import bought, drawn_from, in_season, stock_at_shed, wants_of_shed, weeks_landing
from planner.plan.facts import Facts
from planner.plan.lines import supplier_orders
from planner.plan.words import week_day


def days_due(facts):
    """(offer, period) -> the day the order's own pages tell: the line's, or its order's where that is sooner."""
    return {
        (line.offer, order.period): min(line.due_on, order.due_on)
        for order in supplier_orders(facts)
        for line in order.lines
    }


def test_packs_come_in_the_week_the_order_says_they_are_due(after):
    facts: Facts = after.facts
    lands = weeks_landing(facts)
    rows = bought(facts.problem, facts.plan, lands)
    days = days_due(facts)
    assert days and any(
        line.order_by > facts.start for order in supplier_orders(facts) for line in order.lines
    )
    for line in facts.plan.here_and_now:
        week = lands[line.offer, line.period]
        due = days[line.offer, line.period]
        assert week_day(facts.start, week - 1) < due <= week_day(facts.start, week)
        assert week >= line.period + facts.offers[line.offer].lead_periods
        for part, units in facts.offers[line.offer].parts.items():
            assert (part, week, round(units * line.packs)) in rows


def test_the_bench_never_has_gear_of_the_order_before_the_order_page_says_it_arrives(after):
    facts = after.facts
    sooner = {part for part, week, _n in stock_at_shed(facts.problem)} | {
        part for part, _week, _n in in_season(facts.problem, facts.plan)
    }
    due: dict = {}
    for (offer, _period), day in days_due(facts).items():
        for part in facts.offers[offer].parts:
            due[part] = min(day, due.get(part, day))
    told = [
        (job, part)
        for job in after.answer.bench.told(
            {recipe.code: recipe.name for recipe in facts.operation.recipes}, facts.start
        ).jobs
        for recipe in facts.problem.recipes
        if recipe.code == job.recipe
        for part in recipe.takes
        if part in due and part not in sooner
    ]
    assert told and all(job.gear_there_on >= due[part] for job, part in told)


def test_combs_are_drawn_from_framed_foundation_of_their_depth(after):
    drawn = drawn_from(after.facts.problem)
    assert drawn["comb-medium-honey"] == "frame-medium-foundation"
    assert all(frame.split("-")[1] == comb.split("-")[1] for comb, frame in drawn.items())


def test_only_stock_of_the_shed_is_the_sheds(after):
    rows = stock_at_shed(after.facts.problem)
    assert ("box-medium-10", 0, 40) in rows and not any(
        n == 12 for part, _w, n in rows if part == "box-medium-10"
    )


def test_what_is_bought_in_season_is_whole_and_comes_after_the_order(after):
    rows = in_season(after.facts.problem, after.facts.plan)
    assert rows and all(isinstance(pieces, int) and pieces > 0 for _part, _week, pieces in rows)
    assert all(week > 0 for part, week, _pieces in rows if part in after.gear)


def test_the_shed_wants_combs_for_moth_and_only_gear(after):
    wants = wants_of_shed(after.facts.problem, after.facts.plan, after.gear)
    assert {want.yard for want in wants} == {"shed"}
    assert any(want.part.startswith("comb-") for want in wants)
    assert not {want.part for want in wants} & {"jar", "bucket", "sugar"}

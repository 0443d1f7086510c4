"""What comes into the shed: stock, orders with their lead, what is bought in season; and what it uses up itself."""

from planner.after.supplying import bought, drawn_from, in_season, stock_at_shed, wants_of_shed
from planner.plan.facts import Facts


def test_packs_come_in_their_delivery_week(after):
    facts: Facts = after.facts
    offers = facts.offers
    for line in facts.plan.here_and_now:
        for part, units in offers[line.offer].parts.items():
            assert (part, line.period + offers[line.offer].lead_periods, round(units * line.packs)) in bought(
                facts.problem, facts.plan
            )


def test_no_job_begins_before_its_gear_is_delivered(after):
    first = {part: week for part, week, _n in bought(after.facts.problem, after.facts.plan)}
    lying = {part for part, week, _n in stock_at_shed(after.facts.problem) if week == 0}
    for job in after.answer.bench.jobs:
        part = f"{job.code.removeprefix('assemble-')}-flat"
        if part in first and part not in lying:
            assert job.release >= first[part]


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

"""Reasons in a keeper's words, against a season worked out by hand (see small.py)."""

from decimal import Decimal
from types import SimpleNamespace

import pytest

from planner.plan import report_of
from planner.plan.beliefs import beliefs_of
from planner.plan.reasons import chain_words
from tests.planner.plan import small


def why(number=1, operation=None, assumptions=None, problem=None, plan=None):
    made = report_of(
        operation or small.operation(),
        assumptions or small.assumptions(),
        problem or small.problem(),
        plan or small.plan(),
    )
    return made.lines[number - 1].why


def test_short_without_the_line_is_counted_season_by_season():
    """Ten boxes owned: seasons asking for 12 and 20 run short; 16 does not, for deadouts give 7 back before."""
    assert why().short_in_100 == 50
    assert why().short_yards == ("Creek",)
    assert why().short_words == "mid May"


def test_a_bag_no_season_can_do_without_is_short_in_every_season():
    assert why(2).short_in_100 == 100
    assert "Without this line you run short in every season, first at Creek in early September" in why(2).text


def test_what_is_owned_tells_sound_to_mend_and_held_back_apart():
    assert "You have 10 ten-frame medium boxes in store" in why().text
    assert "2 more need mending and 1 is held back, not counted" in why().text
    box = next(each for each in why().owned if each.part == small.BOX)
    assert (box.sound, box.to_mend, box.held, box.on_colonies, box.on_order) == (10, 2, 1, 12, 0)


def test_what_is_on_the_way_is_netted_off_with_its_day():
    said = why(operation=small.operation(on_order=small.on_order(4))).text
    assert "4 are on the way, due 1 February 2027" in said


def test_boxes_on_colonies_beyond_their_sets_are_told():
    stock = [
        {"part": small.BOX, "location": "shed", "quantity": 10},
        {"part": small.BOX, "location": "creek", "quantity": 3},
    ]
    said = why(problem=small.problem(stock=stock)).text
    assert "and 3 spare on colonies" in said


def test_the_peak_is_told_in_words_of_the_calendar_with_its_spread_and_yards():
    said = why().text
    assert (
        "The season asks for 14 ten-frame medium boxes at once in early June (8 to 20 in most years) for supers"
        in said
    )
    assert "at Creek and Hill" in said
    assert "deadouts should give back 2 by then" in said  # 7 in one season of four: 1.75


def test_what_is_used_up_is_told_for_the_whole_season():
    assert "The season uses up 45 lb (30 to 60 in most years) at Creek" in why(2).text
    assert why(2).peak.week is None


def test_the_reason_says_what_it_costs_to_wait_for_the_season():
    assert "what you then buy in season costs $0.95 a lb instead of $0.62" in why(2).text


def test_the_beliefs_a_line_rests_on_are_told_and_own_answers_marked():
    assert "This assumes that 70\N{NO-BREAK SPACE}% of colonies come through the winter" in why().text
    assert "(all defaults)" in why().text
    said = why(assumptions=small.assumptions(survival_share=0.72)).text
    assert "72\N{NO-BREAK SPACE}% of colonies come through the winter (your answer)" in said
    assert "the rest are defaults" in said


def test_one_answer_at_its_default_is_no_plural():
    said = beliefs_of(("reducer",), small.assumptions())[0]
    assert said.endswith("come through the winter (the default).")


@pytest.mark.parametrize(
    ("code", "words"),
    [
        ("frame-deep-flat", "deep frames (drawn or with foundation)"),
        ("foundation-deep", "sheets of deep foundation (in frames, drawn or not)"),
    ],
)
def test_sheets_are_not_called_frames_where_combs_are_renewed_in_the_frames_there_are(code, words):
    part = SimpleNamespace(kind=code.partition("-")[0], depth="deep")
    facts = SimpleNamespace(parts={code: part}, chain=lambda _code: {code: 1, "comb-deep-brood": 1})
    assert chain_words(code, facts) == words


def test_survival_out_of_the_keepers_winters_is_called_their_average():
    winters = "60/44, 72/58, 70/38, 66/50"
    said = why(assumptions=small.assumptions(winters=winters)).text
    assert "(the average of your 4 winters, held towards the published figures)" in said
    said = why(assumptions=small.assumptions(winters=winters, survival_share=0.6)).text
    assert "60\N{NO-BREAK SPACE}% of colonies come through the winter (your answer)" in said


def test_boxes_made_ahead_of_any_need_are_not_counted_as_needed():
    """A plan may assemble all it buys on the first free evening: what no use takes is no shortage."""
    scenarios = [small.solved(number, wanted) for number, wanted in enumerate(small.WANTED)]
    for scenario in scenarios:
        scenario["made"] = [{"recipe": "assemble-box-medium-10", "period": 3, "units": 10}]
    assert why(plan=small.plan(scenarios=scenarios)).short_in_100 == 50


def test_a_piece_taken_to_the_bench_early_is_missed_where_it_is_used():
    """Boxes in pieces are also used as they are, in week 40: built in week 5 they are missed in week 24."""
    data = small.problem_data()
    crate = {"code": "crate/creek", "location": "creek", "first": 40, "last": 40, "units": 1, "value": 1}
    data["scenarios"][3]["uses"].append({**crate, "spends": {small.FLAT: 1}})
    scenarios = [small.solved(number, wanted) for number, wanted in enumerate(small.WANTED)]
    scenarios[3]["made"] = [{"recipe": "assemble-box-medium-10", "period": 5, "units": 10}]
    scenarios[3]["served"].append({"use": "crate/creek", "units": 1})
    problem = small.problem(scenarios=data["scenarios"])
    assert why(problem=problem, plan=small.plan(scenarios=scenarios)).short_words == "mid May"


def test_a_line_that_brings_shipping_to_nothing_says_what_that_saves():
    suppliers = [{"code": "north", "order_fee": 24, "free_from": 170}]
    stock = [
        {"part": small.BOX, "location": "shed", "quantity": 40},
        {"part": "sugar", "location": "shed", "quantity": 0},
    ]
    plan = small.plan(fees=[], spend=176.0)
    said = why(problem=small.problem(suppliers=suppliers, stock=stock), plan=plan).text
    assert "No season runs short without it" in said
    assert "brings the order to free shipping and saves $24.00" in said


def test_a_line_no_season_needs_says_so_and_does_not_invent_a_need():
    stock = [{"part": small.BOX, "location": "shed", "quantity": 40}]
    said = why(problem=small.problem(stock=stock)).text
    assert "No season runs short without it" in said and "run short in" not in said


def test_a_kit_tells_all_it_brings():
    kit = {
        "code": "north-box",
        "supplier": "north",
        "parts": {small.FLAT: 5, "guard-10": 5},
        "prices": [{"from_packs": 1, "price": 72.5}],
        "lead_periods": 3,
    }
    data = small.problem_data()
    data["offers"][0] = kit
    made = report_of(
        small.operation(), small.assumptions(), small.problem(offers=data["offers"]), small.plan()
    )
    line = made.lines[0]
    assert [part.units for part in line.parts] == [10, 10]
    assert line.why.text.startswith("Buy 10 ten-frame medium boxes in pieces and 10 ten-frame mouse guards.")
    assert line.cost == Decimal("145.00")
    assert line.why.short_in_100 == 50

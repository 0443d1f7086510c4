"""Cautions follow what is bought and owned; each names the harm."""

from dataclasses import replace

from planner.plan import report_of
from planner.season.operation import PartFacts
from tests.planner.plan import small


def heads(operation=None, problem=None, plan=None):
    made = report_of(
        operation or small.operation(), small.assumptions(), problem or small.problem(), plan or small.plan()
    )
    return {caution.head.removeprefix("Caution: "): caution.text for caution in made.cautions}


def test_boxes_sugar_and_pieces_to_nail_bring_their_cautions():
    assert {"lifting", "feeding", "workshop", "loads", "stings and smoke"} <= heads().keys()
    assert "1,500 lb" in heads()["loads"]


def test_held_back_gear_sends_to_the_inspector_and_trusts_no_freezer():
    said = heads()["held-back gear"]
    assert said.startswith("1 piece is held back") and "inspector" in said
    assert "Freezing does not free gear of foulbrood" in said
    clean = small.operation(stock=small.operation().stock[:1])
    assert "held-back gear" not in heads(operation=clean)


def test_gear_of_deadouts_in_the_plan_brings_the_foulbrood_question():
    assert "foulbrood" in heads()["second-hand comb and deadout gear"]
    data = small.problem_data()
    for scenario in data["scenarios"]:
        scenario["arrivals"] = []
    assert "second-hand comb and deadout gear" not in heads(
        problem=small.problem(scenarios=data["scenarios"])
    )


def test_treatments_send_to_the_label():
    treatment = PartFacts(code="treatment", name="mite treatment, one dose", kind="consumable", unit="dose")
    parts = tuple(part for part in small.operation().parts if part.code != "sugar")
    facts = small.operation(parts=(*parts, replace(treatment, code="treatment-a"), treatment))
    data = small.problem_data()
    data["parts"].append({"code": "treatment"})
    data["offers"][1]["parts"] = {"treatment": 10}
    data["scenarios"] = [each | {"uses": each["uses"][:-1]} for each in data["scenarios"]]
    scenarios = [small.solved(number, wanted) for number, wanted in enumerate(small.WANTED)]
    for scenario in scenarios:
        scenario["served"] = [line for line in scenario["served"] if not line["use"].startswith("feed")]
        scenario["later"] = []
    data = small.problem_data(**{key: data[key] for key in ("parts", "offers", "scenarios")})
    said = heads(facts, small.problem(**data), small.plan(scenarios=scenarios))
    assert "label" in said["treatments"] and "expires" in said["treatments"]
    assert "feeding" not in said


def test_an_order_of_nothing_still_warns_of_stings():
    plan = small.plan(here_and_now=[], fees=[], spend=0)
    assert "stings and smoke" in heads(plan=plan) and "loads" not in heads(plan=plan)

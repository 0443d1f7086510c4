"""Cautions that go with an order: where the work it brings can hurt people, bees or the neighbours' bees.

Takes the facts of a plan; gives those that apply to what is bought or owned. Common practice, no source, where
none is named.
"""

from inventory.gear import Condition
from planner.plan.records import Caution
from planner.plan.words import number

LIFTING = Caution(
    head="Caution: lifting",
    text="A full deep weighs 80 to 90 lb, a full medium 50 to 60 (from memory). Lift with two or with a hoist, "
    "and take frames out one by one where you are alone.",
)
STINGS = Caution(
    head="Caution: stings and smoke",
    text="Work with veil and gloves at hand, never alone where anyone is allergic; know the yard's emergency "
    "address. Put the smoker out before it goes in the truck.",
)
TREATMENT = Caution(
    head="Caution: treatments",
    text="Read and follow the label: dose, weather, supers on or off, days before harvest, expiry. Only products "
    "registered where you keep bees. Wear what the label says. Buy no more than you use before it expires.",
)
DISEASE = Caution(
    head="Caution: held-back gear",
    text="{held} held back for suspected disease and left out of this order. Keep such gear apart: "
    "your bee inspector and local rules decide. Freezing does not free gear of foulbrood.",
)
COMB = Caution(
    head="Caution: second-hand comb and deadout gear",
    text="This order counts on gear of colonies that die in winter. Close a deadout at once, have its brood looked "
    "at by someone who knows foulbrood, and ask your inspector when in doubt: then order without that gear.",
)
LOADS = Caution(
    head="Caution: loads",
    text="The truck carries {truck} lb by your own figure. Weigh or count before you leave, tie every stack down, "
    "and close or net hives that travel.",
)
WORKSHOP = Caution(
    head="Caution: workshop",
    text="Nailing, sawing and painting: eye guard on, air moving. Paint the outside only.",
)
SUGAR = Caution(
    head="Caution: feeding",
    text="Feed plain white sugar, inside the hive and towards evening; spilled syrup starts robbing. No feed while "
    "supers for sale are on. Never feed honey whose hive you do not know to be free of foulbrood.",
)


def cautions(facts, orders):
    bought = [facts.parts[unit.part] for order in orders for line in order.lines for unit in line.parts]
    kinds = {part.kind for part in bought}
    held = sum(line.quantity for line in facts.operation.stock if line.condition == Condition.HELD)
    told = [LIFTING] if kinds & {"box", "feed"} else []
    if any(part.kind == "consumable" and part.code.startswith("treatment") for part in bought):
        told.append(TREATMENT)
    if "feed" in kinds:
        told.append(SUGAR)
    if held:
        told.append(
            Caution(
                head=DISEASE.head,
                text=DISEASE.text.format(held=f"{number(held)} {'piece is' if held == 1 else 'pieces are'}"),
            )
        )
    if any(line.part in facts.parts for scenario in facts.problem.scenarios for line in scenario.arrivals):
        told.append(COMB)
    if any(part.flat for part in bought):
        told.append(WORKSHOP)
    if bought:
        told.append(Caution(head=LOADS.head, text=LOADS.text.format(truck=number(facts.operation.truck_lb))))
    return (*told, STINGS)

"""Recipes of the season: assembling with its small things, bees drawing comb; and the evenings there are for it.

Takes the operation's recipes and the uses; gives the sizing problem's recipes and work.
"""

from planner.requirement import values
from planner.requirement.tokens import DRAWING, RESTED
from planner.sizing.records import Recipe, Work

# What assembling uses up, a piece: judgement.
BOX_THINGS = {"paint": 1 / 12, "fasteners": 1, "glue": 1 / 50}
FRAME_THINGS = {"frame-nails": 1 / 100, "glue": 1 / 200}


def assembly_recipes(gear):
    """The catalogue's recipes, with paint, fasteners, glue and nails where the catalogue has them."""
    for facts in gear.operation.recipes:
        takes = {part: float(pieces) for part, pieces in facts.takes.items()}
        things = {}
        if any(part.startswith("box-") for part in facts.makes):
            things = BOX_THINGS
        elif any(part.startswith("frame-") and part.endswith("-flat") for part in facts.takes):
            things = FRAME_THINGS
        for part, pieces in things.items():
            if part in gear.parts and part not in takes:
                takes[part] = pieces
        yield Recipe(
            code=facts.code,
            takes=takes,
            makes={part: float(pieces) for part, pieces in facts.makes.items()},
            work_minutes=float(facts.minutes),
        )


def drawing_recipes(gear, needed):
    """A framed foundation, one frame of the colonies' drawing, some honey: a drawn comb. What is not drawn rests; a
    must at the flow's end asks for all of it rested, so that nothing is drawn in a dearth or saved for the next flow."""
    if RESTED not in needed:
        return
    yield Recipe(code="rest", takes={DRAWING: 1}, makes={RESTED: 1})
    for depth in ("deep", "medium", "shallow"):
        wanted = [use for use in ("honey", "brood") if f"comb-{depth}-{use}" in needed]
        for use in wanted:
            extra = f"-{use}" if len(wanted) > 1 and use == "brood" else ""
            yield Recipe(
                code=f"draw-{depth}{extra}",
                takes={f"frame-{depth}-foundation": 1, DRAWING: 1},
                makes={f"comb-{depth}-{use}": 1, RESTED: 1},
                cost=round(values.drawing_cost(gear.assumptions, depth), 4),
            )


def closure(needed, recipes):
    """The needed parts and all that they can be made of; and the recipes that make them."""
    needed, used = set(needed), []
    while True:
        more = [recipe for recipe in recipes if recipe not in used and needed & recipe.makes.keys()]
        if not more:
            return needed, [recipe for recipe in recipes if recipe in used]
        for recipe in more:
            used.append(recipe)
            needed |= recipe.takes.keys()


def evenings(answers):
    """The minutes of a week's evenings, every week alike."""
    weekly = answers.evenings_a_week * answers.evening_hours * 60
    return Work(minutes_per_period=(weekly,) * answers.weeks, cost_per_hour=answers.hour_value)

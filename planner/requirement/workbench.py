"""Recipes of the season: assembling with its small things, bees drawing comb; and the evenings there are for it.

Takes the operation's recipes and the uses; gives the sizing problem's recipes and work.
"""

from planner.requirement import values
from planner.requirement.uses import TOKEN
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
    """A framed foundation, one frame of the colonies' drawing, some honey: a drawn comb."""
    for depth in ("deep", "medium", "shallow"):
        wanted = [use for use in ("honey", "brood") if f"comb-{depth}-{use}" in needed]
        for use in wanted:
            extra = f"-{use}" if len(wanted) > 1 and use == "brood" else ""
            yield Recipe(
                code=f"draw-{depth}{extra}",
                takes={f"frame-{depth}-foundation": 1, TOKEN: 1},
                makes={f"comb-{depth}-{use}": 1},
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


def evenings(gear, uses, offers):
    """Minutes by period. Those of the weeks up to a beginning use, or up to the week before gear lands, are put in
    that one week: what they can build is the same, and the programme has far fewer weeks to look at."""
    answers = gear.assumptions
    weekly = answers.evenings_a_week * answers.evening_hours * 60
    ends = {use.first for use in uses if use.keeps} | {answers.weeks - 1}
    for offer in offers:
        ends |= {period + offer.lead_periods - 1 for period in offer.order_periods}
    minutes, waiting = [], 0.0
    for week in range(answers.weeks):
        waiting += weekly
        minutes.append(waiting if week in ends else 0.0)
        waiting = 0.0 if week in ends else waiting
    return Work(minutes_per_period=tuple(minutes), cost_per_hour=answers.hour_value)

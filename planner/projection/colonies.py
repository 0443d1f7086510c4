"""Colonies by week: who came through the winter, and what the deadouts give back.

Takes the operation's colony groups and a scenario; gives living classes and deadouts in whole colonies and pieces.
"""

from dataclasses import dataclass

from planner.projection.records import Deadouts
from planner.season.calendar import circuit_of, period_of

COMB_KINDS = ("frame",)


@dataclass(frozen=True, kw_only=True)
class Standing:
    """Colonies alike in yard, set and strength: so many until `found_week`, the survivors from then on."""

    yard: str
    hive_set: str
    strength: str
    before: int
    after: int
    found_week: int

    def at(self, week):
        return self.before if week < self.found_week else self.after


def standing_colonies(operation, assumptions, scenario):
    """One Standing a group. Deadouts are found at the yard's first visit from the spring week on."""
    spring = period_of(assumptions.start, assumptions.weeks, assumptions.spring_week)
    yards = {yard.code: yard for yard in operation.yards}
    return tuple(
        Standing(
            yard=group.yard,
            hive_set=group.hive_set,
            strength=group.strength,
            before=group.colonies,
            after=scenario.survivors[group.yard, group.hive_set, group.strength],
            found_week=circuit_of(yards[group.yard], assumptions).after(spring),
        )
        for group in operation.colonies
    )


def base_gear(group, set_facts):
    """What the group's hives hold as their set says, where the books have it; the set's own where they are silent."""
    wanted = {part: pieces * group.colonies for part, pieces in set_facts.gear.items()}
    if not group.gear:
        return wanted
    held = {}
    for part, pieces in wanted.items():
        plain = group.gear.get(part, 0)
        treated = group.gear.get(f"{part}-treated", 0)
        held[part] = min(pieces, plain + treated)
    return {part: pieces for part, pieces in held.items() if pieces}


def deadouts(operation, assumptions, standings):
    """What is found dead, with its gear: shares returning are rounded to whole pieces."""
    sets = {facts.code: facts for facts in operation.sets}
    parts = {part.code: part for part in operation.parts}
    found = []
    for group, standing in zip(operation.colonies, standings, strict=True):
        dead = standing.before - standing.after
        if dead <= 0:
            continue
        facts = sets[group.hive_set]
        held = {
            part: round_half_up(pieces * dead / group.colonies)
            for part, pieces in base_gear(group, facts).items()
        }
        returned = {
            part: round_half_up(pieces * _sound_share(parts.get(part), facts, assumptions))
            for part, pieces in held.items()
        }
        found.append(
            Deadouts(
                yard=group.yard,
                hive_set=group.hive_set,
                strength=group.strength,
                week=standing.found_week,
                colonies=dead,
                held=held,
                returned=returned,
                lost={part: held[part] - returned[part] for part in held},
                honey_lb=dead * assumptions.deadout_honey_lb,
            )
        )
    return tuple(found)


def _sound_share(part, set_facts, assumptions):
    """Combs suffer twice more: moth, and the oldest are culled while they are in hand."""
    share = assumptions.deadout_sound_share
    if part is not None and part.kind in COMB_KINDS:
        culled = min(1.0, assumptions.comb_culled / max(1, set_facts.width))
        share *= (1 - assumptions.comb_moth_share) * (1 - culled)
    return share


def round_half_up(number):
    return int(number + 0.5)


def allot(total, weights):
    """`total` whole pieces in proportion to weights, none above its weight where the total allows (largest rest)."""
    whole = sum(weights)
    if whole <= 0 or total <= 0:
        return [0] * len(weights)
    shares = [total * weight / whole for weight in weights]
    parts = [int(share) for share in shares]
    rests = sorted(range(len(weights)), key=lambda i: (parts[i] - shares[i], i))
    for i in rests[: total - sum(parts)]:
        parts[i] += 1
    return parts

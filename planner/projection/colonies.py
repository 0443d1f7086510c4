"""Colonies by week: who came through winter and summer, and what the lost ones give back.

Takes the operation's colony groups and a scenario; gives living classes and lost colonies in whole colonies and pieces.
"""

from dataclasses import dataclass

from planner.projection.records import Deadouts
from planner.season.calendar import circuit_of, turns_of

COMB_KINDS = ("frame",)
PALLET = "pallet-4"
COLONIES_ON_A_PALLET = 4
WINTER, SUMMER, UNITED = "winter", "summer", "united"


@dataclass(frozen=True, kw_only=True)
class Loss:
    """So many colonies fewer from `week` on: dead of the winter, dead in summer, or united with another."""

    why: str
    week: int
    colonies: int


@dataclass(frozen=True, kw_only=True)
class Standing:
    """Colonies alike in yard, set and strength: so many at the start, less what each loss takes from its week on."""

    yard: str
    hive_set: str
    strength: str
    before: int
    losses: tuple[Loss, ...] = ()

    def at(self, week):
        return self.before - sum(loss.colonies for loss in self.losses if loss.week <= week)

    def by_week(self, weeks):
        """Colonies in each week."""
        counts = [self.before] * weeks
        for loss in self.losses:
            counts[loss.week :] = [count - loss.colonies for count in counts[loss.week :]]
        return counts

    @property
    def after(self):
        """Those that are through all of it."""
        return self.before - sum(loss.colonies for loss in self.losses)


def standing_colonies(operation, assumptions, scenario):
    """One Standing a group. Losses are found at the yard's first visit from their week on."""
    turns = turns_of(assumptions)
    yards = {yard.code: yard for yard in operation.yards}
    return tuple(
        Standing(
            yard=group.yard,
            hive_set=group.hive_set,
            strength=group.strength,
            before=group.colonies,
            losses=_losses(group, scenario, turns, circuit_of(yards[group.yard], assumptions)),
        )
        for group in operation.colonies
    )


def _losses(group, scenario, turns, circuit):
    key = group.yard, group.hive_set, group.strength
    dead, united = scenario.summer_dead.get(key, 0), scenario.united.get(key, 0)
    wintering = group.colonies - dead - united if turns.autumn < turns.winter else group.colonies
    losses = (
        Loss(why=WINTER, week=circuit.after(turns.winter), colonies=wintering - scenario.survivors[key]),
        Loss(why=SUMMER, week=circuit.after(turns.summer), colonies=dead),
        Loss(why=UNITED, week=circuit.before(turns.autumn), colonies=united),
    )
    return tuple(loss for loss in losses if loss.colonies > 0)


def base_gear(group, set_facts):
    """What the group's hives hold as their set says, where the books have it; the set's own where they are silent."""
    wanted = {part: pieces * group.colonies for part, pieces in set_facts.gear.items()}
    if PALLET in wanted:
        wanted[PALLET] = round_half_up(group.colonies / COLONIES_ON_A_PALLET)
    if not group.gear:
        return wanted
    held = {}
    for part, pieces in wanted.items():
        plain = group.gear.get(part, 0)
        treated = group.gear.get(f"{part}-treated", 0)
        held[part] = min(pieces, plain + treated)
    return {part: pieces for part, pieces in held.items() if pieces}


def deadouts(operation, assumptions, standings):
    """What is lost, with its gear: shares returning are rounded to whole pieces; united hives give back all."""
    sets = {facts.code: facts for facts in operation.sets}
    parts = {part.code: part for part in operation.parts}
    return tuple(
        _deadout(group, sets[group.hive_set], loss, parts, assumptions)
        for group, standing in zip(operation.colonies, standings, strict=True)
        for loss in standing.losses
    )


def _deadout(group, facts, loss, parts, assumptions):
    held = {
        part: round_half_up(pieces * loss.colonies / group.colonies)
        for part, pieces in base_gear(group, facts).items()
    }
    returned = {
        part: round_half_up(pieces * sound_share(parts.get(part), facts.width, assumptions, loss.why))
        for part, pieces in held.items()
    }
    return Deadouts(
        yard=group.yard,
        hive_set=group.hive_set,
        strength=group.strength,
        week=loss.week,
        why=loss.why,
        colonies=loss.colonies,
        held=held,
        returned=returned,
        lost={part: held[part] - returned[part] for part in held},
        honey_lb=loss.colonies * assumptions.deadout_honey_lb if loss.why == WINTER else 0.0,
    )


def sound_share(part, width, assumptions, why=WINTER):
    """Combs suffer twice more: moth, and the oldest are culled while they are in hand."""
    if why == UNITED:
        return 1.0
    share = assumptions.deadout_sound_share
    if part is not None and part.kind in COMB_KINDS:
        culled = min(1.0, assumptions.comb_culled / max(1, width))
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

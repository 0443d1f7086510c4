"""Colonies by week: who came through winter and summer, and what the lost ones give back.

Takes the operation's colony groups and a scenario; gives living classes and lost colonies in whole colonies and pieces.
"""

from dataclasses import dataclass
from itertools import accumulate

from planner.projection.records import Deadouts
from planner.season.calendar import circuit_of, turns_of

COMB_KINDS = ("frame",)
PALLET = "pallet-4"
COLONIES_ON_A_PALLET = 4
WINTER, SUMMER, UNITED = "winter", "summer", "united"


@dataclass(frozen=True, kw_only=True, slots=True)
class Loss:
    """So many colonies fewer from `week` on: dead of the winter, dead in summer, or united with another."""

    why: str
    week: int
    colonies: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Standing:
    """Colonies alike in yard, set and strength: so many at the start, less what each loss takes from its week on."""

    yard: str
    hive_set: str
    strength: str
    before: int
    losses: tuple[Loss, ...] = ()

    def at(self, week):
        count = self.before
        for loss in self.losses:
            if loss.week <= week:
                count -= loss.colonies
        return count

    @property
    def after(self):
        """Those that are through all of it."""
        return self.before - sum(loss.colonies for loss in self.losses)


def by_week(standings, weeks):
    """Colonies of all of them together in each week."""
    steps = [0] * weeks
    for standing in standings:
        steps[0] += standing.before
        for loss in standing.losses:
            steps[loss.week] -= loss.colonies
    return tuple(accumulate(steps))


def standing_colonies(operation, assumptions, scenario):
    """One Standing a group. Losses are found at the yard's first visit from their week on."""
    turns = turns_of(assumptions)
    yards = operation.yards_by_code
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
        (WINTER, circuit.after(turns.winter), wintering - scenario.survivors[key]),
        (SUMMER, circuit.after(turns.summer), dead),
        (UNITED, circuit.before(turns.autumn), united),
    )
    return tuple(Loss(why=why, week=week, colonies=lost) for why, week, lost in losses if lost > 0)


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
    found = []
    for number, (group, standing) in enumerate(zip(operation.colonies, standings, strict=True)):
        for loss in standing.losses:
            held, returned, lost = _gear_of(operation, assumptions, number, loss)
            found.append(
                Deadouts(
                    yard=group.yard,
                    hive_set=group.hive_set,
                    strength=group.strength,
                    week=loss.week,
                    why=loss.why,
                    colonies=loss.colonies,
                    held=held,
                    returned=returned,
                    lost=lost,
                    honey_lb=loss.colonies * assumptions.deadout_honey_lb if loss.why == WINTER else 0.0,
                )
            )
    return tuple(found)


def _gear_of(operation, assumptions, number, loss):
    """What so many lost colonies of a group held, give back and lose; many scenarios lose as many."""
    shares = assumptions.deadout_sound_share, assumptions.comb_moth_share, assumptions.comb_culled
    known = operation.worked_out.setdefault(("deadouts", shares), {})
    key = number, loss.colonies, loss.why == UNITED
    if key not in known:
        group = operation.colonies[number]
        facts = operation.sets_by_code[group.hive_set]
        held = {
            part: round_half_up(pieces * loss.colonies / group.colonies)
            for part, pieces in base_gear(group, facts).items()
        }
        parts = operation.parts_by_code
        returned = {
            part: round_half_up(pieces * sound_share(parts.get(part), facts.width, assumptions, loss.why))
            for part, pieces in held.items()
        }
        known[key] = held, returned, {part: held[part] - returned[part] for part in held}
    return known[key]


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

"""A trial said plainly: rows rounded to what the seasons bear, and the sentences a keeper reads.

Takes a Trial and the money's code; gives a TrialSection of the report. Judges nothing.
"""

import math
from decimal import Decimal

from planner.plan.trial_records import TrialRow, TrialSection
from planner.plan.words import listed, number, percent, sum_words
from planner.trial.records import FORESIGHT, MEAN, NOTHING, OURS, RULE, YOURS
from planner.trial.statistics import bearing_step, rounded

NAMES = {
    OURS: ("this order", "the best found for the seasons planned with"),
    YOURS: ("your usual order", "as you told it"),
    RULE: (
        "rule of thumb",
        "full hives up to the target, a super a colony, less what lies in store, cut alike to the budget",
    ),
    MEAN: ("mean season only", "the best order if every year were the mean one"),
    NOTHING: ("buying nothing now", "what is missing bought in season or gone without"),
    FORESIGHT: (
        "knowing the future",
        "the best for each season, were it known beforehand; a bound, no order",
    ),
}
TOO_WIDE = 0.05  # a gap's upper end, as a share of the order's worth, that says nothing to a keeper
NEAR = 0.05  # spends that differ by less are the same money


def section_of(trial, money, *, not_offered=()):
    """The trial's section; all rows are compared with the keeper's usual order, else with the rule of thumb.
    `not_offered`: names of what the usual order holds and nobody offers now."""
    against = next(
        (each for key in (YOURS, RULE, NOTHING, OURS) if (each := trial.contender(key)) is not None),
        trial.ours,
    )
    everyone = [*trial.contenders, *([trial.foresight] if trial.foresight else [])]
    rows = sorted(
        (_row(each, against, not_offered) for each in everyone),
        key=lambda row: (row.key == FORESIGHT, row.over),
    )
    gap = trial.gap
    return TrialSection(
        seasons=trial.seasons,
        against=against.key,
        against_name=NAMES[against.key][0],
        rows=tuple(rows),
        sentences=tuple(_Sentences(trial, money).all()),
        gap_most=None if gap is None else _money(_up(gap.most, bearing_step(gap.most - gap.mean))),
        gap_share=None if gap is None else gap.share_of(trial.ours.mean.value),
    )


def _row(contender, against, not_offered):
    name, how = NAMES[contender.key]
    if contender.key == YOURS and not_offered:
        how = f"{how}, less what nobody offers now: {listed(not_offered)}"
    mean, over = contender.mean, contender.over(against)
    low, high = contender.span_over(against)
    return TrialRow(
        key=contender.key,
        name=name,
        how=how,
        spend=None if contender.spend is None else _money(round(contender.spend, 2)),
        worth=_money(rounded(mean.value, mean.reach)),
        worth_reach=_money(_reach(mean)),
        bad_year=_money(rounded(contender.bad_year, mean.reach)),
        over=_money(rounded(over.value, over.reach)),
        over_reach=_money(_reach(over)),
        low=_money(rounded(low, over.reach)),
        high=_money(rounded(high, over.reach)),
        seasons=over.count,
    )


def _reach(mean):
    """Rounded up to two figures that count."""
    if not math.isfinite(mean.reach):
        return 0
    size = 10 ** math.floor(math.log10(max(mean.reach, 1e-9)))
    return _up(mean.reach, max(1, size // 10))


def _up(value, step):
    return math.ceil(value / step - 1e-9) * step


def _money(value):
    return Decimal(str(value))


class _Sentences:
    """What the trial of one order says, most important first."""

    def __init__(self, trial, money):
        self.trial, self.money = trial, money

    def all(self):
        trial = self.trial
        yours, rule, mean = (trial.contender(key) for key in (YOURS, RULE, MEAN))
        seasons = f"{number(trial.seasons)} fresh seasons"
        if yours is not None:
            yield f"On {seasons} this order {self.against(yours, 'yours', spread=True)}."
        if rule is not None:
            start = "It" if yours is not None else f"On {seasons} this order"
            yield f"{start} {self.against(rule, 'the rule of thumb', spread=yours is None)}."
        if mean is not None:
            yield f"It {self.against(mean, 'the order for the mean season alone', spread=False)}."
        if trial.foresight is not None:
            yield self.foresight()
        if trial.gap is not None:
            yield self.gap()
        if trial.other_seed is not None:
            yield self.other_seed()
        yield from self.missing()

    def sum(self, value):
        return sum_words(_money(value), self.money)

    def against(self, rival, name, *, spread):
        over = self.trial.ours.over(rival)
        reach = self.sum(_reach(over))
        if abs(over.value) <= over.reach:
            said = (
                f"earns as much as {name}, as far as these seasons can tell (give or take {reach} a season)"
            )
            return said + self.same_money(rival)
        more = "more" if over.value > 0 else "less"
        value = self.sum(abs(rounded(over.value, over.reach)))
        said = f"earns about {value} a season {more} than {name}{self.same_money(rival)}"
        if not spread:
            return f"{said}, give or take {reach}"
        low, high = (rounded(each, over.reach) for each in self.trial.ours.span_over(rival))
        return f"{said} (19 seasons of 20 between {self.signed(low)} and {self.signed(high)})"

    def signed(self, value):
        if value == 0:
            return "nothing"
        return f"{self.sum(abs(value))} {'more' if value > 0 else 'less'}"

    def same_money(self, rival):
        ours = self.trial.ours.spend
        if abs(ours - rival.spend) <= NEAR * max(ours, rival.spend):
            return " on the same money"
        return f", spending {self.sum(round(ours))} where that spends {self.sum(round(rival.spend))}"

    def foresight(self):
        over = self.trial.foresight.over(self.trial.ours)
        most = self.sum(max(0, _up(over.high, bearing_step(over.reach))))
        on = "" if over.count == self.trial.seasons else f" (tried on {number(over.count)} of them)"
        return f"Knowing the future would add at most {most} a season{on}."

    def gap(self):
        gap = self.trial.gap
        most = self.sum(_up(gap.most, bearing_step(gap.most - gap.mean)))
        part = gap.share_of(self.trial.ours.mean.value)
        share = percent(part, 1)
        if part > TOO_WIDE:
            return (
                f"How much more another order could earn is not told by planning {number(gap.batches)} times on "
                f"{number(gap.seasons)} fresh seasons: such a span reaches to {most} ({share}). More seasons narrow it."
            )
        return (
            f"The best order there could be earns at most about {most} ({share}) a season more than this one, 19 times "
            f"of 20 (found by planning {number(gap.batches)} times on {number(gap.seasons)} fresh seasons)."
        )

    def other_seed(self):
        other = self.trial.other_seed
        if not other.changed:
            return "Planned with other seasons, the order is the same pack for pack."
        lines = f"{other.changed} of {other.lines} line{'' if other.lines == 1 else 's'}"
        packs = f"{number(other.packs)} pack{'' if other.packs == 1 else 's'} in all"
        over = other.worth_more
        if abs(over.value) <= over.reach:
            worth = f"earns the same, give or take {self.sum(_reach(over))} a season"
        else:
            more = "more" if over.value > 0 else "less"
            worth = f"earns {self.sum(abs(rounded(over.value, over.reach)))} a season {more}"
        spends = self.signed(round(other.spend_more))
        spends = "the same" if spends == "nothing" else spends
        return f"Planned with other seasons, the order differs in {lines}, {packs}; it spends {spends} and {worth}."

    def missing(self):
        trial = self.trial
        if trial.seasons < trial.asked:
            yield f"Time ran out after {number(trial.seasons)} of {number(trial.asked)} fresh seasons."
        for key in trial.left_out:
            if key in NAMES:
                yield f"Not compared: {NAMES[key][0]}, since it leaves undone what must be done."
        untried = {"other": "what other seasons would change", "gap": "how much better an order could be"}
        late = [words for key, words in untried.items() if key in trial.left_out]
        if late:
            yield f"Not tried, since the time allowed ran out: {' and '.join(late)}."

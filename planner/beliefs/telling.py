"""The belief check said plainly: rows, those that cost most first, and what a keeper reads.

Takes figures by end, the order's packs and the operation; gives a BeliefsSection. Weighs nothing.
"""

from collections import defaultdict
from dataclasses import dataclass
from decimal import Decimal

from planner.beliefs.doubts import DOUBTS
from planner.beliefs.ends import LOW, Beliefs, OtherValue, answered, key_of
from planner.beliefs.records import Belief, BeliefsSection, End
from planner.plan.gear_words import counted
from planner.plan.words import cents, listed, number, sum_words
from planner.season.questions import QUESTIONS

FIRST = 3
LINES_NAMED = 2
INPUTS = ("winters", "crop_ordinary", "crop_worst", "drawn_fair", "drawn_weak")  # go into another's ends


@dataclass(frozen=True, kw_only=True)
class Standing:
    """The order as it stands: its packs by (offer, period), spend, worth, and the money that is the solver's tolerance."""

    packs: dict
    spend: float
    worth: float
    gap: float


def section_of(beliefs, ends, answers, standing, *, seasons, doubts=DOUBTS):
    """`ends` (doubt, other value) as weighed, `answers` their figures by number, where reached."""
    said = _Words(beliefs, standing)
    by_doubt: dict[str, list] = defaultdict(list)
    for number_, (doubt, other) in enumerate(ends):
        by_doubt[doubt.key].append((other, answers.get(number_)))
    rows, late = [], []
    for doubt in doubts:
        found = [pair for pair in by_doubt[doubt.key] if pair[1] is not None and "why" not in pair[1]]
        if found:
            rows.append(said.row(doubt, found))
        elif by_doubt[doubt.key]:
            late.append(doubt.name)
    rows.sort(key=lambda row: -row.regret)
    first = tuple(row.key for row in rows if row.regret > 0)[:FIRST]
    return BeliefsSection(
        seasons=seasons,
        gap=cents(standing.gap),
        rows=tuple(rows),
        first=first,
        not_reached=tuple(late),
        left_out=chosen(beliefs, doubts),
        sentences=said.all(rows, first, late),
    )


def chosen(beliefs, doubts):
    """Questions that no doubt is about: a keeper's own choice or habit."""
    known = {key_of(doubt, beliefs) for doubt in doubts} | {doubt.key for doubt in doubts} | set(INPUTS)
    return tuple(question.ask for question in QUESTIONS if question.key not in known)


class _Words:
    def __init__(self, beliefs: Beliefs, standing: Standing):
        self.beliefs, self.standing = beliefs, standing
        self.money = beliefs.operation.money
        self.offers = {offer.code: offer for offer in beliefs.operation.offers}
        self.parts = {part.code: part for part in beliefs.operation.parts}

    def row(self, doubt, found):
        ends = {other.side: self.end(doubt, other, figures) for other, figures in found}
        _value, words = answered(doubt, self.beliefs)
        return Belief(
            key=doubt.key,
            name=doubt.name,
            answered=words,
            low=ends.get(LOW),
            high=ends.get("high"),
            source=doubt.source,
            find_out=doubt.find_out,
        )

    def end(self, doubt, other: OtherValue, figures):
        if figures.get("same"):
            nothing = Decimal("0.00")
            return End(
                words=other.words,
                value=float(other.value),
                spend=nothing,
                worth=nothing,
                regret=nothing,
                regret_most=nothing,
                changes={},
                sentence=f"{self.supposed(doubt, other)}, nothing would change: nothing of this season rests on it.",
            )
        changes = self.changes(figures["packs"])
        regret = cents(figures["best"] - figures["held"])
        return End(
            words=other.words,
            value=float(other.value),
            spend=cents(figures["spend"] - self.standing.spend) if changes else Decimal("0.00"),
            worth=cents(figures["best"] - self.standing.worth),
            regret=regret,
            regret_most=max(cents(figures["bound"] - figures["held"]), regret),
            changes=changes,
            sentence=self.sentence(doubt, other, changes, regret),
        )

    def changes(self, packs):
        """offer -> (packs now, then), all its weeks together."""
        now: dict[str, float] = defaultdict(float)
        then: dict[str, float] = defaultdict(float)
        for (offer, _period), count in self.standing.packs.items():
            now[offer] += count
        for offer, _period, count in packs:
            then[offer] += count
        both = {offer: (round(now[offer]), round(then[offer])) for offer in sorted({*now, *then})}
        return {offer: pair for offer, pair in both.items() if pair[0] != pair[1]}

    def supposed(self, doubt, other):
        _value, before = answered(doubt, self.beliefs)
        less = "only " if other.side == LOW and doubt.said.startswith("{value}") else ""
        return f"If {less}{doubt.said.format(value=other.words)} instead of {before}"

    def sentence(self, doubt, other, changes, regret):
        start = self.supposed(doubt, other)
        if not changes:
            return f"{start}, the order would stay as it is."
        return (
            f"{start}, you would order {self.differently(changes)}; the order as it stands would then cost you "
            f"{sum_words(regret, self.money)} a season against the best."
        )

    def differently(self, changes):
        """18 deep boxes fewer and 10 medium frames more; the dearest lines first, the rest counted."""
        dearest = sorted(changes, key=lambda code: -self._money(code, changes[code]))
        named = [self._difference(code, *changes[code]) for code in dearest[:LINES_NAMED]]
        rest = len(changes) - LINES_NAMED
        if rest > 0:
            named.append(f"{number(rest)} other line{'' if rest == 1 else 's'} otherwise")
        return listed(named)

    def _money(self, code, pair):
        offer = self.offers.get(code)
        return abs(pair[1] - pair[0]) * float(offer.prices[0][1]) if offer and offer.prices else 0.0

    def _difference(self, code, now, then):
        offer, more = self.offers.get(code), "more" if then > now else "fewer"
        packs = abs(then - now)
        parts = (
            [] if offer is None else [(self.parts[c], n) for c, n in offer.parts.items() if c in self.parts]
        )
        if len(parts) == 1:
            part, units = parts[0]
            more = "less" if more == "fewer" and part.unit in ("lb", "oz", "kg") else more
            return f"{counted(packs * units, part)} {more}"
        name = code if offer is None else offer.name
        return f"{number(packs)} {'pack' if packs == 1 else 'packs'} {more} of “{name}”"

    def all(self, rows, first, late):
        """What the whole comes to."""
        if rows and not first:
            said = [
                "None of the answers tried would make another order that earns more than the search can tell."
            ]
        elif rows:
            names = listed(row.name for row in rows if row.key in first)
            what = "the answer" if len(first) == 1 else f"the {number(len(first))} answers"
            said = [
                f"Of {number(len(rows))} answers set lower and higher, {what} that would pay most to know better: "
                f"{names}."
            ]
        else:
            said = []
        if late:
            said.append(
                f"Time was up before {number(len(late))} answer{'' if len(late) == 1 else 's'} could be tried: "
                f"{listed(late)}."
            )
        return tuple(said)

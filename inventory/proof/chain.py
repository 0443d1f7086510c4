"""The movements in the order in which they were written: each one's digest, its own sense, what came in and went out.

Takes the locations and parts; streams the rows once and gives faults in words. Holds sums, never the rows.
"""

from collections import Counter
from dataclasses import dataclass
from datetime import date
from itertools import islice

from apiary.errors import told
from inventory.ledger.digest import ACT_FIELDS, MOVEMENT_FIELDS, act_text, digest_of_row, end_text
from inventory.models import Act, Holding, Movement
from inventory.proof.seal import noted_faults

CHUNK = 5000
FIELDS = ("pk", "act_id", *MOVEMENT_FIELDS, "digest")


@dataclass(frozen=True, slots=True)
class ActTold:
    day: date
    text: str


class Chain:
    """One pass over the chain. `length` and `head` are known once `faults` has been read to its end."""

    def __init__(self, locations, parts, *, noted=None):
        self.locations, self.parts, self.noted = locations, parts, noted
        self.ends = {pk: end_text(str(row.kind), row.yard_id, row.colony_id) for pk, row in locations.items()}
        self.outside = {pk for pk, row in locations.items() if not row.is_inside}
        self.reversals = dict(Act.objects.filter(reverses__isnull=False).values_list("pk", "reverses_id"))
        self.watched = set(self.reversals) | set(self.reversals.values())
        self.moved: dict[int, Counter] = {pk: Counter() for pk in self.watched}
        self.came: Counter = Counter()
        self.acts: dict[int, ActTold] = {}
        self.length, self.head, self.noted_digest = 0, "", None

    def faults(self):
        """The faults of each row, in the order of the chain."""
        rows = Movement.objects.order_by("id").values_list(*FIELDS).iterator(chunk_size=CHUNK)
        while chunk := list(islice(rows, CHUNK)):
            self._look_up({row[1] for row in chunk})
            for row in chunk:
                yield from self._row(*row)
        if self.noted:
            yield from noted_faults(self.noted, length=self.length, digest=self.noted_digest)

    def _look_up(self, wanted):
        """Of acts only those of the rows at hand are kept."""
        known = {pk: act for pk, act in self.acts.items() if pk in wanted}
        fresh = Act.objects.filter(pk__in=wanted - set(known)).values_list("pk", *ACT_FIELDS)
        for pk, *values in fresh:
            known[pk] = ActTold(day=values[2], text=act_text(*values))
        self.acts = known

    def _row(self, pk, act_id, day, part, condition, quantity, source, target, reason, line, found, digest):
        act = self.acts.get(act_id)
        ends = self.ends.get(source), self.ends.get(target)
        if act is None or part not in self.parts or None in ends:
            yield f"Movement {pk} names an act, part or place that is not in the books any more."
        elif digest != digest_of_row(
            self.head, act.text, day, part, condition, quantity, reason, line, found, *ends
        ):
            yield self._broken(pk, day, quantity, part, source, target)
        self.head = digest
        self.length += 1
        if self.noted and self.noted[0] == self.length:
            self.noted_digest = digest
        if not isinstance(quantity, int) or quantity < 1:
            yield f"Movement {pk} moves {quantity} pieces: a movement moves at least one."
            quantity = quantity if isinstance(quantity, int) else 0
        if source == target:
            yield f"Movement {pk} has the same place at both ends."
        if act is not None and act.day != day:
            yield f"Movement {pk} is dated {_when(day)}, its act {_when(act.day)}."
        if source in self.outside:
            self.came[part] += quantity
        if target in self.outside:
            self.came[part] -= quantity
        if act_id in self.watched:
            self.moved[act_id][part, condition, line, found, source, target] += quantity

    def _broken(self, pk, day, quantity, part, source, target):
        row = f"{_when(day)}: {quantity} {self.parts[part]} from {self.locations[source]} to {self.locations[target]}"
        return (
            f"Movement {pk} ({row}) does not carry the digest it should: it or its act was edited, "
            "it was put in, or a row before it was removed behind the books' back."
        )

    def conservation_faults(self):
        """Of each part: what the balances hold inside is what came in from outside less what went out."""
        inside: Counter = Counter()
        for part, quantity in Holding.objects.values_list("part_id", "quantity"):
            inside[part] += quantity
        for part in sorted(set(self.came) | set(inside)):
            if self.came[part] != inside[part]:
                name = self.parts.get(part, f"part {part}")
                yield (
                    f"{name}: {self.came[part]} came in and did not go out, "
                    f"but stores and colonies hold {inside[part]}."
                )

    def reversal_faults(self):
        """A reversal puts back exactly what its act moved, on its day or later, and reverses no reversal."""
        acts = Act.objects.in_bulk(self.watched)
        for pk in sorted(self.reversals):
            act, first = acts[pk], acts.get(self.reversals[pk])
            if first is None or first.reverses_id is not None:
                yield f"Act {pk} reverses act {act.reverses_id}, which is not an act that can be reversed."
                continue
            back = Counter({(*key[:4], key[5], key[4]): n for key, n in self.moved[first.pk].items()})
            if self.moved[pk] != back:
                yield f"Act {pk} does not put back what act {first.pk} ({first}) moved."
            if act.day < first.day:
                yield f"Act {pk} reverses act {first.pk} on a day before it."


def _when(day):
    return told(day) if day else "no day there is"

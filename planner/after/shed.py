"""What the shed gives when: stock, deliveries, homecomings, and what the workbench makes of it.

Takes what comes in, recipes and what bees draw; answers each want, earliest due first, with chunks that say from which
week the pieces are there and by which work. Wants that nothing answers stay short. Changes only its own balance.
"""

from collections import defaultdict
from dataclasses import dataclass

from planner.after.evenings import Job

GIVE_UP_WEEKS = 6  # gear that comes later than that after it was wanted is not brought any more: judgement


@dataclass(frozen=True, kw_only=True)
class Want:
    """Whole pieces of a part wanted at a yard (or for the shed itself) by a week."""

    yard: str
    part: str
    pieces: int
    week: int


@dataclass(frozen=True, kw_only=True)
class Chunk:
    """Pieces that answer a want: the part carried, the week they are there or the job that makes them."""

    want: Want
    part: str
    pieces: int
    ready: int
    job: int | None = None


@dataclass(frozen=True, kw_only=True)
class Made:
    """One way to come by a part: what a piece takes of each other part, and the work."""

    recipe: str
    part: str
    takes: dict
    minutes: float


class Shed:
    def __init__(self, *, recipes, drawn):
        """`recipes`: part -> Made; `drawn`: comb -> the framed foundation that bees draw into it at the yard."""
        self.recipes, self.drawn = recipes, drawn
        self.supply = defaultdict(list)  # part -> [[week, pieces]]
        self.jobs = []

    def put(self, part, week, pieces):
        if pieces > 0:
            self.supply[part].append([week, pieces])
            self.supply[part].sort()

    def answer(self, wants):
        """(chunks, [(want, pieces short)]), earliest due first."""
        chunks, short = [], []
        for want in sorted(wants, key=lambda want: (want.week, want.yard, want.part)):
            found = self._come_by(want.part, want.pieces, want.week)
            missing = want.pieces - sum(pieces for _part, pieces, _ready, _job in found)
            for part, pieces, ready, job in found:
                chunks.append(Chunk(want=want, part=part, pieces=pieces, ready=ready, job=job))
            if missing:
                short.append((want, missing))
        return chunks, short

    def _come_by(self, part, pieces, week):
        """[(part, pieces, ready, job)]: in time from the shelf, in time in another way, then late."""
        found, left = [], pieces
        for until in (week, week + GIVE_UP_WEEKS):
            for source in self._sources(part):
                if left:
                    got = source(left, week, until)
                    found += got
                    left -= sum(row[1] for row in got)
        return found

    def _sources(self, part):
        yield lambda n, week, until: [(part, got, at, None) for at, got in self._shelf(part, n, until)]
        if part in self.drawn:
            frame = self.drawn[part]
            yield lambda n, week, until: [(frame, got, at, None) for at, got in self._shelf(frame, n, until)]
            if frame in self.recipes:
                yield lambda n, week, until: self._assemble(frame, n, week, until)
        if part in self.recipes:
            yield lambda n, week, until: self._assemble(part, n, week, until)

    def _shelf(self, part, pieces, until):
        """[(week, pieces)] from what lies or comes there up to a week, the first to come first."""
        got, left = [], pieces
        for row in self.supply[part]:
            if left <= 0 or row[0] > until:
                break
            taken = min(left, row[1])
            if taken:
                row[1] -= taken
                left -= taken
                got.append((row[0], taken))
        return got

    def _assemble(self, part, pieces, week, until):
        """Jobs for as many as there is material for, one for each week the material comes."""
        made, rows = self.recipes[part], []
        for number, release in self._materials(made, pieces, week, until):
            self.jobs.append(
                Job(
                    code=made.recipe,
                    units=number,
                    minutes=made.minutes,
                    release=release,
                    due=week - 1,
                    order=len(self.jobs),
                )
            )
            rows.append((part, number, release, len(self.jobs) - 1))
        return rows

    def _materials(self, made, pieces, week, until):
        """[(pieces, week from which the material is there)]: taken only as far as all of it can be had."""
        able = min([pieces, *(self._reach(part, n * pieces, until) // n for part, n in made.takes.items())])
        if able <= 0:
            return []
        ready: dict = defaultdict(int)
        weeks = [0] * able
        for part, n in made.takes.items():
            units = []
            for at, got in self._take_material(part, n * able, week, until):
                units += [at] * got
            for number in range(able):
                weeks[number] = max(weeks[number], max(units[number * n : (number + 1) * n]))
        for at in weeks:
            ready[at] += 1
        return [(number, at) for at, number in sorted(ready.items())]

    def _take_material(self, part, pieces, week, until):
        got = self._shelf(part, pieces, until)
        left = pieces - sum(number for _at, number in got)
        if left and part in self.recipes:
            got += [(ready, number) for _part, number, ready, _job in self._assemble(part, left, week, until)]
        return sorted(got)

    def _reach(self, part, pieces, until):
        """How many of a part can be had up to a week, from the shelf or made, up to `pieces`."""
        there = sum(n for at, n in self.supply[part] if at <= until)
        if there < pieces and part in self.recipes:
            made = self.recipes[part]
            left = pieces - there
            there += min([left, *(self._reach(take, n * left, until) // n for take, n in made.takes.items())])
        return min(there, pieces)

"""The workbench: gear that turns into other gear, by hands (assembling) or by bees (drawing comb).

Takes a recipe and how often, or foundation frames on a colony; gives the Act. What goes in leaves the store
or colony for the bench, what is made comes back from it.
"""

from collections import Counter

from inventory.errors import (
    DrawnTwice,
    NotAColony,
    NotFoundation,
    NothingGiven,
    UnknownPart,
    UnknownRecipe,
    UnknownWord,
    refuse,
)
from inventory.gear import Comb, CombUse, Kind, Reason
from inventory.ledger.hives import living
from inventory.ledger.lines import checked, parts_by_code, whole
from inventory.ledger.posting import Entry, post
from inventory.ledger.rules import store
from inventory.locations import location_of, outside
from inventory.models import Location, Part, Recipe


def assemble(*, recipe, times, at, day, who, key, found_allowed=False, note=""):
    """Carries out a recipe so many times at a store. `recipe` is a Recipe or its code."""

    def entries():
        code = recipe.code if isinstance(recipe, Recipe) else recipe
        row = Recipe.objects.filter(code=code).first()
        if row is None:
            raise UnknownRecipe(recipe=code)
        here, bench = store(at), outside(Location.Kind.BENCH)
        n = whole(row, times)
        lines = list(row.lines.select_related("part").order_by("makes", "id"))
        return [
            _benched(line.part, n * (line.takes or line.makes), here, bench, comes_back=line.makes > 0)
            for line in lines
        ]

    return post("assemble", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _benched(part, quantity, here, bench, *, comes_back):
    source, target = (bench, here) if comes_back else (here, bench)
    return Entry(part=part, quantity=quantity, source=source, target=target, reason=Reason.ASSEMBLED)


def draw(*, colony, lines, day, who, key, use=CombUse.HONEY, treated=False, found_allowed=False, note=""):
    """Frames with foundation on a living colony have become drawn comb, for brood or honey."""
    place = location_of(colony)
    if place.colony is None:
        raise NotAColony(location=place)
    return draw_comb(
        draws=[(place.colony, lines)],
        use=use,
        treated=treated,
        day=day,
        who=who,
        key=key,
        found_allowed=found_allowed,
        note=note,
    )


def draw_comb(*, draws, use, treated, day, who, key, found_allowed=False, note=""):
    """The same for many colonies in one act: `draws` gives (colony, lines) pairs, those of no line passed over."""

    def entries():
        told = [(colony, list(lines)) for colony, lines in draws]
        told = [(colony, lines) for colony, lines in told if lines]
        if not told:
            raise NothingGiven(act="draw")
        refuse(DrawnTwice(colony=each) for each, times in Counter(c for c, _ in told).items() if times > 1)
        living([colony for colony, _ in told], day)
        catalogue, combs = parts_by_code(), dict[str, Part]()
        for colony, lines in told:
            lines = checked(lines, act="draw", catalogue=catalogue)
            refuse(NotFoundation(part=line.part) for line in lines if line.part.comb != Comb.FOUNDATION)
            for line in lines:
                comb = combs.get(line.part.depth) or drawn_comb(line.part.depth, use, treated=treated)
                combs[line.part.depth] = comb
                yield from _drawn(line, comb, location_of(colony))

    return post("draw", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _drawn(line, comb, here):
    bench = outside(Location.Kind.BENCH)
    for part, source, target in ((line.part, here, bench), (comb, bench, here)):
        yield Entry(
            part=part,
            quantity=line.quantity,
            condition=line.condition,
            source=source,
            target=target,
            reason=Reason.DRAWN,
        )


def drawn_comb(depth, use, *, treated=False):
    """The part that is drawn comb of that depth and use."""
    if use not in set(CombUse):
        raise UnknownWord(word=use, what="use of comb", choices=", ".join(CombUse))
    part = Part.objects.filter(
        kind=Kind.FRAME, depth=depth, comb=Comb.DRAWN, comb_use=use, treated=treated
    ).first()
    if part is None:
        raise UnknownPart(part=f"drawn {use} comb, {depth}")
    return part

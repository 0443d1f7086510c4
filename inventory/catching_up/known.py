"""All names an evening's table may use: colonies by tag, stores by name, parts and sets by name or code.

Reads the tables once; gives what a word means, whatever its case, or None. Changes nothing.
"""

from apiary.models import Colony, HiveSet, Yard
from apiary.queens import QueenFrom
from apiary.rights import grounds, hives
from inventory.gear import Comb, Kind
from inventory.models import GearSet, Part, RecipeLine
from inventory.syrup import RATIONS
from inventory.yardwork.boxsets import brood_boxes, supers

ALSO = {
    "1:1": "syrup-1-1",
    "2:1": "syrup-2-1",
    "sugar": "sugar",
    "patty": "patty",
    "patties": "patty",
}


def plain(words):
    return " ".join(str(words).split()).casefold()


def _names(box_sets):
    """{name: code}; a box alone names the first set of it."""
    boxes = {plain(word): one.code for one in reversed(box_sets) for word in (one.box.code, one.box.name)}
    return boxes | {plain(word): one.code for one in box_sets for word in (one.code, one.name)}


class Known:
    """The names as they are now; of a person's own yards where one is told."""

    def __init__(self, who=None):
        yards = list(Yard.objects.all() if who is None else grounds(who))
        colonies = (
            Colony.objects.real() if who is None else hives(who).exclude(ended_why=Colony.Ended.MISTAKE)
        )
        self.home = yards[0] if yards else None
        self.colonies = {plain(each.tag): each for each in colonies.select_related("yard", "hive_set")}
        self.yards = {plain(word): each for each in yards for word in (each.code, each.name)}
        parts = list(Part.objects.all())
        self.parts = {plain(word): each for each in parts for word in (each.code, each.name)}
        sets = list(GearSet.objects.prefetch_related("lines__part"))
        self.sets = {plain(word): each for each in sets for word in (each.code, each.name)}
        self.hive_sets = {plain(word): one for one in HiveSet.objects.all() for word in (one.code, one.name)}
        self.queens = {plain(word): each.value for each in QueenFrom for word in (each.value, each.label)}
        self.rations = {plain(word): code for code, one in RATIONS.items() for word in (code, one.words)}
        self.rations |= ALSO
        self.supers, self.brood_boxes = _names(supers()), _names(brood_boxes())
        self._made = set(RecipeLine.objects.filter(makes__gt=0).values_list("part", flat=True))
        self._foundation = {
            part.depth: part
            for part in parts
            if part.kind == Kind.FRAME and part.comb == Comb.FOUNDATION and not part.flat
        }

    def pieces(self, word):
        """{part's code: pieces} of a part or of a set with its foundation fitted."""
        part = self.parts.get(plain(word))
        if part is not None:
            return {part.code: 1}
        one = self.sets.get(plain(word))
        return None if one is None else self._fitted({line.part: line.quantity for line in one.lines.all()})

    def piece(self, word):
        part = self.parts.get(plain(word))
        return None if part is None else {part.code: 1}

    def comb(self, word):
        """(the comb, the foundation it was drawn from)."""
        part = self.parts.get(plain(word))
        if part is None or part.comb != Comb.DRAWN or part.depth not in self._foundation:
            return None
        return part, self._foundation[part.depth]

    def made(self, word):
        part = self.parts.get(plain(word))
        return part if part is not None and part.pk in self._made else None

    def ration(self, word):
        return self.rations.get(plain(word))

    def queen(self, word):
        return self.queens.get(plain(word))

    def splits(self, word):
        """(the set told or None, the tags told): a word that is no set is a tag, and a tag has a number in it.

        The name of a set may hold commas itself: the longest beginning that is a set is the set.
        """
        words = [" ".join(one.split()) for one in word.split(",")]
        for cut in range(len(words), -1, -1):
            hive_set = self.hive_sets.get(plain(", ".join(words[:cut])))
            if hive_set is not None or not cut:
                break
        tags = tuple(one for one in words[cut:] if one)
        return (hive_set, tags) if all(any(map(str.isdigit, one)) for one in tags) else None

    def super_code(self, word):
        return self.supers.get(plain(word))

    def brood_box_code(self, word):
        return self.brood_boxes.get(plain(word))

    def _fitted(self, lines):
        """A set as it stands in use: each bare frame with its sheet is a frame with foundation."""
        pieces = {part.code: quantity for part, quantity in lines.items()}
        for sheet in [part for part in lines if part.kind == Kind.FOUNDATION]:
            frame = next(
                (p for p in lines if p.kind == Kind.FRAME and p.comb == Comb.BARE and p.depth == sheet.depth),
                None,
            )
            if frame is None or lines[frame] != lines[sheet]:
                continue
            fitted = self._foundation[sheet.depth].code
            del pieces[frame.code], pieces[sheet.code]
            pieces[fitted] = pieces.get(fitted, 0) + lines[sheet]
        return pieces

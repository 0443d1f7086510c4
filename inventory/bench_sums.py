"""What the workbench could make of what lies in a store.

Takes a recipe and a store; gives how often it can be carried out, with what is there of each part. Makes nothing.
"""

from dataclasses import dataclass
from decimal import Decimal

from inventory.gear import Condition
from inventory.models import Part, Recipe
from inventory.stock import on_hand


@dataclass(frozen=True, kw_only=True)
class BenchLine:
    """One part of a recipe: how many one making takes or makes, and how many sound ones are there."""

    part: Part
    takes: int
    makes: int
    there: int

    @property
    def name(self):
        return self.part.name[:1].upper() + self.part.name[1:]


@dataclass(frozen=True, kw_only=True)
class Bench:
    """A recipe at a store; `possible` how often it can be carried out with what the book has."""

    recipe: Recipe
    lines: tuple[BenchLine, ...]

    @property
    def takes(self):
        return [line for line in self.lines if line.takes]

    @property
    def makes(self):
        return [line for line in self.lines if line.makes]

    @property
    def possible(self):
        return min((line.there // line.takes for line in self.takes), default=0)

    @property
    def possible_words(self):
        return f"up to {self.possible:,}" if self.possible else "none by the book"

    @property
    def can_be_made(self):
        return self.possible > 0

    @property
    def lacking(self):
        """What one making takes and the store has not enough of: 1 deep frame, bare, of 2."""
        short = [line for line in self.takes if line.there < line.takes]
        return ", ".join(f"{line.part.name} ({line.there} here, {line.takes} wanted)" for line in short)

    @property
    def name(self):
        return self.recipe.name[:1].upper() + self.recipe.name[1:]

    @property
    def minutes_of_all(self):
        return (self.recipe.minutes * self.possible).quantize(Decimal(1))


def possible_of(recipe, yard, *, as_of=None):
    """The Bench of one recipe."""
    return _bench(recipe, _sound(yard, as_of))


def recipes_at(yard, *, as_of=None):
    """A Bench for each recipe, those that can be carried out most often first."""
    sound = _sound(yard, as_of)
    rows = [_bench(recipe, sound) for recipe in Recipe.objects.prefetch_related("lines__part")]
    return sorted(rows, key=lambda bench: (-bench.possible, bench.recipe.code))


def _sound(yard, as_of):
    rows = on_hand(yard, as_of=as_of).items()
    return {gear.part: quantity for gear, quantity in rows if gear.condition == Condition.SOUND}


def _bench(recipe, sound):
    lines = [
        BenchLine(part=line.part, takes=line.takes, makes=line.makes, there=sound.get(line.part.code, 0))
        for line in recipe.lines.all()
    ]
    return Bench(recipe=recipe, lines=tuple(lines))

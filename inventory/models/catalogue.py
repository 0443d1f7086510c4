"""Gear as it is sold and used: parts, what is made of what, and the sets it is counted in.

Dimensions in inches, weights in lb, money in whole cents (SQLite keeps decimals as floats; cents stay exact).
"""

from decimal import Decimal

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from inventory.gear import Comb, CombUse, Depth, Kind


def choices_of(words):
    """Django choices of a closed list of words."""
    return [(word.value, word.value) for word in words]


class Part(models.Model):
    """One kind of gear. `flat` gear is bought in pieces and assembled into the part `recipe` makes."""

    code = models.SlugField(_("code"), max_length=40, unique=True)
    name = models.CharField(_("name"), max_length=80, unique=True)
    kind = models.CharField(_("kind"), max_length=12, choices=choices_of(Kind))
    depth = models.CharField(_("depth"), max_length=8, choices=choices_of(Depth), blank=True)
    width = models.PositiveSmallIntegerField(_("width, frames"), null=True, blank=True)
    comb = models.CharField(_("state of the frame"), max_length=10, choices=choices_of(Comb), blank=True)
    comb_use = models.CharField(_("comb for"), max_length=6, choices=choices_of(CombUse), blank=True)
    treated = models.BooleanField(_("was on a treated colony"), default=False)
    flat = models.BooleanField(_("in pieces, to assemble"), default=False)
    unit = models.CharField(_("counted in"), max_length=20, default="piece")
    tare_lb = models.DecimalField(_("weight, lb"), max_digits=7, decimal_places=2, default=0)
    length_in = models.DecimalField(_("length, in"), max_digits=7, decimal_places=4, null=True, blank=True)
    width_in = models.DecimalField(_("width, in"), max_digits=7, decimal_places=4, null=True, blank=True)
    height_in = models.DecimalField(_("height, in"), max_digits=7, decimal_places=4, null=True, blank=True)
    years_of_life = models.PositiveSmallIntegerField(_("years of life"), default=10)
    list_price_cents = models.PositiveIntegerField(_("list price, cents"), default=0)
    source = models.CharField(_("source"), max_length=300, blank=True)

    class Meta:
        ordering = ["code"]
        constraints = [
            models.CheckConstraint(condition=~Q(kind="frame") | ~Q(comb=""), name="frame_has_a_state"),
            models.CheckConstraint(
                condition=Q(comb="drawn") | Q(comb_use=""), name="only_drawn_comb_has_a_use"
            ),
        ]

    def __str__(self):
        return self.name

    @property
    def list_price(self):
        """Decimal, in the keeper's money."""
        return Decimal(self.list_price_cents) / 100


class Recipe(models.Model):
    """What the workbench turns into what: assembling, fitting foundation. Minutes for one making."""

    code = models.SlugField(_("code"), max_length=50, unique=True)
    name = models.CharField(_("name"), max_length=80)
    minutes = models.DecimalField(_("minutes"), max_digits=6, decimal_places=1, default=0)
    source = models.CharField(_("source"), max_length=300, blank=True)

    class Meta:
        ordering = ["code"]

    def __str__(self):
        return self.name


class RecipeLine(models.Model):
    """`takes` pieces of a part go in, `makes` come out; one of the two is zero."""

    recipe = models.ForeignKey(Recipe, models.CASCADE, related_name="lines")
    part = models.ForeignKey(Part, models.PROTECT, related_name="+")
    takes = models.PositiveSmallIntegerField(default=0)
    makes = models.PositiveSmallIntegerField(default=0)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(fields=["recipe", "part"], name="recipe_names_a_part_once"),
            models.CheckConstraint(
                condition=Q(takes__gt=0, makes=0) | Q(takes=0, makes__gt=0), name="recipe_line_takes_or_makes"
            ),
        ]

    def __str__(self):
        return f"{self.recipe}: {self.part}"


class GearSet(models.Model):
    """A bill of material: brood box, super, full hive, nuc. `hive_set` ties one to a colony's hive set code."""

    code = models.SlugField(_("code"), max_length=40, unique=True)
    name = models.CharField(_("name"), max_length=80)
    hive_set = models.SlugField(_("code of the hive set it fills"), max_length=30, blank=True)

    class Meta:
        ordering = ["code"]

    def __str__(self):
        return self.name


class GearSetLine(models.Model):
    """So many pieces of a part belong to a gear set."""

    gear_set = models.ForeignKey(GearSet, models.CASCADE, related_name="lines")
    part = models.ForeignKey(Part, models.PROTECT, related_name="+")
    quantity = models.PositiveSmallIntegerField()

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(fields=["gear_set", "part"], name="gear_set_names_a_part_once"),
            models.CheckConstraint(condition=Q(quantity__gt=0), name="gear_set_line_positive"),
        ]

    def __str__(self):
        return f"{self.gear_set}: {self.quantity} × {self.part}"

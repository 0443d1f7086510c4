"""Combs of a deadout cared for against wax moth: frozen at a temperature for a time, or otherwise.

Takes the deadout and how; gives the Act, which moves nothing. Refused where it is too warm or too short to rely on,
and for combs of suspected foulbrood: freezing kills the moth, never foulbrood.
"""

from decimal import ROUND_CEILING, Decimal

from django.db import transaction

from apiary.errors import told
from inventory.deadouts.freezing import WARMEST, hours_at
from inventory.deadouts.holds import case_of
from inventory.deadouts.refusals import NoCareNeeded, NotColdEnough, TooShort
from inventory.models import MothCare
from inventory.yardwork.whole import together

OF_FOULBROOD = (
    "its combs are held back for foulbrood. Freezing is never care against it: keep them closed until the inspector "
    "has spoken."
)

TOO_EARLY = (
    "it was found dead on {found_on}, so its combs were not cared for before. Give that day or a later one."
)


def care(*, deadout, day, who, key, celsius=None, hours=None, note=""):
    """The combs were frozen at `celsius` for `hours` once their core was cold; without both, kept from moth otherwise."""
    frozen = celsius is not None
    if frozen:
        _refuse_warm_or_short(Decimal(celsius), Decimal(hours or 0))

    def work(_act_key):
        if day < deadout.found_on:
            raise NoCareNeeded(colony=deadout.colony, why=TOO_EARLY.format(found_on=told(deadout.found_on)))
        if case_of(deadout) in ("suspected", "confirmed"):
            raise NoCareNeeded(colony=deadout.colony, why=OF_FOULBROOD)
        if deadout.cares.standing().exists():
            raise NoCareNeeded(colony=deadout.colony, why="its combs were cared for already.")
        return []

    with transaction.atomic():
        act = together("moth care", work, day=day, who=who, key=key, note=note)
        if not MothCare.objects.filter(act=act).exists():
            MothCare.objects.create(
                act=act,
                deadout=deadout,
                way="frozen" if frozen else "other",
                tenths_celsius=_tenths(celsius) if frozen else None,
                minutes=int(Decimal(hours) * 60) if frozen else None,
            )
    return act


def _refuse_warm_or_short(celsius, given):
    needed = hours_at(celsius)
    shown = f"{celsius:.1f}"
    if needed is None:
        raise NotColdEnough(degrees=shown, warmest=WARMEST)
    if given < needed:
        raise TooShort(given=f"{given.normalize():f}", degrees=shown, hours=needed)


def _tenths(celsius):
    """Rounded to the warmer tenth: the books never tell it colder than it was."""
    return int((Decimal(celsius) * 10).to_integral_value(ROUND_CEILING))

"""Where a colony's queen is from: the words for it, and the queen a colony has by its history.

Takes a colony; gives words and a day. Changes nothing: colonies.py writes the history.
"""

from dataclasses import dataclass
from datetime import date

from django.db import models
from django.utils.translation import gettext_lazy as _

from apiary.models import ColonyEvent


class QueenFrom(models.TextChoices):
    RAISED = "raised", _("raised by the colony")
    CELL = "cell", _("a queen cell given")
    MATED = "mated", _("a mated queen of our own")
    BOUGHT = "bought", _("a mated queen, bought")
    MOTHER = "mother", _("the mother's queen")
    SWARM = "swarm", _("a swarm's queen")


@dataclass(frozen=True, kw_only=True)
class Queen:
    """The queen a colony has: where she is from as it was written down, and since when."""

    words: str
    since: date


def queen_of(colony):
    """The last queen that was told of a colony; None where none ever was."""
    told = ColonyEvent.objects.counted().filter(colony=colony, kind=ColonyEvent.Kind.REQUEENED)
    last = told.order_by("day", "id").last()
    return Queen(words=last.note, since=last.day) if last is not None else None

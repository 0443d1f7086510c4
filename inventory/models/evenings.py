"""Evenings of which all balances are kept, so that no past day must be summed from the first movement.

Derived from the movements in the act's own transaction like Holding; written by ledger only, proven by check_books.
"""

from django.db import models


class Evening(models.Model):
    """What lay where on the evening of a day, all movements of that day and before counted: {location: {gear: pieces}}.

    A location is its id, a gear "id-of-the-part condition"; nothing that is zero.
    """

    day = models.DateField(unique=True)
    length = models.PositiveBigIntegerField(help_text="How many movements there are up to that evening.")
    balances = models.JSONField()

    class Meta:
        ordering = ["day"]

    def __str__(self):
        return f"{self.day}: {self.length} movements"

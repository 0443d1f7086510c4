"""What is derived from the movements put right: the seal's mark after a change of the secret key, evenings kept.

Takes nothing; writes BookSeal's mark and Evening only. Movements and balances stay as they are.
"""

from django.db import transaction

from inventory.ledger.digest import mark_of
from inventory.ledger.evenings import keep_again
from inventory.ledger.posting import lock_books


@transaction.atomic
def seal_again():
    """Signs what the seal says with the present secret key. Ask check_books first: this hides what was done to it."""
    seal = lock_books()
    seal.mark = mark_of(seal.length, seal.head, seal.acts, seal.act_head)
    seal.save(update_fields=["mark"])


@transaction.atomic
def work_out_evenings():
    """The evenings kept, anew."""
    lock_books()
    keep_again()

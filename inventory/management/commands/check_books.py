"""manage.py check_books: proves the books and prints every fault; the same books give the same text."""

import sys

from apiary.management.books_command import BooksCommand
from inventory.proof import prove


class Command(BooksCommand):
    help = (
        "Proves the books: works every balance out again from the movements, checks that no part appeared or "
        "vanished, that nothing was below zero on any day, and that no row was edited or removed. "
        "Prints each fault and ends with 1, or one line and 0."
    )

    def handle(self, *args, **options):
        proof = prove()
        for fault in proof.faults:
            self.stdout.write(fault)
        for note in proof.notes:
            self.stdout.write(note)
        if proof.faults:
            count = len(proof.faults)
            self.stdout.write(f"{count} {'fault' if count == 1 else 'faults'} in the books.")
            sys.exit(1)
        self.stdout.write(proof.line)

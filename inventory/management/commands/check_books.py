"""manage.py check_books: proves the books and prints every fault; the same books give the same text.

It can also hold an earlier line against them, and put right what is only derived: the seal's mark, evenings kept.
"""

import argparse
import sys

from apiary.management.books_command import BooksCommand
from inventory.ledger.sealing import seal_again, work_out_evenings
from inventory.proof import prove

HELP = (
    "Proves the books: works every balance out again from the movements, checks that no part appeared or "
    "vanished, that nothing was below zero on any day, and that no movement, no act and nothing told of a colony was "
    "edited, removed or put in. "
    "Prints each fault and ends with 1, or one line and 0. The last line of a good check may be kept on paper: "
    "with --noted a later check tells whether the books still hold all that they held then."
)


class Command(BooksCommand):
    help = HELP

    def add_arguments(self, parser):
        parser.add_argument(
            "--noted",
            nargs=2,
            metavar=("MOVEMENTS", "SEAL"),
            action=Noted,
            help="the number of movements and the seal that an earlier line told, as 1,234 3fa90c11d2e4",
        )
        parser.add_argument(
            "--seal-again",
            action="store_true",
            help="sign the seal with the site's present secret key, where nothing else is wrong",
        )
        parser.add_argument(
            "--evenings-again",
            action="store_true",
            help="work the evenings kept for questions of past days out anew before checking",
        )

    def handle(self, *args, **options):
        if options["evenings_again"]:
            work_out_evenings()
        proof = prove(noted=options["noted"])
        if options["seal_again"] and proof.is_only_unmarked:
            seal_again()
            proof = prove(noted=options["noted"])
        for fault in proof.faults:
            self.stdout.write(fault)
        for note in proof.notes:
            self.stdout.write(note)
        if proof.faults:
            count = len(proof.faults)
            self.stdout.write(f"{count} {'fault' if count == 1 else 'faults'} in the books.")
            sys.exit(1)
        self.stdout.write(proof.line)


class Noted(argparse.Action):
    """Reads the number as the line writes it and the seal's first letters."""

    def __call__(self, parser, namespace, values, option_string=None):
        count, seal = values[0].replace(",", ""), values[1].strip(" .").lower()
        if not (count.isdecimal() and int(count) > 0):
            parser.error(
                f"--noted: {values[0]} is no number of movements; the line says it, as in 1,234 movements"
            )
        if not (6 <= len(seal) <= 64 and set(seal) <= set("0123456789abcdef")):
            parser.error(f"--noted: {values[1]} is no seal; it is the last word of the line, as 3fa90c11d2e4")
        setattr(namespace, self.dest, (int(count), seal))

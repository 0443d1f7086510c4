"""The base of every command a keeper runs: its help lists what means something to a keeper.

Django's own options work as ever; their help is left out.
"""

import argparse

from django.core.management.base import BaseCommand


class PlainCommand(BaseCommand):
    suppressed_base_arguments = {
        "--version",
        "--verbosity",
        "--settings",
        "--pythonpath",
        "--traceback",
        "--no-color",
        "--force-color",
    }

    def create_parser(self, *args, **kwargs):
        parser = super().create_parser(*args, conflict_handler="resolve", **kwargs)
        parser.add_argument("--skip-checks", action="store_true", help=argparse.SUPPRESS)
        return parser

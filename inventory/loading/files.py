"""Files of a keeper: read against the books, made from them, loaded in one go.

Takes bytes; gives a Reading, the template's bytes, or Loaded. A faulty file is refused with every fault.
"""

import hashlib

from apiary.errors import Refused
from apiary.models import Yard
from inventory.loading.known import known_by_books
from inventory.loading.posting import load
from inventory.loading.told import places_to_count, sheet_by_books
from inventory.sheets import count_sheet, filled, read_sheet, template


class FaultySheet(Refused):
    sentence = "The sheet has faults ({count}), nothing was posted. {told}"


def digest_of(content):
    """The digest that tells one file from another."""
    return hashlib.sha256(content).hexdigest()


def read(content, *, day):
    """The workbook in `content`, read as it would be loaded on `day`: a Reading."""
    return read_sheet(content, known_by_books(), day=day)


def blank_workbook():
    """The template, its drop-downs holding the parts and sets of the books."""
    return template(known_by_books())


def workbook_of(kind, *, day, yards=None, blind=False, with_colonies=False):
    """The workbook of a kind to fill in: prices, yards and winters as the books have them, a count of these yards (all of
    them where none is named), else with nothing filled in."""
    known = known_by_books()
    if kind == "count":
        chosen = Yard.objects.all() if yards is None else yards
        asked = {"blind": blind, "with_colonies": with_colonies}
        return count_sheet(places_to_count(chosen, day=day, **asked), known)
    if kind in ("yards", "prices", "winters"):
        return filled(sheet_by_books(day=day), known, kind=kind)
    return template(known, kind=kind)


def load_file(content, *, day, who):
    """Reads and posts a workbook; FaultySheet with all its faults where it has any."""
    reading = read(content, day=day)
    if reading.faults:
        told = " ".join(str(fault) for fault in reading.faults)
        raise FaultySheet(count=len(reading.faults), told=told, faults=reading.faults)
    return load(reading.sheet, day=day, who=who, digest=digest_of(content))

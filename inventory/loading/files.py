"""Files of a keeper: read against the books, made from them, loaded in one go.

Takes bytes; gives a Reading, the template's bytes, or Loaded. A faulty file is refused with every fault.
"""

import hashlib

from apiary.errors import Refused
from inventory.loading.known import known_by_books
from inventory.loading.posting import load
from inventory.sheets import read_sheet, template


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


def load_file(content, *, day, who):
    """Reads and posts a workbook; FaultySheet with all its faults where it has any."""
    reading = read(content, day=day)
    if reading.faults:
        told = " ".join(str(fault) for fault in reading.faults)
        raise FaultySheet(count=len(reading.faults), told=told, faults=reading.faults)
    return load(reading.sheet, day=day, who=who, digest=digest_of(content))

"""What plain data refuses: a folder in the way, books that are there already, files that are not as they were written.

Takes figures by keyword; gives one clear sentence. Faults of single cells are rows of their own in faults.py.
"""

from apiary.errors import Refused


class FolderTaken(Refused):
    sentence = "{folder} {why}: name a folder that is not there yet, or an empty one. Nothing was written."


class NotWritten(Refused):
    sentence = "{folder} cannot be written: {why}. What was begun has been removed."


class NotPlainData(Refused):
    sentence = "{folder} is no plain data of this program: {why}. Name a folder that export_all wrote."


class NewerData(Refused):
    sentence = (
        "{folder} was written by a newer version of this program ({program}; unknown here: {changes}). "
        "Bring this installation up to that version, then load it."
    )


class OlderData(Refused):
    sentence = (
        "{folder} was written by an older version of this program ({program}; since then came {changes}). "
        "Load it with that version, start this one on the same data so that its tables are brought up to date, "
        "and export it again."
    )


class BooksThere(Refused):
    sentence = (
        "There is something in these books already: {what}. Plain data goes into an empty installation only: "
        "set DATA_DIR (or DATABASE_URL) to a new one. Nothing was loaded."
    )


class DatabaseRefuses(Refused):
    sentence = (
        "The database does not take {file}: {why}. Nothing was loaded: put that file right and try again."
    )


class NotProven(Refused):
    sentence = (
        "The files do not add up to books that are right; nothing was loaded. {faults} "
        "Put the files back as export_all wrote them; where you changed them yourself and mean it, say --edited."
    )


class StillNotProven(Refused):
    sentence = (
        "With the changes made, the books are not right; nothing was loaded. {faults} Put these right first."
    )

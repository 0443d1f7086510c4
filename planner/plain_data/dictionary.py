"""The data dictionary: what each file and column means, in which unit and words, made from the tables themselves.

Takes Tables; gives rows for dictionary.csv. Its words are the models' own names and explanations, so that it says
what the program means today.
"""

import re

from planner.plain_data.cells import codec_of
from planner.plain_data.tables import COLUMNS_LEFT_OUT, LEFT_OUT, PEOPLE, all_tables, pointed_to

NAME = "dictionary.csv"
HEADINGS = ("file", "column", "type", "unit", "meaning", "allowed words", "points to", "empty")
UNITS = {
    "cents": "cents (hundredths of the keeper's money)",
    "lb": "lb",
    "in": "inches",
    "ft": "cubic feet",
    "miles": "miles",
    "minutes": "minutes",
    "seconds": "seconds",
    "days": "days",
    "weeks": "weeks",
    "months": "months",
    "hours": "hours",
    "years": "years",
    "percent": "per cent",
    "celsius": "tenths of a degree Celsius",
    "packs": "packs",
    "pieces": "pieces",
    "hour": "cents an hour",
    "life": "years",
    "week": "ISO week of the year (ISO 8601)",
}
GENERAL = (
    (
        "the files",
        "CSV by RFC 4180 in UTF-8 without a byte order mark: commas, double quotes, lines end with CR LF, the first "
        "line names the columns. Rows are in the order of their id. The same books give the same files, byte by byte.",
    ),
    (
        "text",
        "A spreadsheet takes text that begins with = + - @ (wide forms too), a tab or a line break for a formula or a "
        "command. Such text, and text that begins with an apostrophe, has one apostrophe more in front: take exactly "
        "one away to have the text itself. In a spreadsheet bring columns in as text, or it drops leading zeros and "
        "turns tags into dates.",
    ),
    ("day, time", "ISO 8601: 2026-11-30, and 2026-11-30T19:05:00.000000+00:00 with its zone, always UTC."),
    ("number", "A decimal point, no thousands mark. Money is whole cents: 1250 is 12.50."),
    ("yes or no", "The words yes and no."),
    (
        "document",
        "JSON. A long one lies in a file of its own, and the cell says which: documents/…; a run's problem is a file "
        "the command size reads.",
    ),
    ("points to", "The cell is the id of a row of that file."),
    (
        "people",
        "Of people only names and roles go out: no password, no link, no sign-in. What was written about somebody in "
        "names, notes and addresses is there as it stands: keep these files as you keep the books.",
    ),
    (
        "the seal",
        "digest, in acts.csv and movements.csv, chains each row to the one before by SHA-256; seal.csv says the last.",
    ),
)


def dictionary_rows():
    """The heading and every row."""
    yield HEADINGS
    for word, meaning in GENERAL:
        yield "(all files)", word, "", "", meaning, "", "", ""
    for table in all_tables():
        yield table.file, "", "table", "", meaning_of(table.model), "", "", ""
        for field in table.columns:
            yield _row(table, field)
        for field in table.left:
            yield _left(table.file, field.name, COLUMNS_LEFT_OUT[f"{table.label}.{field.name}"])
    for label, reason in sorted(LEFT_OUT.items()):
        yield _left("(no file)", label, reason)


def _left(file, name, reason):
    return file, name, "left out", "", reason[:1].upper() + reason[1:] + ".", "", "", ""


def _row(table, field):
    target = pointed_to(field)
    return (
        table.file,
        field.name,
        codec_of(field).word,
        unit_of(field),
        column_meaning(field),
        "; ".join(
            f"{value} = {label}" if str(value) != str(label) else str(value)
            for value, label in words_of(field)
        ),
        f"{target.file}: {field.target_field.name}" if target else "",
        _empty(field),
    )


def words_of(field):
    return [(value, label) for value, label in field.flatchoices if value != ""]


def meaning_of(model):
    """What its class says, up to the first empty line; a table of pairs says what it ties."""
    if model._meta.auto_created:
        one, other = (
            field.remote_field.model._meta.verbose_name for field in model._meta.concrete_fields[1:3]
        )
        return f"Which {other} belongs to which {one}."
    if model._meta.label == PEOPLE:
        return "Who may sign in or is named in the books. Their roles and yards stand in access.csv."
    paragraph = (model.__doc__ or "").strip().split("\n\n")[0]
    text = " ".join(paragraph.split())
    return "" if text.startswith(f"{model.__name__}(") else text


def column_meaning(field):
    """Its name as the pages say it, then what is explained under it."""
    name, told = str(field.verbose_name), str(field.help_text)
    if field.primary_key:
        return "number of the row, by which others point to it"
    if field.model._meta.label == PEOPLE:
        told = ""  # explained for administrators of any site
    return f"{name}. {told}" if told else name


def unit_of(field):
    """From the last word of the column's name, or of what it is called; empty for what has none."""
    if field.remote_field or codec_of(field).word in ("text", "document", "day", "time", "yes or no"):
        return ""
    if " or " in str(field.verbose_name):
        return str(field.verbose_name)  # quarts or lb
    named, called = field.name.split("_"), re.findall(r"[a-z]+", str(field.verbose_name).lower())
    for words in (named, called):
        if words and words[-1] in UNITS:
            return UNITS[words[-1]]
    return next((UNITS[word] for word in ("celsius", "cents") if word in named + called), "")


def _empty(field):
    if field.null:
        return "may be: not told"
    return "may be" if codec_of(field).word == "text" and field.blank else "never"

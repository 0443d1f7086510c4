"""The past winters of a workbook as records: in and out by yard or of the whole outfit, checked against each other.

Takes typed rows and the names of yards; gives records. Faults go to the findings. Fits nothing.
"""

from inventory.sheets.layout import WINTERS
from inventory.sheets.records import WinterRow
from inventory.sheets.yards import found

KEYS = [column.key for column in WINTERS.columns]


def winters_of(rows, names, findings, *, day):
    winters: dict[tuple, WinterRow] = {}
    for row in rows:
        yard = ""
        if row.values.get("yard"):
            yard = found(
                *(row, "yard", names, WINTERS, findings),
                what="the yard",
                otherwise="Write a name that stands on the sheet Yards, or leave it empty for all yards",
            )
        if yard is None or not row.whole(KEYS) or not _sound(row, findings, day=day):
            continue
        one = WinterRow(**{**row.values, "yard": yard, "row": row.number})
        first = winters.setdefault((one.autumn, one.yard), one)
        if first is not one:
            what = f"this winter stands in row {first.row} already"
            findings.fault(WINTERS.title, row.cell("autumn"), what, "Keep one of the two")
    _check_sums(winters, findings)
    return tuple(winters.values())


def _sound(row, findings, *, day):
    before = len(findings.faults)
    went_in, came_out = row.values["went_in"], row.values["came_out"]
    if came_out > went_in:
        what = f"{came_out} came out of {went_in} that went in: that is more than there were"
        findings.fault(
            WINTERS.title, row.cell("came_out"), what, "Leave out what you bought or split in between"
        )
    if day and row.values["autumn"] > day.year:
        what = f"the winter of {row.values['autumn']} is still to come"
        findings.fault(WINTERS.title, row.cell("autumn"), what, "Write the year in which a past winter began")
    return len(findings.faults) == before


def _check_sums(winters, findings):
    """The yards of a winter are part of what the whole outfit is told to have."""
    for (autumn, yard), whole in winters.items():
        if yard:
            continue
        parts = [one for (year, of), one in winters.items() if year == autumn and of]
        for key, word in (("went_in", "in"), ("came_out", "out")):
            added = sum(getattr(one, key) for one in parts)
            if added > getattr(whole, key):
                what = f"the yards of this winter add up to {added} {word}, more than {getattr(whole, key)}"
                findings.fault(
                    WINTERS.title, f"row {whole.row}", what, "Mend one of them, or take this row out"
                )

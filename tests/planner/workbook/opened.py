"""Opens a workbook's bytes: as written, or as LibreOffice recalculates and prints it. Nothing is asserted here."""

import io
import subprocess

from openpyxl import load_workbook


def written(data):
    return load_workbook(io.BytesIO(data))


def recalculated(office, data, folder):
    """The workbook with every formula's value, worked out by LibreOffice from nothing."""
    convert(office, data, folder, "xlsx")
    return load_workbook(folder / "out" / "order.xlsx", data_only=True)


def convert(office, data, folder, kind):
    source = folder / "order.xlsx"
    source.write_bytes(data)
    command = [office, "--headless", f"-env:UserInstallation=file://{folder}/profile", "--convert-to", kind]
    subprocess.run(
        [*command, "--outdir", str(folder / "out"), str(source)], check=True, capture_output=True, timeout=180
    )
    return folder / "out" / f"order.{kind}"


def labelled(sheet, words, column):
    """The value in `column` of the first row whose first or second cell says `words`."""
    for row in sheet.iter_rows():
        if words in (row[0].value, row[1].value):
            return row[column - 1].value
    raise LookupError(words)

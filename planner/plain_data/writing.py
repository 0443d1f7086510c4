"""Writes all of the books as plain files into a folder: all of it or nothing.

Takes the folder; gives a Manifest's files. Reads the books as they stand at one moment and holds up nobody; what is
written lies beside the folder under another name until all of it is there.
"""

import csv
import os
import shutil
import tempfile
from contextlib import contextmanager
from pathlib import Path

from django.db import models

from inventory.standstill import standing_still
from planner.plain_data import dictionary
from planner.plain_data.cells import DOCUMENTS, LONGEST_CELL, codec_of, document
from planner.plain_data.errors import FolderTaken, NotWritten
from planner.plain_data.manifest import Written, sha256_of, write_manifest
from planner.plain_data.tables import all_tables

CHUNK, CHUNK_OF_DOCUMENTS = 5000, 10


def export(folder):
    """Every table, the dictionary and the manifest into the folder; gives {file: Written}."""
    folder = Path(folder).absolute()
    with _beside(folder) as begun, standing_still():
        files = {}
        for table in all_tables():
            rows, documents = _write_table(begun, table)
            files[table.file] = Written(rows=rows, sha256=sha256_of(begun / table.file))
            files |= {name: Written(sha256=sha256_of(begun / name)) for name in documents}
        _write_csv(begun / dictionary.NAME, dictionary.dictionary_rows())
        files[dictionary.NAME] = Written(sha256=sha256_of(begun / dictionary.NAME))
        write_manifest(begun, files)
    return files


@contextmanager
def _beside(folder):
    """A folder to write in that becomes the one wanted when the block ends well, and is removed where it does not."""
    _refuse_taken(folder)
    begun = None
    try:
        begun = Path(tempfile.mkdtemp(prefix=f".{folder.name}-", dir=folder.parent))
        yield begun
        os.rename(begun, folder)  # takes the place of an empty folder, never of one with something in it
    except OSError as error:
        raise NotWritten(folder=folder, why=error.strerror or error) from error
    finally:
        if begun is not None:
            shutil.rmtree(begun, ignore_errors=True)


def _refuse_taken(folder):
    if folder.is_symlink():
        raise FolderTaken(folder=folder, why="is a link to another place")
    if folder.exists() and not folder.is_dir():
        raise FolderTaken(folder=folder, why="is a file")
    if folder.is_dir() and any(folder.iterdir()):
        raise FolderTaken(folder=folder, why="is not empty")


def _write_table(folder, table):
    """The rows of one table; gives how many and the names of the documents beside."""
    shelf = _Shelf(folder, table)
    fields = [column.attname for column in table.columns]
    rows = table.model._base_manager.order_by("pk").values_list(*fields)
    count = 0

    def lines():
        nonlocal count
        yield table.headings
        for row in rows.iterator(chunk_size=CHUNK_OF_DOCUMENTS if shelf.columns else CHUNK):
            count += 1
            cells = [write(value) for write, value in zip(writes, row, strict=True)]
            yield shelf.put(cells, row) if shelf.columns else cells

    writes = [codec_of(column).write for column in table.columns]
    _write_csv(folder / table.file, lines())
    return count, shelf.names


def _write_csv(path, lines):
    with path.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file, lineterminator="\r\n").writerows(lines)
        file.flush()
        os.fsync(file.fileno())


class _Shelf:
    """Long documents of one table, each in a file of its own."""

    def __init__(self, folder, table):
        self.folder, self.table, self.names = folder, table, []
        self.columns = [at for at, column in enumerate(table.columns) if isinstance(column, models.JSONField)]

    def put(self, cells, row):
        """The cells with the names of files instead of long documents."""
        for at in self.columns:
            if len(cells[at]) > LONGEST_CELL:
                name = f"{DOCUMENTS}{Path(self.table.file).stem}-{row[0]}-{self.table.columns[at].name}.json"
                path = self.folder / name
                path.parent.mkdir(exist_ok=True)
                path.write_text(document(row[at]) + "\n", encoding="utf-8")
                self.names.append(name)
                cells[at] = name
        return cells

"""The manifest of plain data: which program and tables wrote it, how many rows each file has and its SHA-256.

Takes a folder; gives a Manifest, or the refusal where it is none, or one of another version. No time and no path
stands in it: the same books give the same files.
"""

import hashlib
import json
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import PurePath

from django.db import connection
from django.db.migrations.loader import MigrationLoader

from apiary.management.books_command import changes_known
from planner.plain_data.errors import NewerData, NotPlainData, OlderData
from planner.plain_data.tables import OURS

NAME = "manifest.json"
FORM = 1  # of the files: how cells are written, what the manifest holds
PROGRAM = "winter-order"
BLOCK = 2**20


@dataclass(frozen=True, kw_only=True)
class Written:
    """One file as it was written; `rows` without the heading, None for what is no table."""

    sha256: str
    rows: int | None = None


@dataclass(frozen=True, kw_only=True)
class Manifest:
    """`schema` is the last change of tables by package; no name of `files` leads out of the folder."""

    program: str
    schema: dict[str, str]
    files: dict[str, Written]


def schema_now():
    """The last change of this program's tables, by package."""
    leaves = MigrationLoader(connection).graph.leaf_nodes()
    return {app: name for app, name in leaves if app in OURS}


def program_now():
    return f"{PROGRAM} {version(PROGRAM)}"


def sha256_of(path):
    digest = hashlib.sha256()
    with path.open("rb") as file:
        while block := file.read(BLOCK):
            digest.update(block)
    return digest.hexdigest()


def write_manifest(folder, files):
    """The manifest of files written there, {name: Written}."""
    told = {
        "form": FORM,
        "program": program_now(),
        "schema": schema_now(),
        "files": {
            name: {"sha256": one.sha256} | ({} if one.rows is None else {"rows": one.rows})
            for name, one in sorted(files.items())
        },
    }
    text = json.dumps(told, indent=1, sort_keys=True, ensure_ascii=False)
    (folder / NAME).write_text(text + "\n", encoding="utf-8")


def read_manifest(folder):
    """The manifest of a folder this program can load; refuses any other."""
    try:
        told = json.loads((folder / NAME).read_text(encoding="utf-8"))
    except OSError:
        raise NotPlainData(folder=folder, why=f"no {NAME} can be read in it") from None
    except ValueError:
        raise NotPlainData(folder=folder, why=f"its {NAME} is no JSON") from None
    manifest = _manifest_of(told, folder)
    _refuse_other(manifest, told["form"], folder)
    return manifest


def _manifest_of(told, folder):
    try:
        files = {
            _inside(name): Written(sha256=str(one["sha256"]), rows=one.get("rows"))
            for name, one in told["files"].items()
        }
        schema = {str(app): str(name) for app, name in told["schema"].items()}
        int(told["form"])
        return Manifest(program=str(told["program"]), schema=schema, files=files)
    except (AttributeError, KeyError, TypeError, ValueError):
        raise NotPlainData(folder=folder, why=f"its {NAME} does not say what it should") from None


def _inside(name):
    """The name of a file, where it lies in the folder or among its documents."""
    path = PurePath(name)
    if path.is_absolute() or ".." in path.parts:
        raise ValueError(name)
    return str(name)


def _refuse_other(manifest, form, folder):
    """Newer is what this program does not know; older where changes of its tables came since."""
    known, now = changes_known(), schema_now()
    unknown = sorted(f"{app} {name}" for app, name in manifest.schema.items() if (app, name) not in known)
    if form > FORM:
        unknown.append(f"form {form}")
    if unknown:
        raise NewerData(folder=folder, program=manifest.program, changes=", ".join(unknown))
    since = sorted(f"{app} {name}" for app, name in now.items() if manifest.schema.get(app) != name)
    if form < FORM:
        since.append(f"form {FORM}")
    if since:
        raise OlderData(folder=folder, program=manifest.program, changes=", ".join(since))

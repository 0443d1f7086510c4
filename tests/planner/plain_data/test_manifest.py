"""The manifest: which version wrote the files, and the refusal of any other."""

import hashlib
import json

import pytest

from planner.plain_data.errors import NewerData, NotPlainData, OlderData
from planner.plain_data.manifest import (
    NAME,
    Written,
    program_now,
    read_manifest,
    schema_now,
    sha256_of,
    write_manifest,
)


@pytest.fixture
def folder(tmp_path, db):
    write_manifest(
        tmp_path, {"yards.csv": Written(sha256="ab", rows=3), "dictionary.csv": Written(sha256="cd")}
    )
    return tmp_path


def rewrite(folder, **changes):
    told = json.loads((folder / NAME).read_text())
    (folder / NAME).write_text(json.dumps(told | changes))


def test_what_was_written_is_read_again(folder):
    manifest = read_manifest(folder)
    assert manifest.program == program_now() and manifest.program.startswith("winter-order ")
    assert manifest.schema == schema_now() and set(manifest.schema) == {"apiary", "inventory", "planner"}
    assert manifest.files == {
        "yards.csv": Written(sha256="ab", rows=3),
        "dictionary.csv": Written(sha256="cd"),
    }


def test_no_time_and_no_path_stands_in_it(folder):
    text = (folder / NAME).read_text()
    assert str(folder) not in text
    assert set(json.loads(text)) == {"form", "program", "schema", "files"}


def test_the_checksum_is_that_of_the_standard(tmp_path):
    """FIPS 180-4's example of SHA-256: "abc"."""
    (tmp_path / "abc").write_bytes(b"abc")
    published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert sha256_of(tmp_path / "abc") == published
    (tmp_path / "long").write_bytes(b"a" * 3_000_000)
    assert sha256_of(tmp_path / "long") == hashlib.sha256(b"a" * 3_000_000).hexdigest()


def test_a_folder_without_a_manifest_is_refused(tmp_path):
    with pytest.raises(NotPlainData, match=r"no manifest\.json"):
        read_manifest(tmp_path)


@pytest.mark.parametrize(
    "text",
    ["no json", "[]", "{}", '{"form": 1, "program": "x", "schema": {}, "files": {"a.csv": {}}}', "null"],
)
def test_a_manifest_that_is_none_is_refused(tmp_path, text):
    (tmp_path / NAME).write_text(text)
    with pytest.raises(NotPlainData):
        read_manifest(tmp_path)


@pytest.mark.parametrize("name", ["/dev/zero", "../yards.csv", "documents/../../yards.csv"])
def test_a_manifest_that_names_a_file_outside_its_folder_is_refused(folder, name):
    rewrite(folder, files={name: {"sha256": "ab"}})
    with pytest.raises(NotPlainData, match="does not say what it should"):
        read_manifest(folder)


def test_a_newer_version_is_refused_and_says_to_bring_this_one_up(folder):
    rewrite(folder, schema=schema_now() | {"inventory": "9999_of_later"})
    with pytest.raises(NewerData, match="inventory 9999_of_later"):
        read_manifest(folder)


def test_a_newer_form_of_the_files_is_refused(folder):
    rewrite(folder, form=2)
    with pytest.raises(NewerData, match="form 2"):
        read_manifest(folder)


def test_an_older_version_is_refused_and_says_how_to_bring_it_along(folder):
    rewrite(folder, schema=schema_now() | {"apiary": "0001_initial"})
    with pytest.raises(OlderData, match="export it again"):
        read_manifest(folder)
    rewrite(folder, schema=schema_now(), form=0)
    with pytest.raises(OlderData, match="form 1"):
        read_manifest(folder)

"""Files kept by digest from dry run to posting."""

import datetime as dt
import os

import pytest

from inventory import uploads

NOW = dt.datetime(2026, 9, 1, tzinfo=dt.UTC)


@pytest.fixture(autouse=True)
def own_folder(settings, tmp_path):
    settings.DATA_DIR = tmp_path


def test_what_was_kept_comes_back_by_its_digest():
    digest = uploads.keep(b"a workbook", now=NOW)
    assert uploads.content_of(digest) == b"a workbook"
    assert uploads.keep(b"a workbook", now=NOW) == digest


def test_the_folder_is_its_owners_alone():
    uploads.keep(b"a workbook", now=NOW)
    assert uploads._folder().stat().st_mode & 0o077 == 0


@pytest.mark.parametrize("digest", ["", "../secret", "a" * 64, "g" * 64])
def test_nothing_else_is_read(digest):
    assert uploads.content_of(digest) is None


def test_content_that_no_longer_has_its_digest_is_not_given():
    digest = uploads.keep(b"a workbook", now=NOW)
    (uploads._folder() / f"{digest}.xlsx").write_bytes(b"another")
    assert uploads.content_of(digest) is None


def test_old_files_go_when_a_new_one_comes():
    old = uploads.keep(b"old", now=NOW)
    long_ago = (NOW - uploads.KEPT_FOR - dt.timedelta(hours=1)).timestamp()
    os.utime(uploads._folder() / f"{old}.xlsx", (long_ago, long_ago))
    new = uploads.keep(b"new", now=NOW)
    assert (uploads.content_of(old), uploads.content_of(new)) == (None, b"new")

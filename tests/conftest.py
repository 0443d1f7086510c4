"""Shared by all tests: plain static files, quick passwords, and skips that say what is missing."""

import os
import shutil

import pytest

from tests.processes import Books

IN_CI = os.environ.get("CI") == "true"


def need(found, what):
    """Skips the test with a reason where `what` is missing; on CI that is a failure."""
    if found:
        return
    if IN_CI:
        pytest.fail(f"{what} is missing on CI")
    pytest.skip(f"{what} is not installed")


def pytest_collection_modifyitems(items):
    """The run on PostgreSQL first: it takes longest, and nobody should wait for it alone."""
    items.sort(key=lambda item: item.get_closest_marker("postgres") is None)


@pytest.fixture(autouse=True)
def plain_static_files(settings):
    settings.STORAGES = {
        **settings.STORAGES,
        "staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"},
    }


@pytest.fixture(autouse=True)
def quick_passwords(settings):
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]


@pytest.fixture
def office():
    """Path of LibreOffice, or a skip."""
    path = shutil.which("soffice") or shutil.which("libreoffice")
    need(path, "LibreOffice")
    return path


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args):
    path = shutil.which("chromium")
    need(path, "chromium")
    flags = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"]
    flags += ["--disable-component-update", "--disable-sync"]
    return {**browser_type_launch_args, "executable_path": path, "headless": True, "args": flags}


@pytest.fixture
def books(tmp_path):
    """Books on disk with an invented outfit, for commands run as real processes; ends them all."""
    books = Books(tmp_path)
    yield books
    books.end()

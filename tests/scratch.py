"""Gives the tests a data folder of their own before settings are read: named by -p in pyproject.toml."""

import os
import tempfile

os.environ.setdefault("DATA_DIR", tempfile.mkdtemp(prefix="keeper-tests-"))
os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "true")

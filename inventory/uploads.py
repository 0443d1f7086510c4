"""Keeps a file that was sent, by its digest, from the dry run to the posting: what is posted is what was tried.

Takes bytes and the moment; gives the digest, or the bytes of a digest. Old files go when a new one comes.
"""

import re
from datetime import timedelta

from django.conf import settings

from inventory.loading import digest_of

KEPT_FOR = timedelta(days=7)
DIGEST = re.compile("[0-9a-f]{64}")


def _folder():
    folder = settings.DATA_DIR / "uploads"
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    return folder


def keep(content, *, now):
    """Writes the bytes down under their digest; gives the digest."""
    folder = _folder()
    for old in folder.glob("*.xlsx"):
        if old.stat().st_mtime < (now - KEPT_FOR).timestamp():
            old.unlink(missing_ok=True)
    digest = digest_of(content)
    whole = folder / f"{digest}.xlsx"
    part = whole.with_suffix(".part")
    part.write_bytes(content)
    part.replace(whole)
    return digest


def content_of(digest):
    """The bytes of that digest; None where they are not here any more, or are not what was sent."""
    path = _folder() / f"{digest}.xlsx"
    if not DIGEST.fullmatch(digest) or not path.is_file():
        return None
    content = path.read_bytes()
    return content if digest_of(content) == digest else None

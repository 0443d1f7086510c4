"""Names of files to download, safe on every desktop. Takes what people typed, gives a name; reads no file."""

import re
import unicodedata

LONGEST = 80
TAKEN = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)", re.IGNORECASE)  # names old desktops keep for devices


def file_name(*words, ending):
    """Letters, figures and hyphens of the words, then the ending; `order` where nothing of them is left.

    Letters with marks lose them; other scripts are left out, since headers and zip files carry them badly.
    """
    plain = unicodedata.normalize("NFKD", " ".join(str(word) for word in words))
    kept = re.sub(r"[^a-z0-9]+", "-", plain.encode("ascii", "ignore").decode().lower())
    stem = kept[:LONGEST].strip("-")
    if not stem or TAKEN.fullmatch(stem):
        stem = f"order-{stem}".rstrip("-")
    return f"{stem}.{ending}"

"""Opens a file that says it is a workbook, and refuses with a clear sentence what is not one or is too much.

Takes the bytes; gives nothing but leave to go on, or raises Unreadable. Looks at the package before anything
is unpacked: a small file can unpack to hundreds of megabytes.
"""

import io
import zipfile
import zlib
from xml.etree.ElementTree import ParseError

from defusedxml.common import DefusedXmlException
from defusedxml.ElementTree import iterparse

from inventory.sheets.faults import Unreadable
from inventory.sheets.markup import AFRESH, DAMAGED, NO_DOCTYPE

MEGABYTE = 2**20
LARGEST = 10 * MEGABYTE
LARGEST_UNPACKED = 50 * MEGABYTE
LARGEST_RATIO = 200
SMALL_MEMBER = 100_000  # bytes: a tiny member may pack better than the ratio and does no harm
MOST_MEMBERS = 200
AS_XLSX = "Open it in your spreadsheet program and save it as an Excel workbook (.xlsx)"
OLD_OR_LOCKED = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def leave_to_open(content):
    """Returns quietly where the bytes are an .xlsx workbook of sane size, else raises Unreadable."""
    if not content:
        raise Unreadable("The file is empty", "Save the workbook again and send that file")
    if len(content) > LARGEST:
        raise Unreadable(
            f"The file has {len(content) / MEGABYTE:.1f} MB, more than {LARGEST // MEGABYTE}",
            "Delete pictures and sheets that do not belong to it, then save it again",
        )
    if content.startswith(OLD_OR_LOCKED):
        raise _old_or_locked(content)
    if not content.startswith(b"PK"):
        raise _not_a_package(content)
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as package:
            _check_sizes(package.infolist())
            _check_kind(package)
            _check_markup(package)
    except (zipfile.BadZipFile, zlib.error, EOFError, OSError, NotImplementedError, ParseError) as error:
        raise Unreadable(*DAMAGED) from error


def _old_or_locked(content):
    if "EncryptedPackage".encode("utf-16-le") in content:
        return Unreadable("The workbook is locked with a password", "Save it without a password")
    return Unreadable("This is an old workbook (.xls)", AS_XLSX)


def _not_a_package(content):
    start = content[:4096].lstrip(b"\xef\xbb\xbf \r\n\t")
    if start[:1] == b"<":
        return Unreadable("This is a web page or XML file with another name", AS_XLSX)
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = content.decode("latin-1")
    if all(sign.isprintable() or sign in "\r\n\t" for sign in text[:4096]):
        return Unreadable("This is a text file (.csv or the like) with another name", AS_XLSX)
    return Unreadable("This is not a workbook", AS_XLSX)


def _check_sizes(members):
    if len(members) > MOST_MEMBERS:
        raise Unreadable(
            f"The workbook is made of {len(members)} pieces, more than {MOST_MEMBERS}",
            AFRESH,
        )
    if any(member.flag_bits & 1 for member in members):
        raise Unreadable("The workbook is locked with a password", "Save it without a password")
    unpacked = sum(member.file_size for member in members)
    swollen = any(
        member.file_size > SMALL_MEMBER and member.file_size > LARGEST_RATIO * max(1, member.compress_size)
        for member in members
    )
    if unpacked > LARGEST_UNPACKED or swollen:
        raise Unreadable(
            f"The file would unpack to {unpacked / MEGABYTE:.0f} MB",
            "Copy your rows into a fresh template and save that; empty formatted rows swell a file",
        )


def _check_kind(package):
    names = {name.lower() for name in package.namelist()}
    if "mimetype" in names and b"opendocument" in package.read("mimetype")[:200]:
        raise Unreadable("This is an OpenDocument file (.ods)", AS_XLSX)
    if "xl/workbook.bin" in names:
        raise Unreadable("This is a binary workbook (.xlsb)", AS_XLSX)
    if "xl/workbook.xml" not in names or "[content_types].xml" not in names:
        raise Unreadable("This is not a workbook", AS_XLSX)
    kinds = package.read(next(name for name in package.namelist() if name.lower() == "[content_types].xml"))
    if any(name.endswith("vbaproject.bin") for name in names) or b"macroEnabled" in kinds:
        raise Unreadable("The workbook carries macros", "Save it as an Excel workbook without macros (.xlsx)")


def _check_markup(package):
    """No document type anywhere: it is how a small file names others or swells. It stands before the root."""
    for name in package.namelist():
        if name.lower().endswith((".xml", ".rels", ".vml")):
            with package.open(name) as member:
                try:
                    next(iterparse(member, events=("start",), forbid_dtd=True), None)
                except DefusedXmlException as error:
                    raise Unreadable(*NO_DOCTYPE) from error


def reads_other_files(content):
    """True where its formulas name other workbooks. None of them is opened: what they last came to is in the file."""
    with zipfile.ZipFile(io.BytesIO(content)) as package:
        return any(name.lower().startswith("xl/externallinks/") for name in package.namelist())

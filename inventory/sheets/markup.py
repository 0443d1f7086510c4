"""One piece of a workbook's markup walked through, tag by tag, in bounded memory.

Takes a stream and a walker (start, end, text); gives nothing but calls. No tree is built; a document type, deep nesting
and endless text are refused, broken markup is damaged.
"""

from xml.parsers.expat import ExpatError, ParserCreate

from inventory.sheets.faults import Unreadable

CHUNK = 64 * 1024
DEEPEST = 64
LONGEST_TEXT = 100_000  # characters between two tags; a cell of a spreadsheet holds 32,767
AFRESH = "Copy your rows into a fresh template and save that"
DAMAGED = ("The file is damaged", "Open it in your spreadsheet program and save it again as .xlsx")
NO_DOCTYPE = ("The workbook holds a document type declaration, which no spreadsheet program writes", AFRESH)


class Walker:
    """What is called on the way; names come without their prefix. Text comes in one or more pieces."""

    def start(self, name, attributes):
        """A tag opens."""

    def end(self, name):
        """A tag closes."""

    def text(self, piece):
        """Some text between two tags."""


def walk(stream, walker):
    """Feeds the walker with all of the stream."""
    parser, depth, length = ParserCreate(), 0, 0
    parser.buffer_text, parser.buffer_size = True, 32 * 1024
    start, end, text = walker.start, walker.end, walker.text

    def opens(name, attributes):
        nonlocal depth, length
        depth, length = depth + 1, 0
        if depth > DEEPEST:
            raise Unreadable("The workbook's tags are nested too deep", AFRESH)
        start(name.rpartition(":")[2] if ":" in name else name, attributes)

    def closes(name):
        nonlocal depth, length
        depth, length = depth - 1, 0
        end(name.rpartition(":")[2] if ":" in name else name)

    def says(piece):
        nonlocal length
        length += len(piece)
        if length > LONGEST_TEXT:
            raise Unreadable(f"The workbook holds a text of more than {LONGEST_TEXT:,} signs", AFRESH)
        text(piece)

    parser.StartElementHandler, parser.EndElementHandler = opens, closes
    parser.CharacterDataHandler, parser.StartDoctypeDeclHandler = says, _no_doctype
    try:
        while chunk := stream.read(CHUNK):
            parser.Parse(chunk, False)
        parser.Parse(b"", True)
    except ExpatError as error:
        raise Unreadable(*DAMAGED) from error


def _no_doctype(*declared):
    raise Unreadable(*NO_DOCTYPE)

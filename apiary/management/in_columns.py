"""Rows for a terminal: columns as wide as their widest word, two spaces apart; columns of figures at the right.

Takes heads and rows of words or numbers; gives lines of text. Writes nothing.
"""


def in_columns(heads, rows):
    """The heads and every row, a line each."""
    cells = [[str(cell) for cell in row] for row in (heads, *rows)]
    widths = [max(len(row[at]) for row in cells) for at in range(len(heads))]
    figures = [at > 0 and all(isinstance(row[at], int) for row in rows) for at in range(len(heads))]
    return "\n".join(
        "  ".join(
            cell.rjust(width) if figure else cell.ljust(width)
            for cell, width, figure in zip(row, widths, figures, strict=True)
        ).rstrip()
        for row in cells
    )

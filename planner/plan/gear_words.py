"""What a keeper calls a part, one or many, in a sentence. Takes part facts, gives words; a price list's own names
are used where the trade has no shorter one."""

from planner.plan.words import number, plural, units_word

WIDTHS = {5: "five-frame", 6: "six-frame", 8: "eight-frame", 10: "ten-frame"}


def pieces(part, *, many=True):
    """ten-frame medium boxes; medium frames with foundation; lb of white sugar."""
    if part.kind == "box":
        return _flat(f"{wide(part)} {part.depth} {'boxes' if many else 'box'}", part)
    if part.kind == "foundation":
        return f"{'sheets' if many else 'sheet'} of {part.depth} foundation"
    if part.kind == "frame":
        return _frames(part, many)
    head, _, rest = part.name.partition(",")
    if part.unit not in ("", "piece"):
        return f"{units_word(part.unit, many=many)} of {head}"
    words = plural(head) if many else head
    if part.width and part.kind != "nuc box":
        return f"{wide(part)} {words}"
    return f"{words} ({rest.strip()})" if rest.strip() and part.kind == "consumable" else words


def counted(units, part):
    """60 medium frames; 1 deep box; 1,000 lb of white sugar."""
    return f"{number(units)} {pieces(part, many=round(units) != 1)}"


def wide(part):
    return WIDTHS.get(part.width, f"{part.width}-frame")


def _frames(part, many):
    noun = "frames" if many else "frame"
    if part.comb == "drawn":
        combs = "combs" if many else "comb"
        treated = ", treated" if part.treated else ""
        return " ".join(word for word in ("drawn", part.depth, part.comb_use, combs + treated) if word)
    if part.comb == "foundation":
        return f"{part.depth} {noun} with foundation"
    return _flat(f"{part.depth} {noun}", part)


def _flat(words, part):
    return f"{words} in pieces" if part.flat else words

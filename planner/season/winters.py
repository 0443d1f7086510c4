"""Winters as a keeper tells them: pairs of colonies in and out, typed as 60/44, 72/58.

Takes text, or pairs as they are stored; gives a tuple of pairs, or ValueError with a sentence. Fits nothing.
"""

import re

MOST_WINTERS = 20
APART = re.compile(r"[,;\n]+|(?<=\d)\s+(?=\d)")


def winters_of(question, told):
    """Pairs (in, out), the earliest first; none told: None."""
    pairs = [_pair(question, piece) for piece in _pieces(told)]
    if len(pairs) > MOST_WINTERS:
        raise ValueError(
            f"{question.ask} {len(pairs)} winters are more than fit: give the last {MOST_WINTERS}."
        )
    return tuple(pairs) or None


def _pieces(told):
    if isinstance(told, str):
        return [piece.strip() for piece in APART.split(re.sub(r"\s*/\s*", "/", told)) if piece.strip()]
    try:
        return list(told)
    except TypeError:
        return [told]


def _pair(question, piece):
    words = piece.split("/") if isinstance(piece, str) else piece
    try:
        went_in, came_out = (_whole(word) for word in words)
    except (TypeError, ValueError):
        said = piece if isinstance(piece, str) else winters_in_words([piece])
        raise ValueError(f"{question.ask} Give colonies in and out as 60/44; “{said}” is not that.") from None
    if not question.lowest <= went_in <= question.highest:
        span = f"{question.lowest:g} to {question.highest:g}"
        raise ValueError(f"{question.ask} {span} colonies may go into a winter; {went_in} lies outside.")
    if not 0 <= came_out <= went_in:
        raise ValueError(
            f"{question.ask} {came_out} came out of {went_in} that went in: that is more than there were. "
            "Leave out what you bought or split in between."
        )
    return went_in, came_out


def _whole(word):
    number = float(word)
    if number != int(number) or number < 0:
        raise ValueError
    return int(number)


def winters_in_words(winters):
    """60/44, 72/58."""
    return ", ".join("/".join(str(number) for number in _listed(pair)) for pair in winters)


def _listed(pair):
    return pair if isinstance(pair, list | tuple) else [pair]

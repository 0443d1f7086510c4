"""Each refusal of plain data is one clear sentence that says what to do."""

from planner.plain_data import errors


def test_each_refusal_says_what_where_and_what_to_do():
    refusals = [
        errors.FolderTaken(folder="/tmp/out", why="is not empty"),
        errors.NotWritten(folder="/tmp/out", why="No space left on device"),
        errors.NotPlainData(folder="/tmp/out", why="no manifest.json can be read in it"),
        errors.NewerData(folder="/tmp/out", program="winter-order 9", changes="apiary 0099_new"),
        errors.OlderData(folder="/tmp/out", program="winter-order 0", changes="apiary 0002_access"),
        errors.BooksThere(what="yards: 8"),
        errors.DatabaseRefuses(file="yards.csv", why="value too long"),
        errors.NotProven(faults="Movement 3 does not carry the digest it should."),
        errors.StillNotProven(faults="Shed: below zero."),
    ]
    for refusal in refusals:
        assert str(refusal).endswith(".")
        assert all(str(figure) in str(refusal) for figure in refusal.figures.values())

"""Plain columns and rows, kept as PuLP would be given them."""

from planner.programme.columns import PlainDraft
from tests.planner.small_problems import small_problem


def test_columns_are_numbered_and_named_once():
    draft = PlainDraft(small_problem())
    one, other = draft.column("packs", "a-b"), draft.column("packs", "a_b", highest=3, whole=True)
    assert [(c.name, c.number, c.lowBound, c.upBound, c.whole) for c in (one, other)] == [
        ("packs_a_b", 0, 0.0, None, False),
        ("packs_a_b__2", 1, 0.0, 3, True),
    ]


def test_rows_keep_terms_sense_and_bound():
    draft = PlainDraft(small_problem())
    column = draft.column("packs")
    for sense in ("<=", ">=", "=="):
        draft.row("budget", terms={column: 2.0}, sense=sense, bound=7)
    assert [(terms, sense, bound) for _, terms, sense, bound in draft.rows] == [
        ({column: 2.0}, -1, 7),
        ({column: 2.0}, 1, 7),
        ({column: 2.0}, 0, 7),
    ]
    assert draft.lp.numConstraints() == 0


def test_a_row_keeps_its_terms_when_they_are_added_to_afterwards():
    draft = PlainDraft(small_problem())
    column, terms = draft.column("packs"), {}
    terms[column] = 2.0
    draft.row("budget", terms=terms, sense="<=", bound=7)
    terms[column] = 3.0
    assert draft.rows[0][1] == {column: 2.0}

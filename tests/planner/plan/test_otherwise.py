"""What a line would be were a belief wrong: only from orders made for the other value."""

from decimal import Decimal

from planner.plan import report_of
from tests.planner.beliefs.samples import make_belief, make_end, make_section
from tests.planner.plan import small


def told(checked, number=1):
    report = report_of(small.operation(), small.assumptions(), small.problem(), small.plan(), beliefs=checked)
    return report.lines[number - 1].why


def checked(**ends):
    return make_section(rows=(make_belief(**ends),))


def test_the_belief_that_moves_the_line_most_is_told_at_its_end():
    low = make_end(changes={"north-box": (2, 1)}, regret=Decimal("40.00"))
    high = make_end(words="85 %", value=0.85, changes={"north-box": (2, 5)}, regret=Decimal("210.00"))
    assert told(checked(low=low, high=high)).otherwise == (
        "Were it 85 % instead of 72 % (colonies that come through the winter), the best order would have 3 packs "
        "more of it, 5 instead of 2; keeping this order would cost $210 a season."
    )


def test_a_line_that_would_go_altogether_says_so():
    low = make_end(changes={"north-box": (2, 0)}, regret=Decimal("0.20"))
    said = told(checked(low=low, high=None))
    assert said.otherwise.endswith(
        "the best order would not have this line at all; keeping it as it is would cost next to nothing."
    )
    assert said.text.endswith(said.otherwise)


def test_a_line_no_answer_tried_changes_says_so():
    assert told(checked(), number=2).otherwise == "No answer tried changes this line (1 was tried)."


def test_a_run_without_a_belief_check_says_only_what_the_line_rests_on():
    why = told(None)
    assert why.otherwise == ""
    assert why.rests_on == why.beliefs[0]
    assert told(make_section(rows=())).otherwise == ""

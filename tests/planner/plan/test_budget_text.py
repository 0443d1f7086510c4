"""Other budgets in a terminal: sentences, drops, what was not reached; nothing where the run did not ask."""

from planner.plan.budget_text import budget_lines
from planner.plan.terminal import WIDTH
from planner.plan.text import as_text
from tests.planner import made


def test_sentences_and_drops_are_told_in_order():
    said = budget_lines(made.make_report())
    assert said.startswith("The next $100 would earn $41 a season on top of what it costs.\n")
    assert said.endswith(
        "\nThen:\n  Medium box, flat: drop 4 packs of 12\n  Sugar, 50 lb bag: take 1 pack more"
    )
    assert max(len(line) for line in said.splitlines()) <= WIDTH
    assert said in as_text(made.make_report())


def test_a_study_that_ran_out_of_time_says_so():
    section = made.make_budgets(points=(), less=None, sentences=(), not_told="The time was up.")
    assert budget_lines(made.make_report(budgets=section)) == "The time was up."


def test_a_run_that_did_not_ask_tells_nothing():
    assert budget_lines(made.make_report(budgets=None)) == ""


def test_with_the_reasons_each_line_tells_what_a_pack_more_or_fewer_would_do():
    said = " ".join(as_text(made.make_report(), why=True).split())
    assert "One pack of 5 more costs $71 and should earn $40, so leave it; one fewer saves $71" in said

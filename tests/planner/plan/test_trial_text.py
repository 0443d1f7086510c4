"""The trial and the bad-years curve on a terminal."""

from planner.plan.trial_text import bad_years_table, trial_table
from tests.planner import made


def test_each_order_has_its_row_and_none_is_wider_than_the_terminal():
    table = trial_table(made.make_report())
    lines = table.splitlines()
    ours = next(line for line in lines if line.startswith("This order"))
    assert ours.split() == ["This", "order", "4,074", "6,500", "2,100", "+1,200", "−200", "and", "+2,650"]
    assert max(map(len, lines)) <= 100
    assert "Than yours" in table
    assert lines[-1] == "Hauling told yard by yard, this order is worth $6,480 a season."
    assert "between $200 less and $2,650 more" in " ".join(lines)


def test_the_order_compared_with_and_foresight_leave_open_what_they_have_not():
    lines = trial_table(made.make_report()).splitlines()
    assert next(line for line in lines if line.startswith("Your usual")).split()[-2:] == ["5,300", "900"]
    assert next(line for line in lines if line.startswith("Knowing")).split()[3] == "6,950"


def test_without_a_trial_there_is_no_table():
    assert trial_table(made.make_report(trial=None)) == ""
    assert bad_years_table(made.make_report(bad_years=None)) == ""


def test_the_curve_names_each_weight_and_this_order():
    lines = bad_years_table(made.make_report()).splitlines()
    assert lines[3].startswith("0%, this order") and lines[3].split()[-3:] == ["4,074", "6,520", "1,210"]
    assert lines[5].startswith("95%")

"""A fault of the files as a row of a table, and all of them at once."""

from planner.plain_data.faults import CellFault, Fault, FaultsFound


def test_a_fault_of_a_whole_file_names_no_line():
    fault = Fault(file="yards.csv", what="the file is missing", remedy="put it back")
    assert fault.row == ("yards.csv", "", "", "the file is missing", "put it back")


def test_all_faults_travel_together():
    faults = [Fault(file="acts.csv", line=n, column="day", what="no day", remedy="a day") for n in (2, 9)]
    found = FaultsFound(iter(faults))
    assert [fault.line for fault in found.faults] == [2, 9]
    assert str(found) == "2 faults in the files"


def test_a_cell_says_what_is_wrong_and_what_would_be_right():
    fault = CellFault("'x' is no day", "a day as 2026-11-30")
    assert (fault.what, fault.remedy) == ("'x' is no day", "a day as 2026-11-30")

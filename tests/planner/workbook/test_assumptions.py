"""The sheet Assumptions: every question, its answer, and where the default comes from."""

from openpyxl import Workbook

from planner.plan import report_of
from planner.season.questions import QUESTIONS
from planner.workbook.assumptions import write_assumptions
from tests.planner.plan import small


def test_every_question_has_its_row_and_own_answers_are_marked():
    assumptions = small.assumptions(survival_share=0.55)
    made = report_of(small.operation(), assumptions, small.problem(), small.plan())
    sheet = Workbook().active
    write_assumptions(sheet, made, "Letter")
    rows = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=4)]
    asked, worked = rows[: len(QUESTIONS)], rows[len(QUESTIONS) :]
    assert [row[1] for row in asked] == [question.ask for question in QUESTIONS]
    assert [(row[1], row[2]) for row in worked] == [(row.name, row.value) for row in made.computed]
    assert {row[5] for row in worked} == {"worked out"}
    survival = next(row for row in rows if row[1].startswith("Of a hundred colonies"))
    assert survival[2] == "55\N{NO-BREAK SPACE}%" and survival[5] == "your answer"
    assert "Kulhanek" in survival[6]
    assert all(row[6] for row in rows)

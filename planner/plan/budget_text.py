"""What other budgets would do, as plain text for a terminal, at most 100 columns wide.

Takes a Report, gives a few lines, or "" where the run did not ask.
"""

from planner.plan.budget import drops_said
from planner.plan.terminal import wrapped


def budget_lines(report):
    """Short: the sentences, and what to drop with less money; the curve is on the page and in the workbook."""
    section = report.budgets
    if section is None:
        return ""
    said = list(section.sentences)
    if section.less is not None and section.less.changes:
        said += ["Then:", *(f"  {change}" for change in drops_said(section.less))]
    if section.not_told:
        said.append(section.not_told)
    return "\n".join(wrapped(each, further="    " * each.startswith(" ")) for each in said)

"""The belief check as plain text for a terminal: three lines, at most 100 columns wide each before they wrap.

Takes a Report, gives what to find out first, or "" where it was not checked.
"""

from planner.plan.terminal import wrapped


def belief_lines(report):
    section = report.beliefs
    if section is None:
        return ""
    said = list(section.sentences)
    for belief in (section.row(key) for key in section.first):
        dearest = max(belief.ends, key=lambda end: end.regret)
        said.append(f"Find out: {belief.name} ({belief.answered}). {dearest.sentence}")
    return "\n".join(wrapped(each, further="  ") for each in said)

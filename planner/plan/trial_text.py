"""The trial and the bad-years curve as plain text for a terminal, at most 100 columns wide.

Takes a Report, gives a table with its sentences, or "" where there is none.
"""

from planner.plan.terminal import RULE, wrapped

NAME, SPENDS, MEAN, WORST, OVER, SPAN = 23, 11, 12, 13, 15, 26


def trial_table(report):
    trial = report.trial
    if trial is None:
        return ""
    over = (
        "Than yours"
        if trial.against == "yours"
        else "Than the rule"
        if trial.against == "rule"
        else "Than it"
    )
    rows = [
        f"Tried on {trial.seasons:,} fresh seasons, in {report.money}",
        _row("Order", "Spends", "Mean", "Worst in 20", over, "19 seasons of 20 between"),
        RULE,
    ]
    rows += [
        _row(
            row.name[:1].upper() + row.name[1:],
            "" if row.spend is None else f"{row.spend:,.0f}",
            _figure(row.worth),
            _figure(row.bad_year),
            "" if row.key == trial.against else _signed(row.over),
            "" if row.key == trial.against else f"{_signed(row.low)} and {_signed(row.high)}",
        )
        for row in trial.rows
    ]
    said = (*trial.sentences, *([trial.by_yard.said] if trial.by_yard else []))
    return "\n".join([*rows, RULE, *map(wrapped, said)])


def bad_years_table(report):
    curve = report.bad_years
    if curve is None:
        return ""
    rows = [
        f"Mean season against bad years, {curve.seasons:,} seasons, in {report.money}",
        _row("Weight on bad years", "Spends", "Mean", "Worst tenth", "", ""),
        RULE,
    ]
    rows += [
        _row(
            f"{point.weight:.0%}{', this order' if point.chosen else ''}",
            f"{point.spend:,.0f}",
            _figure(point.mean),
            _figure(point.bad_years),
            "",
            "",
        )
        for point in curve.points
    ]
    return "\n".join([*rows, RULE, *map(wrapped, curve.sentences)])


def _row(name, spends, mean, worst, over, span):
    return (
        f"{name:<{NAME}}{spends:>{SPENDS}}{mean:>{MEAN}}{worst:>{WORST}}{over:>{OVER}}{span:>{SPAN}}".rstrip()
    )


def _figure(value):
    return f"{value:,.0f}".replace("-", "−")


def _signed(value):
    return f"+{value:,.0f}" if value > 0 else _figure(value)

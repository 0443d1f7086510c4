"""What the trade refuses: named exceptions that carry their figures and say what, where and what to do.

Takes figures by keyword; gives one clear sentence. `Refused` is caught by views, loaders and commands;
inventory adds its own refusals. Bugs are not here: they stay plain Python errors.
"""

import datetime as dt
from string import Formatter


def told(figure):
    """A figure as it stands in a sentence: a day is written out."""
    if isinstance(figure, dt.date):
        return f"{figure.day} {figure:%B %Y}"
    return figure


class Refused(Exception):
    """An act that makes no sense. Subclasses give `sentence`, whose fields are the figures they carry."""

    sentence = "{what}"

    def __init__(self, **figures):
        wanted = {name for _, name, _, _ in Formatter().parse(self.sentence) if name}
        if wanted - set(figures):
            raise TypeError(f"{type(self).__name__} lacks {sorted(wanted - set(figures))}")
        self.figures = figures
        super().__init__(self.sentence.format(**{name: told(value) for name, value in figures.items()}))

    def __getattr__(self, name):
        try:
            return self.__dict__["figures"][name]
        except KeyError:
            raise AttributeError(name) from None

    @property
    def problems(self):
        """All that is wrong, one exception each."""
        return (self,)


class Several(Refused):
    """More than one thing is wrong with an act; `problems` holds each."""

    def __init__(self, problems):
        self.several = tuple(problems)
        super().__init__(what=" ".join(str(problem) for problem in self.several))

    @property
    def problems(self):
        return self.several


def refuse(problems):
    """Raises the one problem, or all of them together; does nothing where there is none."""
    problems = tuple(problems)
    if len(problems) == 1:
        raise problems[0]
    if problems:
        raise Several(problems)


class FutureDay(Refused):
    sentence = "{day} is still to come: give the day it was done, today ({today}) at the latest."


class ColonyEnded(Refused):
    sentence = (
        "Colony {colony} ended on {ended_on}: this cannot be done to it on {day}. "
        "Give an earlier day, or salvage its gear instead."
    )


class ColonyNotStarted(Refused):
    sentence = "Colony {colony} started on {started_on}, after {day}: give a later day."


class TagTaken(Refused):
    sentence = "There is a colony {tag} already (in {yard}): give the new one a tag of its own."


class NoTag(Refused):
    sentence = "A colony needs a tag of 1 to 30 letters, got {tag!r}: write what stands on its hive."


class MotherUnfit(Refused):
    sentence = "Colony {mother} cannot be the mother of {tag} on {day}: {why}. Name another mother, or leave it empty."


class SameYard(Refused):
    sentence = "Colony {colony} stands in {yard} already on {day}: choose another yard."


class SameSet(Refused):
    sentence = "Colony {colony} stands in {hive_set} already: choose another set."


class UnknownWord(Refused):
    sentence = "{word!r} is not a {what}: choose one of {choices}."


class LaterEvent(Refused):
    sentence = "Colony {colony} cannot have ended on {day}: it was still {event} on {event_day}. Give that day or a later one."


class MoreRestsOnIt(Refused):
    sentence = (
        "Colony {colony} ({event}, {event_day}) cannot be put back: {later} on {later_day} rests on it. "
        "Undo that first."
    )

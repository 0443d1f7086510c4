"""The season's forms: a season itself, its answers (built from the questions), and how hard a run looks.

Take what was typed; give checked values with the fault at its field. AnswersForm writes a season's answers,
and of them only those that differ from the usual; everything else about runs is written by runs.py.
"""

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal

from django import forms
from django.utils import timezone
from django.utils.text import slugify

from planner.errors import Refused
from planner.intake import keeper_facts, operation_as_of, past_winters
from planner.models import Season
from planner.season.assumptions import AnswerFaults, assumptions_of
from planner.season.question import JUDGEMENT, Question
from planner.season.questions import GROUPS, questions_for
from planner.season.winters import winters_in_words

HEADS = {
    "bees": "Winter and spring",
    "splits": "Splits and nucs",
    "flow": "Flow and supers",
    "gear": "Gear",
    "feed": "Feed and treatments",
    "money": "Money",
    "work": "Your time",
}
FRESH_SEASONS = 300
YES_NO = (("yes", "yes"), ("no", "no"))


class SeasonForm(forms.ModelForm):
    """Name, day of the order and budget of a season."""

    budget = forms.DecimalField(
        label="What may this order cost?",
        help_text="Shipping included. Empty: no limit, buy whatever is worth its money.",
        min_value=0,
        max_value=1_000_000,
        decimal_places=2,
        required=False,
        widget=forms.NumberInput(attrs={"step": "any", "inputmode": "decimal"}),
    )

    class Meta:
        model = Season
        fields = ["name", "starts_on"]
        labels = {"name": "Name of the season", "starts_on": "Day of the order"}
        help_texts = {
            "name": "As Winter order 2027.",
            "starts_on": "The 52 weeks from this day are planned; what the books hold that evening counts.",
        }
        widgets = {"starts_on": forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"})}

    def __init__(self, *args, **kwargs):
        super().__init__(*args, **kwargs)
        self.fields["budget"].initial = self.instance.budget
        if not self.instance.pk:
            self.fields["starts_on"].initial = timezone.localdate

    def save(self, commit=True):
        if self.is_valid():
            budget = self.cleaned_data["budget"]
            self.instance.budget_cents = None if budget is None else int(budget * 100)
        return super().save(commit)


class RunForm(forms.Form):
    """How hard to look. The usual values do for nearly all."""

    scenarios = forms.IntegerField(
        label="Seasons drawn",
        help_text="Ways the year may go. More take longer and change the order less and less.",
        min_value=1,
        max_value=1000,
        initial=100,
    )
    seed = forms.IntegerField(
        label="Seed",
        help_text="Another number draws other seasons: a good order hardly changes.",
        min_value=0,
        max_value=2_147_483_647,
        initial=1,
    )
    seconds = forms.IntegerField(
        label="Longest look, seconds",
        help_text="The best order found by then is shown, with how far it may be from the best there is.",
        min_value=1,
        max_value=3600,
        initial=120,
    )
    trial = forms.IntegerField(
        label="Fresh seasons to try the order on",
        help_text="Seasons nobody planned with; the order meets others on them. More tell smaller differences.",
        required=False,
        min_value=10,
        max_value=1000,
        initial=FRESH_SEASONS,
    )
    bad_years_curve = forms.BooleanField(
        label="Also draw the bad-years curve",
        help_text="What bad years would gain and the mean season lose. Some five more orders are worked out for it.",
        required=False,
    )
    beliefs = forms.BooleanField(
        label="Also check the beliefs",
        help_text="Sets every answer nobody can be sure of lower and higher: which would pay most to know better. "
        "A minute and a half more.",
        required=False,
    )

    def clean_trial(self):
        return self.cleaned_data["trial"] or FRESH_SEASONS


@dataclass(frozen=True, kw_only=True)
class AskedQuestion:
    """One question as the page shows it."""

    field: forms.BoundField
    usual: str
    span: str
    unit: str
    source: str
    own: bool
    is_choice: bool
    is_wide: bool


@dataclass(frozen=True, kw_only=True)
class AskedGroup:
    name: str
    anchor: str
    answered: str
    open: bool
    questions: tuple[AskedQuestion, ...]


class AnswersForm(forms.Form):
    """A field for every question. What stays empty is taken as usual and not stored."""

    def __init__(self, season, data=None):
        super().__init__(data)
        self.season, self.keeper = season, keeper_facts()
        told = (self.data or {}).get("region") or season.answers.get("region") or self.keeper.region
        self.questions = questions_for(told)
        for question in self.questions:
            self.fields[question.key] = field_of(question, season.answers.get(question.key))

    def clean(self):
        typed = super().clean() or {}
        defaults = {question.key: question.default for question in questions_for(self.keeper.region)}
        usual = {question.key: question.default for question in self.questions} | {
            "region": defaults["region"]
        }
        answers = {
            question.key: answer
            for question in self.questions
            if (answer := answer_of(question, typed.get(question.key))) is not None
            and answer != usual[question.key]
        }
        try:
            self._check(answers)
        except AnswerFaults as faults:
            for key, message in faults.messages.items():
                if key not in self.errors:
                    self.add_error(key, message.removeprefix(self.fields[key].label).strip())
        return {"answers": answers}

    def _check(self, answers):
        day = self.season.starts_on
        try:
            operation = operation_as_of(day)
        except Refused:  # told when a run is asked for; the answers can be kept all the same
            operation = None
        assumptions_of(answers, start=day, region=self.keeper.region, operation=operation)

    def save(self):
        self.season.answers = self.cleaned_data["answers"]
        self.season.save(update_fields=["answers"])
        return self.season

    @property
    def faults_said(self):
        count = len(self.errors)
        return (
            f"{count} answer will not do: see below."
            if count == 1
            else f"{count} answers will not do: see below."
        )

    def groups(self):
        """The questions group by group, in the order they are asked."""
        for group in GROUPS:
            asked = tuple(self._asked(question) for question in self.questions if question.group == group)
            own = sum(question.own for question in asked)
            yield AskedGroup(
                name=HEADS[group],
                anchor=slugify(group),
                answered=f"{own} of {len(asked)} own",
                open=any(question.field.errors for question in asked),
                questions=asked,
            )

    def _asked(self, question):
        is_choice = question.kind in ("choice", "flag")
        usual = usual_words(question, self.season.starts_on)
        if question.kind == "winters":
            usual = winters_in_words(past_winters(self.season.starts_on))
        return AskedQuestion(
            field=self[question.key],
            usual=usual,
            span="" if is_choice else span_words(question),
            unit=unit_words(question, self.keeper.money),
            source="" if is_choice and question.source == JUDGEMENT else source_words(question),
            own=question.key in self.season.answers,
            is_choice=is_choice,
            is_wide=len(question.choices) > 3,
        )


def field_of(question, answer):
    """The form field of a question, holding the keeper's own answer if there is one."""
    words = {"label": question.ask, "help_text": question.help, "required": False}
    if question.kind == "choice":
        told = question.default if answer is None else answer
        return forms.ChoiceField(choices=question.choices, widget=forms.RadioSelect, initial=told, **words)
    if question.kind == "flag":
        told = question.default if answer is None else answer
        yes = "yes" if told else "no"
        return forms.ChoiceField(choices=YES_NO, widget=forms.RadioSelect, initial=yes, **words)
    if question.kind == "winters":
        told = winters_in_words(answer) if isinstance(answer, list | tuple) else answer
        typed = forms.TextInput(attrs={"autocomplete": "off", "placeholder": "60/44, 72/58"})
        return forms.CharField(initial=told, widget=typed, max_length=300, **words)
    whole = question.kind in ("whole", "week")
    attrs = {"inputmode": "numeric" if whole else "decimal", "step": "1" if whole else "any"}
    kind = forms.IntegerField if whole else forms.FloatField
    return kind(initial=shown(question, answer), widget=forms.NumberInput(attrs=attrs), **words)


def answer_of(question, typed):
    """What is stored of what was typed; None where nothing was."""
    if typed in (None, ""):
        return None
    if question.kind == "flag":
        return typed == "yes"
    if question.kind == "share":
        return float(Decimal(repr(typed)) / 100)
    return typed


def shown(question, value):
    """A stored value as it is typed: shares in per cent."""
    if value is None or question.kind != "share":
        return value
    percent = Decimal(repr(value)) * 100
    return int(percent) if percent == int(percent) else float(percent)


def usual_words(question, day):
    if question.default is None:
        return ""
    if question.kind == "flag":
        return "yes" if question.default else "no"
    if question.kind == "choice":
        return dict(question.choices).get(question.default, question.default)
    value = f"{shown(question, question.default):,g}"
    if question.kind == "week":
        monday = dt.date.fromisocalendar(day.year, min(question.default, 52), 1)
        return f"week {value}, about {monday.day} {monday:%B}"
    return f"{value} %" if question.kind == "share" else value


def span_words(question):
    if question.lowest is None or question.kind == "winters":
        return ""
    return f"from {shown(question, question.lowest):,g} to {shown(question, question.highest):,g}"


def unit_words(question, money):
    if question.kind == "share":
        return "%"
    if question.kind == "money":
        return f"{money} {question.unit}".strip()
    return {"ISO week": "week of the year"}.get(question.unit, question.unit)


def source_words(question: Question):
    return "Our judgement." if question.source == JUDGEMENT else f"Source: {question.source}."

"""The tag around a table: its link, and the lines handed over when asked for."""

import pytest
from django.template import Context, Template, TemplateSyntaxError
from django.test import RequestFactory

LINES = '{% load downloads %}{% download "yards" title=name %}<table></table>{% enddownload %}'


def shown(address, lines=LINES, method="get"):
    request = getattr(RequestFactory(), method)(address)
    return Template(lines).render(Context({"request": request, "name": "Yards <1>"})), request


def test_the_link_names_the_table_and_is_written_safely():
    lines, request = shown("/yards/?a=<b>")
    assert 'href="?a=%3Cb%3E&amp;download=yards"' in lines
    assert "Yards &lt;1&gt;" in lines
    assert not hasattr(request, "table_asked_for")


def test_the_lines_are_handed_over_where_asked_for():
    _, request = shown("/yards/?download=yards")
    assert request.table_asked_for["lines"] == "<table></table>"
    assert request.table_asked_for["title"] == "Yards <1>"


@pytest.mark.parametrize("lines", [LINES.replace("<table></table>", "<p>None</p>")])
def test_no_link_where_no_table_is(lines):
    assert "download=" not in shown("/yards/", lines)[0]


def test_no_link_on_the_answer_to_a_form():
    assert "download=" not in shown("/yards/", method="post")[0]


@pytest.mark.parametrize(
    "tag", ["download", 'download "yards"', 'download "yards" name', 'download "yards" title="x" other=1']
)
def test_a_tag_without_its_words_is_refused(tag):
    with pytest.raises(TemplateSyntaxError, match="download"):
        Template("{% load downloads %}{% " + tag + " %}{% enddownload %}")


def test_what_was_chosen_and_the_title_block_go_along():
    request = RequestFactory().get("/yards/?download=yards")
    lines = LINES.replace("title=name", "title=name words='kind box'")
    told = {"request": request, "name": "Yards", "cells": [("From", "1 Nov 2026"), ("To", "3 Nov 2026")]}
    Template(lines).render(Context(told))
    assert request.table_asked_for["words"] == "kind box. From 1 Nov 2026, To 3 Nov 2026"

"""Sends the form of a page as a person would: opened first, then all its fields with what was changed."""

import re


def opened(client, address):
    """What the form of the page holds before anybody touches it: {field: value}."""
    form = client.get(address).context["form"]
    values = {name: form[name].value() for name in form.fields}
    return {name: value for name, value in values.items() if value not in (None, False, "")}


def send(client, address, follow=True, **changed):
    """The answer to the page's form with these fields changed; None leaves a field out."""
    fields = {**opened(client, address), **changed}
    return client.post(
        address, {name: value for name, value in fields.items() if value is not None}, follow=follow
    )


def text(answer):
    """What a person reads on the page, spaces made one."""
    words = re.sub(r"<(script|style).*?</\1>", " ", answer.content.decode(), flags=re.S)
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", words)).replace("&#x27;", "'")


def said(answer):
    """The messages of a page."""
    return [str(message) for message in answer.context["messages"]]


def faults(answer):
    """What is wrong with the form as a whole."""
    return answer.context["form"].faults

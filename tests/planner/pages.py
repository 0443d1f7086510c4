"""A page of the planner asked for by the name of its address, and what it says without its marks."""

import re

from django.urls import reverse


def page(client, name, *args, **kwargs):
    return client.get(reverse(name, args=args), **kwargs)


def text(response):
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", response.content.decode()))

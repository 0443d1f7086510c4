"""{% download "orders" title="Orders" words=asked.chosen_words %} a table {% enddownload %}: its link to the workbook.

Takes what stands between; gives it with the link under it, and hands it over where the workbook was asked for.
"""

from django import template
from django.template.base import token_kwargs
from django.utils import timezone
from django.utils.html import format_html

from inventory.downloads import asked_for, link_to

register = template.Library()


@register.tag
def download(parser, token):
    bits = token.split_contents()[1:]
    if not bits:
        raise template.TemplateSyntaxError("download needs the table's name")
    name, rest = parser.compile_filter(bits[0]), bits[1:]
    told = token_kwargs(rest, parser)
    if rest or set(told) - {"title", "words"} or "title" not in told:
        raise template.TemplateSyntaxError("download takes the table's name, title= and perhaps words=")
    lines = parser.parse(("enddownload",))
    parser.delete_first_token()
    return DownloadNode(name, told, lines)


class DownloadNode(template.Node):
    def __init__(self, name, told, lines):
        self.name, self.told, self.nodelist = name, told, lines

    def render(self, context):
        lines = self.nodelist.render(context)
        request = context.get("request")
        if request is None or "<table" not in lines or request.method not in ("GET", "HEAD"):
            return lines
        name = str(self.name.resolve(context))
        title = str(self.told["title"].resolve(context))
        if asked_for(request) == name:
            words = self._words(context)
            day = timezone.localdate()
            request.table_asked_for = {"lines": lines, "title": title, "words": words, "day": day}
        link = format_html(
            '<p class="download"><a href="{}">Download as .xlsx<span class="hidden">: {}</span></a></p>',
            link_to(request, name),
            title,
        )
        return lines + link

    def _words(self, context):
        """What the page was narrowed to, and what its title block says: as of which day, from when to when."""
        chosen = str(self.told["words"].resolve(context)) if "words" in self.told else ""
        cells = ", ".join(f"{label} {value}" for label, value in context.get("cells") or ())
        return ". ".join(filter(None, (chosen, cells)))

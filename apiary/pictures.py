"""An address as a picture for a phone's camera.

Takes the address and what to call it; gives an SVG. Asks nothing of anyone.
"""

import io

import segno
from django.utils.safestring import mark_safe

THIS_MACHINE = ("localhost", "127.0.0.1", "[::1]", "0.0.0.0")


def picture_of(address, title):
    """Dark on white in any light, with the quiet edge a camera needs."""
    drawn = io.BytesIO()
    segno.make(address, micro=False, error="m").save(
        drawn,
        kind="svg",
        scale=4,
        border=4,
        light="#fff",
        xmldecl=False,
        svgns=False,
        title=title,
        omitsize=True,
    )
    return mark_safe(drawn.getvalue().decode())


def is_this_machine(host):
    """True for a host that means the machine itself: no phone finds it there."""
    name = host if host.endswith("]") else host.rpartition(":")[0] or host
    return name.lower() in THIS_MACHINE

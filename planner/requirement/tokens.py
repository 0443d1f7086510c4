"""Parts that are no gear: they only count what bees can still draw. Worth nothing, bought nowhere, shown to nobody."""

DRAWING = "drawing"  # one frame that may still be drawn in the flow that is on
RESTED = "rested"  # one frame's drawing that is over: drawn, or let go with the flow
TOKENS = (DRAWING, RESTED)

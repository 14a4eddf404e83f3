"""The upright scale of a picture: round levels from the ground up, and where a value lies."""

import math

from markupsafe import Markup

from generator.book.charts.drawing import pixels, rule, text_line

PLOT_PX, HEAD_PX, FOOT_PX, OVER_THE_LINE_PX = 180, 22, 24, 3
FOOT_LINE_PX = HEAD_PX + PLOT_PX + 16
_STEPS = (1, 2, 2.5, 5, 10)
LINES_AT_MOST = 5


def scale_top(highest: float) -> float:
    """Return the round number that the scale goes up to.

    >>> scale_top(7.2), scale_top(0.34), scale_top(0)
    (8.0, 0.4, 1.0)
    """
    if highest <= 0:
        return 1.0
    step = level_step(highest)
    return float(f"{step * math.ceil(highest / step):.6g}")


def level_step(highest: float) -> float:
    """Return the round step between two levels of a scale, so that there are a few of them.

    >>> level_step(7.2), level_step(1134)
    (2.0, 250.0)
    """
    power = 10.0 ** math.floor(math.log10(highest / LINES_AT_MOST))
    steps = (step * power for step in _STEPS)
    # rounded: a step times a power of ten may miss the round number by its last digit
    return next(float(f"{step:.6g}") for step in steps if step * LINES_AT_MOST >= highest)


def down_px(value: float, top: float) -> float:
    """Return how far down a picture a value lies, under a scale that goes up to `top`.

    >>> down_px(8, 8), down_px(0, 8)
    (22.0, 202.0)
    """
    return HEAD_PX + PLOT_PX * (1 - value / top)


def levels(top: float) -> list[Markup]:
    """Return the lines of the levels, each with its number; the lowest is the ground."""
    step, parts = level_step(top), []
    for number in range(round(top / step) + 1):
        y = down_px(step * number, top)
        parts.append(rule("0", pixels(y), "100%", pixels(y), "level" if number else "ground-line"))
        if number:
            over = pixels(y - OVER_THE_LINE_PX)
            parts.append(text_line("0", over, f"{step * number:,.6g}", "start", "scale"))
    return parts

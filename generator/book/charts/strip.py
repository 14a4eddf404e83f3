"""A strip from above with the passes of a sprayer over it, to scale across, not along.

Passes lie one beside the other from the edge where the work begins; where two lap is hatched.
"""

from collections.abc import Iterator
from itertools import pairwise

from markupsafe import Markup

from generator.book.charts.drawing import box, paint, picture, pixels, rule, text_line
from generator.dataclass import dataclass

HEAD_PX, FOOT_PX, EDGE_PX = 16, 18, 3
LEAST_PX, PASS_PX, LEAST_LAP_PX, ARROW_PX = 40, 19, 0.1, 5
# Where the numbers stand, the strip begins, how wide it is, and where the ways begin and end.
NUMBERS, LEFT, WIDE, WAY = "5%", "10%", "88%", ("12%", "96%")
# Of more passes than these the first few are drawn, and the last.
ALL_UP_TO, FIRST_OF_MANY = 4, 2


@dataclass(frozen=True, slots=True)
class StripPass:
    """A pass: from how far inside the first edge to how far, in feet, below 0 beside the strip."""

    from_ft: float
    to_ft: float


@dataclass(frozen=True, slots=True)
class StripPicture:
    """A strip of a width with its passes, from the edge where the first one runs."""

    name: str
    title: str
    width_ft: float
    passes: tuple[StripPass, ...]


def strip_drawn(chart: StripPicture) -> Markup:
    """Return the picture: the ground, a band for each pass with its number and its way."""
    shown, away_ft = _shown(chart.passes)
    width_ft = chart.width_ft - away_ft
    beside_ft = max(0.0, -chart.passes[0].from_ft)
    # where some are left out, as much room as one of them has
    across_px = max(PASS_PX * (len(shown) + bool(away_ft)), LEAST_PX)
    px_per_ft = across_px / (width_ft + 2 * beside_ft)
    top_px = HEAD_PX + EDGE_PX + beside_ft * px_per_ft

    def down_px(inside_ft: float) -> float:
        return top_px + inside_ft * px_per_ft

    ground_px = width_ft * px_per_ft
    parts = [box(LEFT, pixels(top_px), WIDE, pixels(ground_px), 'class="strip"')]
    for (_, one), (_, following) in pairwise(shown):
        # a lap is what two passes share; by an error of rounding alone there is none
        lap_px = (one.to_ft - following.from_ft) * px_per_ft
        if lap_px > LEAST_LAP_PX:
            painted = paint(chart.name, "hatch").replace("drawn", "lap")
            parts.append(
                box(LEFT, pixels(down_px(following.from_ft)), WIDE, pixels(lap_px), painted)
            )
    for number, one in shown:
        parts += _pass(number, down_px(one.from_ft), down_px(one.to_ft))
    if away_ft:
        gap_px = (down_px(shown[-2][1].to_ft) + down_px(shown[-1][1].from_ft)) / 2
        parts.append(text_line(NUMBERS, pixels(gap_px + 4), "to", "middle"))
    foot_px = HEAD_PX + across_px + 2 * EDGE_PX
    parts.append(text_line(LEFT, str(HEAD_PX - 4), "begin here"))
    parts.append(text_line(LEFT, pixels(foot_px + 13), "far edge"))
    return picture(chart.name, foot_px + FOOT_PX, chart.title, "", parts, ("hatch",))


def _shown(passes: tuple[StripPass, ...]) -> tuple[list[tuple[int, StripPass]], float]:
    """Return the passes to draw with their numbers, and how many feet are left out of many."""
    numbered = list(enumerate(passes, 1))
    if len(passes) <= ALL_UP_TO:
        return numbered, 0.0
    number, last = numbered[-1]
    begins_ft = passes[FIRST_OF_MANY].to_ft
    away_ft = last.from_ft - begins_ft
    moved = StripPass(begins_ft, last.to_ft - away_ft)
    return [*numbered[:FIRST_OF_MANY], (number, moved)], away_ft


def _pass(number: int, top_px: float, foot_px: float) -> Iterator[Markup]:
    """Yield the edges of a pass, its number, and its middle with the way it is driven."""
    middle = (top_px + foot_px) / 2
    yield box(LEFT, pixels(top_px), WIDE, pixels(foot_px - top_px), 'class="pass"')
    yield text_line(NUMBERS, pixels(middle + 4), str(number), "middle")
    yield rule(WAY[0], pixels(middle), WAY[1], pixels(middle), "way")
    # there and back
    x, back = (WAY[1], -ARROW_PX) if number % 2 else (WAY[0], ARROW_PX)
    path = f"M{back},{-ARROW_PX / 2}L0,0L{back},{ARROW_PX / 2}"
    yield Markup(f'<svg x="{x}" y="{pixels(middle)}"><path d="{path}" class="way"/></svg>')

"""A screen beside a person: how tall it stands on some days, drawn to one scale."""

from markupsafe import Markup

from generator.book.charts.drawing import percent, picture, pixels, rule
from generator.dataclass import dataclass

TALL_PX, EDGE_PX = 150, 4
# The right half of a body from the neck down: how far across and how high up, in shares of the
# whole figure's height.
RIGHT_HALF = (
    (0.025, 0.85), (0.03, 0.83), (0.1, 0.8), (0.115, 0.77), (0.125, 0.5), (0.1, 0.46),
    (0.085, 0.7), (0.08, 0.48), (0.07, 0.02), (0.09, 0), (0.015, 0), (0.01, 0.44),
)  # fmt: skip
HEAD_FRACTION = 0.07  # half the height of a head, of that of the whole figure
BLADES = 9
BLADE_PX = 5
# Of the room that each height has: where the figure stands, and where the grass.
PERSON_FRACTION, GRASS_FRACTION = 0.25, 0.62


@dataclass(frozen=True, slots=True)
class Silhouettes:
    """The heights in feet of a screen, side by side, each beside the same figure.

    `needed_ft` is drawn across them where it is known. What each is stands in words below it.
    """

    name: str
    title: str
    person_ft: float
    heights_ft: tuple[float, ...]
    needed_ft: float | None = None


def silhouettes_drawn(chart: Silhouettes) -> Markup:
    """Return the picture: for each height a figure, and grass beside it as tall as it stands."""
    px_per_ft = TALL_PX / max(chart.person_ft, chart.needed_ft or 0, *chart.heights_ft)
    ground_px = EDGE_PX + TALL_PX
    wide = 1 / len(chart.heights_ft)
    parts = [rule("0", pixels(ground_px), "100%", pixels(ground_px), "ground-line")]
    for number, height_ft in enumerate(chart.heights_ft):
        left = number * wide
        person = _person(chart.person_ft * px_per_ft)
        parts.append(_at(left + wide * PERSON_FRACTION, ground_px, person))
        if height_ft > 0:
            grass = _grass(height_ft * px_per_ft, height_ft)
            parts.append(_at(left + wide * GRASS_FRACTION, ground_px, grass))
    if chart.needed_ft is not None:
        y = pixels(ground_px - chart.needed_ft * px_per_ft)
        parts.append(rule("0", y, "100%", y, "needed"))
    return picture(chart.name, ground_px + EDGE_PX, chart.title, "", parts)


def _at(across_fraction: float, ground_px: float, drawn: str) -> Markup:
    """Return what is drawn around a point of the ground, up from it."""
    return Markup(f'<svg x="{percent(across_fraction)}" y="{pixels(ground_px)}">{drawn}</svg>')


def _person(tall_px: float) -> str:
    """Return a standing figure of a height: a head, and a body from the neck to the ground."""
    outline = [*RIGHT_HALF, *((-across, up) for across, up in reversed(RIGHT_HALF))]
    points = " ".join(
        f"{pixels(across * tall_px)},{pixels(-up * tall_px)}" for across, up in outline
    )
    head_px = HEAD_FRACTION * tall_px
    return (
        f'<ellipse cy="{pixels(head_px - tall_px)}" rx="{pixels(head_px * 0.8)}"'
        f' ry="{pixels(head_px)}" class="person"/><polygon points="{points}" class="person"/>'
    )


def _grass(tall_px: float, stands_ft: float) -> str:
    """Return blades side by side; the tallest in the middle is as tall as the grass."""
    blades = []
    for number in range(BLADES):
        aside = number - BLADES // 2
        # those beside the middle stand lower and lean outward, as a tuft does
        across, tip = aside * BLADE_PX, aside * BLADE_PX * 1.15
        up = tall_px * (1 - abs(aside) / (3 * BLADES))
        blades.append(f"M{across},0Q{across},{pixels(-up / 2)} {pixels(tip)},{pixels(-up)}")
    return f'<path d="{"".join(blades)}" class="grass" data-feet="{stands_ft!r}"/>'

"""A drawing of some ground from above: what lies there in ink and pattern, named or numbered.

North is up. A name stands where it lies over no other; what has no room for its name has a number,
and its name stands in the legend. What is drawn is thinned until the whole is small enough.
"""

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import chain

from markupsafe import Markup

from generator.book.charts.drawing import pixels
from generator.book.charts.ground_frame import (
    Frame,
    PlaneSpot,
    SheetBox,
    box_around,
    cut_outline,
    path_of,
)
from generator.book.charts.ground_laid import (
    OVER_PX,
    SIGN_PX,
    LaidShape,
    laid_on,
    places_for,
    places_led_to,
)
from generator.book.charts.ground_names import LETTERS_PX, Anchor, Lettering, Name
from generator.book.charts.ground_signs import TILES
from generator.book.charts.letters import BOLD_FRACTION, words_px
from generator.book.text import inert
from generator.dataclass import dataclass
from generator.plan.land.drawn import BEGIN, PARKING, WALK_GATE, GroundShape, fewer_corners

UNDER_PX = 28.0  # under the ground: the scale and the way north
EDGE_PX = 9.0  # of an arrow from the edge
LONGEST_NAME_PX, LONGEST_OWN_NAME_PX = 170.0, 240.0  # a longer name has a number
AWAY_PX = (7.0, 16.0, 26.0)  # of the words of an arrow from it, nearer where there is room
# How far a line may be drawn from where it runs: as little as the size of the whole allows.
OFF_PX = (0.4, 1.0, 2.0, 4.0)
# Of that an outline of what is kept off may be drawn inside of where it runs: it is measured.
KEPT_OFF_FRACTION = 0.125
# What has its name, whatever it lies over: whoever comes looks for it first.
STARTS_HERE = (BEGIN, PARKING, WALK_GATE)
# What a number stands as before it is known which it is.
_DIGITS = "000"
# Cells of lines that a name may lie over: those of others would seem to be what it names.
MOST_LINES, ANY_LINES = 2, 10_000
_STEPS, _SCALE_FROM_PX = (1, 2, 2.5, 5), 44.0
_ARROW = "M7 0l-12-4l3 4l-3 4z"
_NORTH = "M0-7l4.5 19l-4.5-4l-4.5 4z"


@dataclass(frozen=True, slots=True)
class GroundSheet:
    """What a drawing shows, the most important first, and how it is told to who does not see it.

    `subjects` are drawn heavily. `beyond` are names of what lies off the sheet and where it does:
    an arrow at the edge points there. `kept_off` are outlines of ground that is left out.
    """

    name: str
    title: str
    told: str
    frame: Frame
    shapes: tuple[GroundShape, ...]
    subjects: frozenset[str]
    most_bytes: int
    beyond: tuple[tuple[str, PlaneSpot], ...] = ()
    kept_off: tuple[tuple[PlaneSpot, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class GroundDrawing:
    """A drawing, what is named on it, what its numbers stand for, what it has no room for."""

    svg: Markup
    named: tuple[GroundShape, ...]
    numbered: tuple[tuple[int, GroundShape], ...]
    left_out: tuple[GroundShape, ...]


@dataclass(frozen=True, slots=True)
class _Labels:
    """What stands in letters on a sheet, and whose it is."""

    written: list[Name]
    named: list[GroundShape]
    numbered: list[tuple[int, GroundShape]]
    no_room: list[GroundShape]


def ground_drawn(sheet: GroundSheet) -> GroundDrawing:
    """Return the drawing of a sheet, as coarse and with as few things as its size asks for."""
    shapes = sheet.shapes
    while True:
        laid = [one for shape in shapes if (one := laid_on(shape, sheet.frame)) is not None]
        labels = _labels(sheet, laid)
        nameless = {shape.id for shape in labels.no_room}
        # nothing is drawn that is neither named nor numbered
        laid = [one for one in laid if one.shape.id not in nameless]
        for off_px in OFF_PX:
            svg = _svg(sheet, laid, labels.written, off_px)
            if len(svg.encode()) <= sheet.most_bytes or not shapes:
                return GroundDrawing(
                    svg,
                    tuple(labels.named),
                    tuple(labels.numbered),
                    (*labels.no_room, *sheet.shapes[len(shapes) :]),
                )
        shapes = shapes[: len(shapes) * 2 // 3]


def _labels(sheet: GroundSheet, laid: list[LaidShape]) -> _Labels:
    """Return names and numbers as they stand: names where all have room, else as many as have."""
    digits_px = LETTERS_PX * BOLD_FRACTION * len(str(len(laid)))
    placing = _empty(sheet, laid)
    beyond = list(_pointed_at(sheet, placing))
    names: list[Name | None] = []
    for one in laid:
        is_own = one.shape.id in sheet.subjects
        names.append(_called(placing, one, is_own=is_own) or _numbered(placing, one, digits_px))
        if names[-1] is None:
            beyond, names = _as_many_as_have_room(sheet, laid, digits_px)
            break
    labels = _Labels(beyond, [], [], [])
    for one, name in zip(laid, names, strict=True):
        if name is None:
            labels.no_room.append(one.shape)
        elif name.words != _DIGITS:
            labels.named.append(one.shape)
            labels.written.append(name)
        else:
            number = len(labels.numbered) + 1
            labels.numbered.append((number, one.shape))
            labels.written.append(replace(name, words=str(number), is_bold=True))
    return labels


def _as_many_as_have_room(
    sheet: GroundSheet, laid: list[LaidShape], digits_px: float
) -> tuple[list[Name], list[Name | None]]:
    """Return what the arrows say, and numbers for all but the subjects, then names for some."""
    placing = _empty(sheet, laid)
    beyond = list(_pointed_at(sheet, placing))
    names = []
    for one in laid:
        own = _called(placing, one, is_own=True) if one.shape.id in sheet.subjects else None
        names.append(own or _numbered(placing, one, digits_px) or _led_to(placing, one, digits_px))
    return beyond, [_better(placing, one, name) for one, name in zip(laid, names, strict=True)]


def _empty(sheet: GroundSheet, laid: list[LaidShape]) -> Lettering:
    """Return a sheet on which signs and lines are drawn, and no name stands yet."""
    drawn = chain.from_iterable(one.lines for one in laid)
    placing = Lettering(sheet.frame.sheet.grown(-1), drawn)
    for one in laid:
        if one.is_sign:
            placing.take(one.sign_box())
    return placing


def _better(placing: Lettering, one: LaidShape, name: Name | None) -> Name | None:
    """Return the name of a shape in place of its number where there is room for it."""
    if name is None or name.words != _DIGITS:
        return name
    placing.release(name)
    found = _called(placing, one, is_own=False)
    if found is None:
        placing.take(name.box)
    return found or name


def _called(placing: Lettering, one: LaidShape, *, is_own: bool) -> Name | None:
    """Return the name of a shape as it stands; None where it hides too much, or is too long."""
    words = one.shape.name
    wide_px = words_px(words, LETTERS_PX)
    # digits alone would be taken for a number of the legend
    longest_px = LONGEST_OWN_NAME_PX if is_own else LONGEST_NAME_PX
    if wide_px is None or wide_px > longest_px or words.isdigit():
        return None
    most_lines = ANY_LINES if is_own or one.shape.kind in STARTS_HERE else MOST_LINES
    wide_px *= BOLD_FRACTION if is_own else 1
    name = placing.place(words, wide_px, places_for(one, wide_px), most_lines)
    return replace(name, is_bold=is_own) if name is not None else None


def _numbered(placing: Lettering, one: LaidShape, digits_px: float) -> Name | None:
    return placing.place(_DIGITS, digits_px, places_for(one, digits_px), ANY_LINES)


def _led_to(placing: Lettering, one: LaidShape, digits_px: float) -> Name | None:
    """Return a number away from its shape, with a line to it."""
    anchors = list(places_led_to(one))
    name = placing.place(_DIGITS, digits_px, anchors, ANY_LINES)
    return replace(name, leads_to=anchors[0].spot) if name is not None else None


def _pointed_at(sheet: GroundSheet, placing: Lettering) -> Iterator[Name]:
    """Yield the names of what lies off the sheet, beside the arrows at its edge."""
    for words, (spot, _) in _arrows(sheet):
        x, y = spot
        placing.take(SheetBox(x, y, x, y).grown(SIGN_PX))
        wide_px = words_px(words, LETTERS_PX)
        assert wide_px is not None, "words of our own"
        at = [Anchor(spot, away_px) for away_px in AWAY_PX]
        name = placing.place(words, wide_px, at, ANY_LINES)
        if name is not None:
            yield name


def _arrows(sheet: GroundSheet) -> Iterator[tuple[str, tuple[PlaneSpot, float]]]:
    """Yield the words of each arrow, where it stands, and the way it points in degrees."""
    frame = sheet.frame
    half_wide, half_high = frame.wide_px / 2 - EDGE_PX, frame.high_px / 2 - EDGE_PX
    for words, spot_ft in sheet.beyond:
        x, y = frame.at(spot_ft)
        over_x, over_y = x - frame.wide_px / 2, y - frame.high_px / 2
        share = min(
            half_wide / abs(over_x) if over_x else math.inf,
            half_high / abs(over_y) if over_y else math.inf,
        )
        at = frame.wide_px / 2 + share * over_x, frame.high_px / 2 + share * over_y
        yield words, (at, math.degrees(math.atan2(over_y, over_x)))


def _svg(sheet: GroundSheet, laid: list[LaidShape], written: list[Name], off_px: float) -> Markup:
    frame, name = sheet.frame, sheet.name
    wide, high = pixels(frame.wide_px), pixels(frame.high_px)
    over_all = f"{pixels(frame.wide_px + 2)} {pixels(frame.high_px + UNDER_PX)}"
    used = {one.sign.ground for one in laid if one.outline} & TILES.keys()
    used |= {"hatch"} if sheet.kept_off else set()
    parts = [
        f'<svg class="lay" viewBox="-1 -1 {over_all}" role="img" '
        f'aria-labelledby="{name}-t {name}-d"><title id="{name}-t">{inert(sheet.title)}</title>'
        f'<desc id="{name}-d">{inert(sheet.told)}</desc><defs>'
        f'<clipPath id="{name}-c"><rect width="{wide}" height="{high}"/></clipPath>',
        *(_tile(name, tile) for tile in sorted(used)),
        f'</defs><rect class="ground" width="{wide}" height="{high}"/>'
        f'<g fill="none" clip-path="url(#{name}-c)">',
        *_inked(sheet, laid, off_px),
        f'</g><rect class="frame" width="{wide}" height="{high}"/>',
        *(_sign(one) for one in laid if one.is_sign),
        *(
            f'<path class="arrow" transform="translate({x:.1f} {y:.1f})rotate({turn_deg:.0f})" '
            f'd="{_ARROW}"/>'
            for _, ((x, y), turn_deg) in _arrows(sheet)
        ),
        *(_lead(one, one.leads_to) for one in written if one.leads_to is not None),
        *map(_letters, written),
        *_foot(frame),
        "</svg>",
    ]
    return Markup("".join(parts))


def _tile(name: str, tile: str) -> str:
    wide, high, drawn = TILES[tile]
    return (
        f'<pattern id="{name}-{tile}" width="{wide}" height="{high}" '
        f'patternUnits="userSpaceOnUse">{drawn}</pattern>'
    )


def _inked(sheet: GroundSheet, laid: list[LaidShape], off_px: float) -> Iterator[str]:
    """Yield ground from the largest to the smallest, lines over it, the subjects over all."""
    plain = [one for one in laid if one.shape.id not in sheet.subjects]
    for one in sorted((one for one in plain if one.outline), key=_size, reverse=True):
        yield _ground(sheet.name, one, off_px, "")
    for one in plain:
        yield from _lines(one, off_px, "")
    for ring in sheet.kept_off:
        cut = cut_outline(sheet.frame.laid(ring), sheet.frame.sheet.grown(OVER_PX))
        if cut:
            closely = fewer_corners(cut, KEPT_OFF_FRACTION * off_px)
            path = path_of(closely, closed=True)
            yield f'<path class="kept-off" fill="url(#{sheet.name}-hatch)" d="{path}"/>'
    for one in laid:
        if one.shape.id in sheet.subjects:
            if one.outline:
                yield _ground(sheet.name, one, off_px, " heavy")
            yield from _lines(one, off_px, " heavy")


def _size(one: LaidShape) -> tuple[float, str]:
    around = box_around(one.outline)
    across, down = around.right_px - around.left_px, around.bottom_px - around.top_px
    return across * down, one.shape.id


def _ground(name: str, one: LaidShape, off_px: float, heavy: str) -> str:
    ground = one.sign.ground
    fill = f' fill="url(#{name}-{ground})"' if ground in TILES else ""
    kind = "solid" if ground == "solid" else f"{one.sign.strokes[0]}{heavy}"
    path = "".join(
        path_of(fewer_corners([*ring, ring[0]], off_px)[:-1], closed=True)
        for ring in (one.outline, *one.holes)
    )
    # in a hole nothing of the ground is drawn, whichever way around its edge goes
    rule = ' fill-rule="evenodd"' if one.holes else ""
    return f'<path class="{kind}"{fill}{rule} d="{path}"/>'


def _lines(one: LaidShape, off_px: float, heavy: str) -> Iterator[str]:
    if not one.outline and one.lines:
        path = "".join(path_of(fewer_corners(line, off_px), closed=False) for line in one.lines)
        for stroke in one.sign.strokes:
            yield f'<path class="{stroke}{heavy}" d="{path}"/>'


def _sign(one: LaidShape) -> str:
    x, y = one.spot
    solid = " solid" if one.sign.ground == "solid" else ""
    return (
        f'<path class="sign{solid}" transform="translate({x:.1f} {y:.1f})" d="{one.sign.point}"/>'
    )


def _lead(name: Name, spot: PlaneSpot) -> str:
    """Return the line from a number to what it stands for."""
    x, y = spot
    box = name.box
    at_x = min(max(x, box.left_px), box.right_px)
    at_y = min(max(y, box.top_px), box.bottom_px)
    return f'<path class="lead" d="{path_of([(at_x, at_y), (x, y)], closed=False)}"/>'


def _letters(name: Name) -> str:
    anchor = f' text-anchor="{name.anchor}"' if name.anchor != "start" else ""
    kind = ' class="bold"' if name.is_bold else ""
    return f'<text x="{name.x_px:.1f}" y="{name.y_px:.1f}"{anchor}{kind}>{inert(name.words)}</text>'


def _foot(frame: Frame) -> Iterator[str]:
    """Yield the scale, half of it in ink, and the way north."""
    long_ft = scale_ft(frame)
    long, half = pixels(long_ft * frame.px_per_ft), pixels(long_ft * frame.px_per_ft / 2)
    top, base = pixels(frame.high_px + 11), pixels(frame.high_px + 19)
    yield f'<path class="scale" d="M0 {top}h{long}v6h-{long}z"/>'
    yield f'<path class="scale solid" d="M0 {top}h{half}v6h-{half}z"/>'
    beside = pixels(long_ft * frame.px_per_ft + 7)
    yield f'<text x="{beside}" y="{base}" class="scale">{long_ft:,.6g} ft</text>'
    x, north = pixels(frame.wide_px - 8), pixels(frame.wide_px - 18)
    yield f'<path class="north" transform="translate({x} {top})" d="{_NORTH}"/>'
    yield f'<text x="{north}" y="{base}" text-anchor="end" class="scale">North</text>'


def scale_ft(frame: Frame) -> float:
    """Return the length of the scale of a frame: the shortest round one that is long enough.

    >>> scale_ft(Frame(0, 0, 0.25, 340, 300))
    200.0
    """
    power = 10.0 ** math.floor(math.log10(_SCALE_FROM_PX / frame.px_per_ft))
    steps = [*(step * power for step in _STEPS), 10 * power]
    return float(next(step for step in steps if step * frame.px_per_ft >= _SCALE_FROM_PX))

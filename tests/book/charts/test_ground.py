"""Drawings of the ground: what is drawn is named once, over nothing else, to scale, north up."""

import math
import random
import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations, pairwise

import pytest
import shapely

from generator.book.charts.ground_drawn import (
    OFF_PX,
    UNDER_PX,
    GroundDrawing,
    GroundSheet,
    ground_drawn,
    scale_ft,
)
from generator.book.charts.ground_frame import (
    Frame,
    PlaneSpot,
    SheetBox,
    cut_line,
    cut_outline,
    frame_around,
    path_of,
    strip_sides,
)
from generator.book.charts.ground_laid import SIGN_PX
from generator.book.charts.ground_names import BASE_PX, LETTERS_PX, LINE_PX
from generator.book.charts.ground_signs import KIND_SIGNS
from generator.book.charts.ground_told import ground_told
from generator.book.charts.letters import BOLD_FRACTION, words_px
from generator.plan.land.drawn import GroundShape, fewer_corners
from generator.reference.land_kinds import land_kinds
from tests.book.reading import Element, read

NAMES = (
    "Old well", "Mill creek", "Wet corner in the far northwest", "Ww", "Low inlet", "i", "Oak 2",
    "Orchard of the neighbor to the east", "Über-Wiese", "古い井戸", "<b>Bold</b> & \"so\"", "000",
)  # fmt: skip
MOST_BYTES = 12_000
SHEET = SheetBox(0, 0, 340, 300)
MOVED = re.compile(r"translate\((-?[\d.]+) (-?[\d.]+)\)")


def shape(
    kind: str, *spots: PlaneSpot, name: str = "", outline: bool = False, half_ft: float = 0
) -> GroundShape:
    easts, norths = zip(*spots, strict=True)
    corners = (
        (min(easts) - half_ft, min(norths) - half_ft),
        (max(easts) + half_ft, max(norths) + half_ft),
    )
    return GroundShape(name or kind, kind, name or kind, spots, outline, half_ft, corners)


def random_shapes(seed: int) -> list[GroundShape]:
    """Points, lines and ground of every kind and size, on and around a square of 2,000 ft."""
    turns = random.Random(seed)
    found = []
    for number in range(turns.randrange(1, 40)):
        kind = turns.choice(sorted(KIND_SIGNS))
        at = turns.uniform(-300, 2300), turns.uniform(-300, 2300)
        far_ft = 10 ** turns.uniform(0.5, 3.3)
        turn = turns.choice(("point", "line", "outline"))
        count = {"point": 1, "line": turns.randrange(2, 9), "outline": turns.randrange(3, 12)}[turn]
        # corners of an outline in the order in which they lie around its middle: none cross
        bearings = sorted(turns.uniform(0, 2 * math.pi) for _ in range(count))
        spots = [
            (at[0] + far_ft * turns.random() * math.sin(one), at[1] + far_ft * math.cos(one))
            for one in bearings
        ]
        half_ft = 0 if turn == "outline" else turns.choice((0, 0, 15, 60))
        one = shape(
            kind, *spots, name=turns.choice(NAMES), outline=turn == "outline", half_ft=half_ft
        )
        found.append(replace(one, id=f"thing-{number}"))
    return found


def sheet_of(shapes: list[GroundShape], most_bytes: int = MOST_BYTES) -> GroundSheet:
    frame = frame_around(((0, 0), (2000, 1700)), 340, 190, 300)
    beyond = (("The gate", (5000.0, -900.0)),) if len(shapes) % 2 else ()
    subjects = frozenset({shapes[0].id})
    return GroundSheet(
        "lay", "Lane", "North is up.", frame, tuple(shapes), subjects, most_bytes, beyond
    )


def texts_of(svg: Element) -> list[tuple[str, SheetBox]]:
    """The words of a drawing, each with the most room that it may take."""
    found = []
    for one in svg.all("text"):
        words = one.text()
        wide = words_px(words, LETTERS_PX)
        assert wide is not None, words
        wide *= BOLD_FRACTION if one.has("bold") else 1
        x, y = float(one.attributes["x"]), float(one.attributes["y"])
        anchor = one.attributes.get("text-anchor", "start")
        left = x - {"start": 0, "middle": wide / 2, "end": wide}[anchor]
        top = y - BASE_PX
        found.append((words, SheetBox(left, top, left + wide, top + LINE_PX)))
    return found


def signs_of(svg: Element) -> Iterator[SheetBox]:
    for one in svg.all("path", "sign"):
        moved = MOVED.search(one.attributes["transform"])
        assert moved is not None
        x, y = float(moved[1]), float(moved[2])
        yield SheetBox(x, y, x, y).grown(SIGN_PX)


@pytest.mark.parametrize("seed", range(200))
def test_names_lie_over_nothing_and_never_leave_the_sheet(seed: int) -> None:
    sheet = sheet_of(random_shapes(seed))
    drawing = ground_drawn(sheet)
    svg = read(drawing.svg).all("svg")[0]
    texts = texts_of(svg)
    whole = SheetBox(-1, -1, sheet.frame.wide_px + 1, sheet.frame.high_px + UNDER_PX)
    # to a tenth of a pixel, as places are written
    for words, box in texts:
        assert whole.holds(box.grown(-0.1)), words
    for (one, box), (other, beside) in combinations(texts, 2):
        assert not box.grown(-0.1).meets(beside), (one, other)
    for sign in signs_of(svg):
        assert not any(box.grown(-0.1).meets(sign.grown(-0.1)) for _, box in texts)


@pytest.mark.parametrize("seed", range(60))
def test_what_is_drawn_is_named_or_numbered_and_nothing_else_is(seed: int) -> None:
    shapes = random_shapes(seed)
    sheet = sheet_of(shapes)
    drawing = ground_drawn(sheet)
    told = [*drawing.named, *(one for _, one in drawing.numbered), *drawing.left_out]
    assert len({one.id for one in told}) == len(told)
    words = sorted(text for text, _ in texts_of(read(drawing.svg).all("svg")[0]))
    ours = [f"{scale_ft(sheet.frame):,.6g} ft", "North", *(words for words, _ in sheet.beyond)]
    numbers = [str(number) for number, _ in drawing.numbered]
    assert words == sorted([*ours, *numbers, *(one.name for one in drawing.named)])
    assert numbers == [str(number) for number in range(1, len(numbers) + 1)]
    (west, south), (east, north) = sheet.frame.corners
    ground = shapely.box(west, south, east, north)
    # what shows for less than a sign may stand for it lies at the edge
    inside = ground.buffer(-1.5 * SIGN_PX / sheet.frame.px_per_ft)
    for one in shapes:
        piece = piece_of(one)
        # the corner of a sharp bend of a strip may lie a half width further out
        if not piece.intersects(ground.buffer(1 + one.half_width_ft)):
            assert one not in told
        elif piece.intersection(inside).length or piece.within(inside):
            assert one in told or piece.contains(ground)


def piece_of(one: GroundShape) -> shapely.Geometry:
    """Independent: shapely's own pieces; of ground what it makes of an outline that is bent."""
    if one.is_outline:
        return shapely.make_valid(shapely.Polygon(one.spots_ft))
    if len(one.spots_ft) == 1:
        spot = shapely.Point(one.spots_ft)
        return spot.buffer(one.half_width_ft) if one.half_width_ft else spot
    line = shapely.LineString(one.spots_ft)
    if not one.half_width_ft:
        return line
    return line.buffer(one.half_width_ft, cap_style="flat", join_style="mitre", mitre_limit=2)


def test_a_sheet_with_more_than_its_bytes_is_drawn_coarser_and_then_with_less() -> None:
    turns = random.Random(5)
    walks = []
    for number in range(300):
        at, spots = (turns.uniform(0, 2000), turns.uniform(0, 1700)), []
        for _ in range(400):
            at = at[0] + turns.uniform(-20, 20), at[1] + turns.uniform(-20, 20)
            spots.append(at)
        walks.append(replace(shape("walk", *spots, name=f"Walk {number}"), id=f"walk-{number}"))
    for most in (12_000, 60_000):
        drawing = ground_drawn(sheet_of(walks, most))
        assert most / 3 < len(drawing.svg.encode()) <= most
        told = [*drawing.named, *(one for _, one in drawing.numbered), *drawing.left_out]
        assert {one.id for one in told} == {one.id for one in walks}
        assert drawing.left_out
        first = [*drawing.named, *(one for _, one in drawing.numbered)]
        assert walks[0] in first


def test_every_kind_has_a_sign() -> None:
    assert KIND_SIGNS.keys() >= land_kinds().keys()


def drawn(*shapes: GroundShape, frame: Frame | None = None) -> tuple[GroundDrawing, Element]:
    sheet = sheet_of(list(shapes))
    drawing = ground_drawn(replace(sheet, frame=frame or sheet.frame))
    return drawing, read(drawing.svg).all("svg")[0]


def test_it_is_to_scale_and_north_is_up() -> None:
    """Independent: two wells 500 ft apart, one east and one north of the other, by hand."""
    here, east = shape("well", (700, 700), name="Here"), shape("well", (1200, 700), name="East")
    north = shape("well", (700, 1200), name="North well")
    _, svg = drawn(here, east, north)
    spots = [(box.left_px + SIGN_PX, box.top_px + SIGN_PX) for box in signs_of(svg)]
    (text,) = [words for words, _ in texts_of(svg) if words.endswith(" ft")]
    bar = re.search(r"h([\d.]+)v6", svg.all("path", "scale")[0].attributes["d"])
    assert bar is not None
    px_per_ft = float(bar[1]) / float(text.removesuffix(" ft").replace(",", ""))
    (x, y), (east_x, east_y), (north_x, north_y) = spots
    assert (east_x - x) / px_per_ft == pytest.approx(500, rel=0.01)
    assert east_y == y
    assert (y - north_y) / px_per_ft == pytest.approx(500, rel=0.01)
    assert north_x == x


def test_what_lies_off_the_sheet_is_pointed_at() -> None:
    _, svg = drawn(shape("place", (900, 800), (1100, 800), name="Lane", half_ft=20))
    (arrow,) = svg.all("path", "arrow")
    turned = re.search(r"rotate\((-?\d+)\)", arrow.attributes["transform"])
    assert turned is not None
    # 4,000 ft east and 1,750 south of the middle of the sheet
    assert int(turned[1]) == round(math.degrees(math.atan2(1750, 4000)))
    assert "The gate" in [words for words, _ in texts_of(svg)]


def test_ground_that_is_kept_off_is_hatched() -> None:
    sheet = sheet_of([shape("place", (500, 800), (1500, 800), name="Lane", half_ft=40)])
    assert "-hatch" not in ground_drawn(sheet).svg
    ring = ((900.0, 760.0), (1100.0, 760.0), (1100.0, 840.0), (900.0, 840.0))
    svg = read(ground_drawn(replace(sheet, kept_off=(ring,))).svg)
    (kept,) = svg.all("path", "kept-off")
    assert kept.attributes["fill"] == "url(#lay-hatch)"
    assert svg.all("pattern")[0].attributes["id"] == "lay-hatch"


def test_an_outline_without_a_pattern_is_not_named_where_its_edge_is_not() -> None:
    around = ((-9000.0, -9000.0), (9000.0, -9000.0), (9000.0, 9000.0), (-9000.0, 9000.0))
    for kind, is_named in (("boundary", False), ("woods", True)):
        drawing, _ = drawn(shape(kind, *around, outline=True))
        assert bool(drawing.named) == is_named


def test_what_is_typed_stays_text() -> None:
    _, svg = drawn(shape("well", (900, 800), name='<b x="1">&'))
    assert '<b x="1">&' in [words for words, _ in texts_of(svg)]
    assert not svg.all("b")


@pytest.mark.parametrize("seed", range(40))
def test_lines_and_ground_are_cut_as_another_library_cuts_them(seed: int) -> None:
    """Independent: shapely's intersections."""
    turns = random.Random(seed)
    line = [(turns.uniform(-200, 500), turns.uniform(-200, 500)) for _ in range(12)]
    box = shapely.box(0, 0, 340, 300)
    parts = list(cut_line(line, SHEET))
    inside = sum(math.dist(*side) for part in parts for side in pairwise(part))
    assert inside == pytest.approx(shapely.LineString(line).intersection(box).length, abs=1e-6)
    bearings = sorted(turns.uniform(0, 2 * math.pi) for _ in range(9))
    outline = [
        (170 + turns.uniform(50, 400) * math.sin(one), 150 + turns.uniform(50, 400) * math.cos(one))
        for one in bearings
    ]
    ground = shapely.Polygon(outline)
    if ground.is_valid:
        cut = cut_outline(outline, SHEET)
        area = shapely.Polygon(cut).area if len(cut) > 2 else 0.0
        assert area == pytest.approx(ground.intersection(box).area, abs=1e-6)


@pytest.mark.parametrize("off_px", OFF_PX)
def test_a_thinned_line_stays_where_it_runs(off_px: float) -> None:
    """Independent: how far each corner lies from the thinned line, by shapely."""
    turns = random.Random(int(off_px * 10))
    line = [(float(x), 40 * math.sin(x / 30) + turns.uniform(-1, 1)) for x in range(0, 340, 2)]
    fewer = fewer_corners(line, off_px)
    kept = shapely.LineString(fewer)
    assert (fewer[0], fewer[-1]) == (line[0], line[-1])
    assert max(kept.distance(shapely.Point(spot)) for spot in line) <= off_px + 1e-9
    assert len(fewer) < len(line)


def test_the_sides_of_a_strip_hold_its_ground() -> None:
    """Independent: shapely's strip with flat ends and mitred bends."""
    line = [(0.0, 0.0), (100.0, 0.0), (160.0, 60.0), (160.0, 200.0)]
    strip = shapely.Polygon(strip_sides(line, 6))
    other = shapely.LineString(line).buffer(6, cap_style="flat", join_style="mitre")
    assert strip.symmetric_difference(other).area == pytest.approx(0, abs=1e-6)


def test_a_path_is_where_its_corners_are_to_a_tenth_of_a_pixel() -> None:
    turns = random.Random(2)
    line = [(turns.uniform(0, 340), turns.uniform(0, 300)) for _ in range(200)]
    numbers = [float(one) for one in re.findall(r"-?\d+(?:\.\d)?", path_of(line, closed=False))]
    x, y, at = 0.0, 0.0, []
    for across, down in zip(numbers[::2], numbers[1::2], strict=True):
        x, y = x + across, y + down
        at.append((x, y))
    assert len(at) == len(line)
    assert max(math.dist(one, other) for one, other in zip(at, line, strict=True)) < 0.071


def test_it_is_told_which_way_everything_lies() -> None:
    lane = shape("place", (0, -500), (0, 500), name="Lane", half_ft=15)
    around = ((-2000.0, -2000.0), (2000.0, -2000.0), (2000.0, 2000.0), (-2000.0, 2000.0))
    others = [
        shape("well", (400, 0), name="Old well"),
        shape("creek", (-900, -900), (-900, 900), name="Mill creek"),
        shape("crossing", (10, 20), name="Planks"),
        shape("pond", (300, 300), name="Pond", half_ft=30),
        shape("boundary", *around, name="Line", outline=True),
    ]
    assert ground_told(lane, others, [("The gate", (0.0, -3000.0))]) == (
        "North is up. Lane runs from the south to the north. To the east: Old well. "
        "To the west: Mill creek. At it: Planks. To the northeast: Pond. Around it: Line. "
        "The gate lies to the south, off the sheet."
    )


def test_letters_that_are_not_known_have_no_width() -> None:
    assert words_px("古", 10) is None
    assert words_px("Überwälder", 10) == words_px("Uberwalder", 10)
    assert words_px("", 10) == 0

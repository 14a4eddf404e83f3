"""The drawings on pages: of a place, a job, a stand, a walk and the whole ground."""

import math
import random
import re
from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from typing import Any

import pytest
from geographiclib.geodesic import Geodesic

from generator.book.charts.ground_frame import PlaneSpot, SheetBox
from generator.book.pages.ground import place_page
from generator.book.pages.land import land_page
from generator.book.pages.pictures_ground import (
    EXCERPT_BYTES,
    GroundPictured,
    job_ground,
    place_ground,
    stand_ground,
    walk_ground,
    whole_ground,
)
from generator.book.pages.stands_walks import route_page, stand_page
from generator.book.pages.work import job_page
from generator.book.text import clean
from generator.inventory.fields import Points, Where
from generator.inventory.land import LandThing
from generator.plan.land.drawn import ground_shapes
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.reference.land_kinds import land_kinds
from generator.units import LatLon, convert
from generator.working import Given
from tests.book.charts.test_ground import signs_of, texts_of
from tests.book.reading import Element, read
from tests.plan.planned import inventory_of, planned
from tests.plan.test_treated import drawn, kept_from, well
from tests.properties import Data, small_property

HERE = Where("land.yaml", 1, 1)
# Of a degree at 41 N, to a part in a thousand.
FT_NORTH, FT_EAST = 1 / 364_300, 1 / 276_000
WHOLE_MOST, EXCERPT_MOST = 60_000, 12_000
NAMES = ("Old well", "Mill creek", "Orchard of the neighbor to the east", "Low", "Wet corner", "W")
LAND: list[Data] = [
    {"id": "creek", "kind": "creek", "name": "Mill creek", "width_ft": 10,
     "line_lat_lon": [[41.003, -93.0005], [40.999, -93.0006]]},
    {"id": "well", "kind": "well", "name": "Old well", "at_lat_lon": [41.0012, -92.9994]},
    {"id": "beds", "kind": "bedding", "name": "Hidden beds", "radius_ft": 80,
     "at_lat_lon": [41.0014, -92.9988]},
    {"id": "far-well", "kind": "well", "name": "Far well", "at_lat_lon": [41.03, -92.97]},
]  # fmt: skip


def lying(*more: Data) -> Data:
    """The small property with its screen on a line, a walk to a stand, and things of the land."""
    data = small_property()
    data["property"] |= {"location_lat_lon": [41.0, -93.0], "time_zone": "America/Chicago"}
    data["property"].setdefault("emergency", {})["gate_lat_lon"] = [40.9965, -93.0]
    (screen,) = data["screens"]["screens"]
    screen |= {
        "line_lat_lon": [[41.0, -93.0], [41.002, -93.0]],
        "hides": ["walk"],
        "near": screen.get("near", {}) | {"block_lat_lon": [41.0, -93.0]},
    }
    stand = {"id": "oak", "name": "Oak ladder", "at_lat_lon": [41.0021, -92.9989]}
    data["stands"] = {"stands": [stand | {"coordinates": "yes"}]}
    line = [[41.0, -92.9998], [41.0018, -92.9998], [41.0021, -92.9989]]
    walk = {"id": "walk", "name": "Lane walk", "serves": ["oak"], "line_lat_lon": line}
    data["routes"] = {"routes": [walk | {"coordinates": "yes"}]}
    friend = {"id": "friend", "kind": "partner", "jobs": [], "stands": ["oak"], "routes": ["walk"]}
    data["readers"]["readers"].append(friend)
    data["land"] = {"land": [*LAND, *more]}
    return data


def words_on(one: GroundPictured | None) -> set[str]:
    """What is named on a drawing or in its legend."""
    assert one is not None
    svg = read(one.svg).all("svg")[0]
    return {text.text() for text in svg.all("text")} | {name for _, name, _ in one.legend}


def of_place(plan: Plan) -> GroundPictured | None:
    return place_ground(plan, plan.places[0])


def of_job(plan: Plan) -> GroundPictured | None:
    return job_ground(plan, plan.jobs[0])


def of_stand(plan: Plan) -> GroundPictured | None:
    return stand_ground(plan, plan.land.stands[0])


def of_walk(plan: Plan) -> GroundPictured | None:
    return walk_ground(plan, plan.land.routes[0])


EXCERPTS = (of_place, of_job, of_stand, of_walk)


def test_each_page_has_its_drawing() -> None:
    plan = planned(lying())
    pages = {
        place_page(plan, plan.places[0]): "Lane screen",
        job_page(plan, plan.jobs[0]): "Lane screen",
        stand_page(plan, plan.land.stands[0]): "Oak ladder",
        route_page(plan, plan.land.routes[0]): "Lane walk",
        land_page(plan): "The whole ground",
    }
    for written, name in pages.items():
        (svg,) = read(written.page.markdown).all("svg", "lay")
        assert svg.attributes["role"] == "img"
        title, told = svg.all("title")[0], svg.all("desc")[0]
        by = svg.attributes["aria-labelledby"].split()
        assert by == [title.attributes["id"], told.attributes["id"]]
        assert title.text().startswith(name)
        assert told.text().startswith("North is up.")


def test_without_points_there_is_no_drawing() -> None:
    plan = planned(small_property())
    assert place_ground(plan, plan.places[0]) is None
    assert job_ground(plan, plan.jobs[0]) is None
    assert whole_ground(plan) is None
    assert "<svg" not in land_page(plan).page.markdown


def test_a_job_names_what_the_work_needs_and_nothing_of_deer() -> None:
    plan = planned(lying())
    around = {"Lane screen", "Begin here", "Mill creek", "Old well", "The gate", "North"}
    for named in (words_on(of_job(plan)), words_on(of_place(plan)) - {"Lane walk"}):
        assert {one for one in named if not one.isdigit() and not one.endswith(" ft")} == around
    assert "Lane walk" in words_on(of_place(plan))


def test_a_stand_and_a_walk_name_beds_and_each_other() -> None:
    plan = planned(lying())
    for one in (of_stand, of_walk):
        named = words_on(one(plan))
        assert named >= {"Oak ladder", "Lane walk", "Hidden beds", "Lane screen"}
        assert "Far well" not in named


def test_the_whole_ground_names_all_of_it() -> None:
    plan = planned(lying())
    every = {shape.name for shape in ground_shapes(plan).values()} - {"Begin here"}
    assert every == words_on(whole_ground(plan)) & every
    assert len(every) == 8


def test_the_gate_is_drawn_where_it_is_near_and_pointed_at_where_it_is_far() -> None:
    data = lying()
    for gate, is_near in (([40.9995, -93.0], True), ([40.99, -93.0], False)):
        data["property"]["emergency"]["gate_lat_lon"] = gate
        one = of_job(planned(data))
        assert one is not None
        svg = read(one.svg).all("svg")[0]
        assert bool(svg.all("path", "arrow")) != is_near
        assert ("The gate lies to the south, off the sheet." in svg.text()) != is_near
        assert "The gate" in words_on(one)


def test_the_plane_it_is_drawn_on_keeps_lengths() -> None:
    """Independent: geographiclib between the ends of the screen and of the creek."""
    shapes = ground_shapes(planned(lying()))
    for identity, ends in (
        ("lane", ((41.0, -93.0), (41.002, -93.0))),
        ("creek", ((41.003, -93.0005), (40.999, -93.0006))),
    ):
        first, last = shapes[identity].spots_ft
        meters = Geodesic.WGS84.Inverse(*ends[0], *ends[1])["s12"]
        assert math.dist(first, last) == pytest.approx(convert(meters, "m", "ft"), rel=1e-5)


KEPT_WELL = kept_from("well", 60)


def hatched(data: Data, reader: str) -> tuple[list[PlaneSpot], float]:
    """The corners of what is hatched on the sheet of the kill, and the pixels of a foot there."""
    plan, inventory = planned(data), inventory_of(data)
    if reader != "owner":
        plan = seen_by(plan, next(one for one in inventory.readers if one.id == reader))
    job = next(one for one in plan.jobs if one.id.endswith("autumn_kill"))
    written = job_page(plan, job).page.markdown
    (svg,) = read(written).all("svg", "lay")
    assert "Hatched: what labels keep the spray off." in read(written).text()
    (kept,) = svg.all("path", "kept-off")
    (text,) = [words for words, _ in texts_of(svg) if words.endswith(" ft")]
    bar = re.search(r"h([\d.]+)v6", svg.all("path", "scale")[0].attributes["d"])
    assert bar is not None
    return corners_of(kept), float(bar[1]) / float(text.removesuffix(" ft"))


def corners_of(path: Element) -> list[PlaneSpot]:
    numbers = [float(one) for one in re.findall(r"-?\d+(?:\.\d)?", path.attributes["d"])]
    x, y, found = 0.0, 0.0, []
    for across, down in zip(numbers[::2], numbers[1::2], strict=True):
        x, y = x + across, y + down
        found.append((x, y))
    return found


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_what_a_label_keeps_off_is_hatched_to_scale(reader: str) -> None:
    """Independent: 60 ft around a well, by hand; moved 100 ft the hatching moves as far."""
    middles = []
    for east_ft in (200, 300):
        corners, px_per_ft = hatched(drawn(well(east_ft, 60), kept=(KEPT_WELL,)), reader)
        across, down = zip(*corners, strict=True)
        middle = (min(across) + max(across)) / 2, (min(down) + max(down)) / 2
        away_ft = [math.dist(middle, one) / px_per_ft for one in corners]
        # on paper to a tenth of a pixel, and in as few corners as are seen
        assert min(away_ft) >= 60 - 0.5 / px_per_ft
        assert max(away_ft) <= 60 + 1 / px_per_ft
        middles.append((middle[0] / px_per_ft, middle[1] / px_per_ft))
    (x, y), (moved_x, moved_y) = middles
    assert moved_x - x == pytest.approx(100, abs=2)
    assert moved_y == pytest.approx(y, abs=1)


FAR: Data = {"kind": "well", "name": "Secret well", "at_lat_lon": [41.2, -93.2]}
FAR_BEDS: Data = {"kind": "bedding", "name": "Secret beds", "at_lat_lon": [41.0016, -92.9992]}


def seen(kind: str, *more: Data) -> list[GroundPictured]:
    """What another reader's pages draw: the jobs, and a partner's stand and walk."""
    inventory = inventory_of(lying(*more))
    reader = next(one for one in inventory.readers if one.kind == kind)
    plan = seen_by(planned(lying(*more)), reader)
    every = [*(job_ground(plan, job) for job in plan.jobs)]
    if kind == "partner":
        every += [of_stand(plan), of_walk(plan)]
    found = [one for one in every if one is not None]
    assert found
    assert len(found) == len(every)
    return found


@pytest.mark.parametrize("kind", ["contractor", "partner"])
def test_a_private_shape_changes_no_byte_of_another_reader_s_drawing(kind: str) -> None:
    more = (FAR | {"id": "secret"}, FAR_BEDS | {"id": "secret-beds"})
    assert seen(kind, *more) == seen(kind)


def test_whoever_works_on_a_place_sees_what_is_dangerous_near_it_and_no_more() -> None:
    for one in seen("contractor"):
        named = words_on(one)
        assert named >= {"Strip 1", "Begin here", "Creek", "Well"}
        assert not named & {"Mill creek", "Old well"}
        assert "Hidden beds" not in one.svg
        assert "Lane walk" not in one.svg


@pytest.mark.parametrize("of", EXCERPTS)
def test_what_lies_far_off_changes_no_byte_of_an_excerpt_but_by_its_plane(
    of: Callable[[Plan], GroundPictured | None],
) -> None:
    near = of(planned(lying()))
    assert near is not None
    more = of(planned(lying(FAR | {"id": "secret"})))
    assert more is not None
    assert words_on(more) == words_on(near)


def random_plan(base: Plan, seed: int) -> Plan:
    """A plan with things of every kind at random around the screen, a mile about."""
    turns = random.Random(seed)
    count = turns.randrange(1, 60)
    return replace(
        base, land=replace(base.land, things=tuple(_thing(turns, n) for n in range(count)))
    )


def _thing(turns: random.Random, number: int) -> LandThing:
    kind = turns.choice(sorted(land_kinds()))
    form = turns.choice(land_kinds()[kind].drawn)
    middle = turns.uniform(-3000, 3000), turns.uniform(-3000, 3000)
    far_ft = 10 ** turns.uniform(0.5, 3.2)
    count = {"point": 1, "line": turns.randrange(2, 40), "outline": turns.randrange(3, 30)}[form]
    bearings = sorted(turns.uniform(0, 2 * math.pi) for _ in range(count))
    spots: list[LatLon] = [
        (
            41.001 + (middle[1] + far_ft * math.cos(one)) * FT_NORTH,
            -93 + (middle[0] + far_ft * math.sin(one)) * FT_EAST,
        )
        for one in bearings
    ]
    typed: dict[str, Any] = {"point": {"at_lat_lon": spots[0]}}.get(form, {})
    if form != "point":
        key = "line_lat_lon" if form == "line" else "area_lat_lon"
        typed[key] = Points(tuple(spots), HERE, (HERE,) * count)
    if form != "outline" and turns.random() < 0.5:
        key = "width_ft" if form == "line" else "radius_ft"
        wide_ft = turns.choice((8.0, 30.0, 120.0))
        typed[key] = Given(key, wide_ft, "ft", wide_ft, "ft", "land.yaml", 1, "place")
    name = f"{turns.choice(NAMES)} {number}"
    return LandThing(where=HERE, id=f"thing-{number}", kind=kind, name=name, **typed)


@pytest.fixture(scope="module")
def base() -> Plan:
    return planned(lying())


@pytest.mark.parametrize("seed", range(200))
def test_names_of_random_properties_stand_free_on_small_sheets(base: Plan, seed: int) -> None:
    plan = random_plan(base, seed)
    every = [(whole_ground(plan), WHOLE_MOST), *((of(plan), EXCERPT_MOST) for of in EXCERPTS)]
    for one, most in every:
        assert one is not None
        assert len(one.svg.encode()) <= most
        svg = read(one.svg).all("svg")[0]
        _, _, wide, high = map(float, svg.attributes["viewbox"].split())
        sheet = SheetBox(-1, -1, wide, high)
        texts = texts_of(svg)
        assert all(sheet.holds(box.grown(-0.1)) for _, box in texts)
        for (first, box), (other, beside) in combinations(texts, 2):
            assert not box.grown(-0.1).meets(beside), (first, other)
        signs = list(signs_of(svg))
        assert not any(box.grown(-0.2).meets(sign) for _, box in texts for sign in signs)
        numbers = {text for text, _ in texts if text.isdigit()}
        assert numbers == {str(number) for number, _, _ in one.legend}


HOSTILE_NAMES = (
    "<script>alert(1)</script>",
    "</desc></svg><img src=x onerror=alert(1)>",
    'Fish & Sons\' "well" &amp; &#60;b&#62;',
    "{{ 7*7 }} ![i](x.png) url(#a)",
    "W" * 400,
    "<&\"'>" * 200,
    "\u05d0\u05d1\u05d2 \u202e12 ft\u2069",
    "\U0001f98c" * 300,
)
DRAWN_ALONE = frozenset(
    ["svg", "title", "desc", "defs", "clippath", "pattern", "rect", "circle", "g", "path", "text"]
)


@pytest.mark.parametrize("name", HOSTILE_NAMES)
def test_any_name_is_text_in_a_drawing_and_leaves_room_for_what_is_drawn(name: str) -> None:
    more: list[Data] = [
        {"id": f"more-{number}", "kind": "well", "name": f"{number} {name}",
         "at_lat_lon": [41.0002 + number / 10_000, -93.0012]}
        for number in range(20)
    ]  # fmt: skip
    data = lying(*more)
    for kind in ("screens", "stands", "routes"):
        (one,) = data[kind][kind]
        one |= {"name": f"{kind} {name}", "known_as": f"Plain {kind}"}
    plan = planned(data)
    for of, most, own in (
        (of_place, EXCERPT_MOST, "screens"),
        (of_job, EXCERPT_MOST, "screens"),
        (of_stand, EXCERPT_MOST, "stands"),
        (of_walk, EXCERPT_MOST, "routes"),
        (whole_ground, WHOLE_MOST, ""),
    ):
        drawn_of = of(plan)
        assert drawn_of is not None
        assert len(drawn_of.svg.encode()) <= most
        assert drawn_of.svg.isprintable()
        document = read(drawn_of.svg)
        assert {one.tag for one in document.walk()} - {"document"} <= DRAWN_ALONE
        for one in document.walk():
            assert not {key for key in one.attributes if key.startswith(("on", "href", "src"))}
        (svg,) = document.all("svg")
        title, told = svg.all("title")[0].text(), svg.all("desc")[0].text()
        assert title.startswith(clean(f"{own} {name}")[:30] if own else "The whole ground")
        assert told.startswith("North is up.")
        # what it is of is drawn, and named or in its legend, whole
        named = {text.text() for text in svg.all("text")} | {
            clean(n) for _, n, _ in drawn_of.legend
        }
        assert clean(f"{own or 'screens'} {name}") in named
        for words in (title, told):
            assert max(map(len, words.split(" "))) <= 41


def test_of_a_name_that_is_told_its_numbers_are_kept() -> None:
    """A hatched well whose name is long: what is kept off is told, and its name is cut short."""
    name = "Well <b>& by the windmill</b> that fell over in the storm of 1998, and its pump"
    plan = planned(drawn(well(200, 60, name=name), kept=(KEPT_WELL,)))
    job = next(one for one in plan.jobs if one.id.endswith("autumn_kill"))
    page = read(job_page(plan, job).page.markdown)
    (kept,) = job.kept_off
    told = page.all("desc")[0].text()
    digits = kept.lost.printed()
    assert f"60 ft around Well <b>& by the windmill</b> that fell…, {digits}." in told
    assert f"60 ft around {name}, {digits}." in page.text()
    assert not page.all("b")


def test_a_place_among_many_things_keeps_to_its_bytes_and_says_what_it_leaves_out(
    base: Plan,
) -> None:
    turns = random.Random(3)
    walks = []
    for number in range(80):
        lat, lon = 41.001 + turns.uniform(-1, 1) / 1000, -93 + turns.uniform(-1, 1) / 1000
        spots = []
        for _ in range(300):
            lat, lon = lat + turns.uniform(-1, 1) / 30_000, lon + turns.uniform(-1, 1) / 30_000
            spots.append((lat, lon))
        points = Points(tuple(spots), HERE, (HERE,) * len(spots))
        walks.append(
            LandThing(
                where=HERE, id=f"trail-{number}", kind="driven_trail", name=f"Trail {number}",
                line_lat_lon=points,
            )
        )  # fmt: skip
    plan = replace(base, land=replace(base.land, things=tuple(walks)))
    one = of_place(plan)
    assert one is not None
    assert len(one.svg.encode()) <= EXCERPT_BYTES
    told = {name for name in words_on(one) if name.startswith("Trail")} | set(one.left_out)
    assert {f"Trail {number}" for number in range(80)} <= told

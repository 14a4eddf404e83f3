"""A well is found to lie 100 ft elsewhere, and all that is made of it agrees, on finished pages.

The strip of 726 by 60 ft, an acre, runs from west to east; the well lies 20 ft north of its middle.
By hand: the label keeps 50 ft, and the points of both may be off by 5 ft, so 60 ft around the well
are left out; that lies 10 ft inside of the north edge, and the circle reaches over all of the
width but its corners. Drawings are measured on the page, by their own scale.
"""

import csv
import io
import math
import re
from dataclasses import dataclass

import pytest
import shapely

from generator.book.charts.ground_drawn import KEPT_OFF_FRACTION, OFF_PX
from generator.book.charts.ground_signs import KIND_SIGNS
from generator.book.exports import BUY_CSV
from generator.geometry.plane import middle_of_plane, off_plane
from generator.plan.model.place import KeptOff
from generator.units import SQ_FT_PER_AC, shown
from tests.book.charts.test_ground import MOVED, texts_of
from tests.book.reading import Element, read, workings
from tests.book.sites import Site, build_sites
from tests.book.test_ground_drawings import corners_of
from tests.plan.planned import KILL
from tests.properties import Data, full_card, full_use, small_property, write_property

MIDDLE = middle_of_plane((41.03, -93.02))
SHEET = "work/lane-2027-autumn_kill.html"
THEIR_SHEET = "work/strip-1-2027-autumn_kill.html"
PLACE = "places/lane.html"
# Along the strip the well moves by 100 ft; the other way it moves off by as much.
MOVES = {"along": (300.5, 20.0), "away": (200.5, 120.0)}


def spot(east_ft: float, north_ft: float) -> list[float]:
    ((lat, lon),) = off_plane([(east_ft, north_ft)], MIDDLE)
    return [lat, lon]


def with_well(east_ft: float, north_ft: float) -> Data:
    """The small property with a well; its label keeps the spray 50 ft from wells."""
    kept = {"keep_from": "wells", "distance_ft": 50, "kind": "well", "counts_from": "as_printed"}
    data = small_property(full_card(full_use(setbacks_ft=[kept])))
    screen = data["screens"]["screens"][0]
    screen |= {"line_lat_lon": [spot(0, 0), spot(726, 0)], "outline_error_ft": 5}
    screen["plantings"][0]["work"][0]["machine"] = "truck"
    data["equipment"]["machines"] = [
        {"id": "truck", "name": "Truck", "width_ft": 10, "speed_mph": 4, "efficiency_fraction": 0.7}
    ]
    well = {
        "id": "well",
        "kind": "well",
        "name": "Granddad's odd well",
        "known_as": "The old well",
        "at_lat_lon": spot(east_ft, north_ft),
        "off_ft": 5,
    }
    return data | {"land": {"land": [well]}}


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Site]:
    folder = tmp_path_factory.mktemp("well")
    return build_sites(write_property(folder / "land", with_well(200.5, 20)), folder / "sites")


@pytest.fixture(scope="module", params=MOVES)
def after(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Site]:
    folder = tmp_path_factory.mktemp("moved")
    data = with_well(*MOVES[request.param])
    return build_sites(write_property(folder / "land", data), folder / "sites")


def text_of(site: Site, address: str) -> str:
    page = read((site.folder / address).read_text(encoding="utf-8"))
    return " ".join(page.text().split())


def numbers_on(site: Site, address: str) -> dict[str, float]:
    """The numbers of a page with their whole value, by their ids."""
    page = read((site.folder / address).read_text(encoding="utf-8"))
    return {one.identity: one.value for one in workings(page).values() if one.identity}


def bought(site: Site) -> dict[str, str]:
    text = (site.folder / BUY_CSV).read_bytes().decode("utf-8-sig")
    return next(
        row for row in csv.DictReader(io.StringIO(text, newline="")) if row["item"] == "brew"
    )


def treated_ac(site: Site) -> float:
    (job,) = [one for one in site.plan.jobs if one.id == KILL]
    return job.numbers["treated_ac"].value if "treated_ac" in job.numbers else 1.0


def agree(sites: dict[str, Site]) -> None:
    """Fail unless acres, product, loads, list, hours and sheets of all readers say the same."""
    owner, hired = sites["owner"], sites["hired"]
    acres = treated_ac(owner)
    (job,) = [one for one in owner.plan.jobs if one.id == KILL]
    assert job.mix is not None
    on_sheet = numbers_on(owner, SHEET)
    laid = job.numbers.get("laid_ac")
    sprayed_ac = laid.value if laid is not None else acres
    # the sheet: spray and product are those of the acres
    assert on_sheet[f"{KILL}/spray_gal"] == pytest.approx(sprayed_ac * 18.5625, rel=1e-12)
    assert on_sheet[f"{KILL}/product_fl_oz"] == pytest.approx(sprayed_ac * 32, rel=1e-12)
    # the list of what to buy
    needed = on_sheet[f"{KILL}/product_fl_oz"]
    assert numbers_on(owner, "buy.html")["buy/2027/brew/needed_fl_oz"] == needed
    assert bought(owner)["needed"] == f"{needed:.2f}"
    # the loads add up to the spray, each rounded up to a mark of the tank
    loads = sum(
        load.spray.value * (load.count.value if load.count else 1) for load in job.mix.loads
    )
    assert 0 <= loads - on_sheet[f"{KILL}/spray_gal"] <= 1
    # the hours of the machine
    rate = numbers_on(owner, "hours-by-job.html")["machine/truck/work_rate_ac_per_hour"]
    assert on_sheet[f"{KILL}/work_hours"] == pytest.approx(acres / rate, rel=1e-12)
    # every other reader reads the same digits
    theirs = text_of(hired, THEIR_SHEET)
    for digits in (shown(acres, "ac"), shown(needed, "fl_oz")):
        assert digits in text_of(owner, SHEET)
        assert digits in theirs


def test_before_and_after_all_agree(before: dict[str, Site], after: dict[str, Site]) -> None:
    agree(before)
    agree(after)


def test_the_feet_along_the_strip_move_with_the_well(
    before: dict[str, Site], after: dict[str, Site]
) -> None:
    def stretch(sites: dict[str, Site], reader: str, address: str) -> list[tuple[int, int]]:
        found = re.findall(
            r"from ([\d,]+) ft to ([\d,]+) ft along", text_of(sites[reader], address)
        )
        return [(int(first), int(last)) for first, last in found]

    # the circle of 60 ft around a spot inside of the strip is as wide as it is: 120 ft
    assert stretch(before, "owner", SHEET) == [(140, 261)]
    assert stretch(before, "hired", THEIR_SHEET) == [(140, 261)]
    if treated_ac(after["owner"]) < 1:
        assert stretch(after, "owner", SHEET) == [(240, 361)]
        assert treated_ac(after["owner"]) == pytest.approx(treated_ac(before["owner"]), rel=1e-6)
    else:
        assert stretch(after, "owner", SHEET) == []
        assert "Left out" not in text_of(after["owner"], SHEET)


def test_the_owner_reads_the_name_and_others_the_one_that_is_for_them(
    before: dict[str, Site],
) -> None:
    assert "Granddad's odd well" in text_of(before["owner"], SHEET)
    theirs = text_of(before["hired"], THEIR_SHEET)
    assert "The old well" in theirs
    assert "Measure and flag before mixing" in theirs
    for html in before["hired"].pages().values():
        assert "odd well" not in html


# Corners stand in tenths of a pixel, the length of the scale in hundredths.
CORNER_OFF_PX, SCALE_OFF_PX = 0.05 * math.sqrt(2), 0.005
# Of what is kept off some corners are left out, as long as it runs hardly elsewhere.
RING_OFF_PX = CORNER_OFF_PX + KEPT_OFF_FRACTION * OFF_PX[0]


@dataclass(frozen=True)
class Measured:
    """A drawing as somebody measures it on the page: in pixels, and the feet of one of them."""

    svg: Element
    ft_per_px: float
    scale_off_fraction: float
    strip: shapely.Polygon
    well: tuple[float, float]

    def rings(self) -> list[shapely.Polygon]:
        return [shapely.Polygon(corners_of(one)) for one in self.svg.all("path", "kept-off")]

    def along_ft(self, spot: tuple[float, float]) -> tuple[float, float]:
        """How far east of the strip's west end a spot lies, and how far north of its middle."""
        west, top, _, base = self.strip.bounds
        x, y = spot
        return (x - west) * self.ft_per_px, ((top + base) / 2 - y) * self.ft_per_px


def measured(site: Site, address: str) -> Measured:
    page = read((site.folder / address).read_text(encoding="utf-8"))
    (svg,) = page.all("svg", "lay")
    (words,) = [words for words, _ in texts_of(svg) if words.endswith(" ft")]
    bar = re.search(r"h([\d.]+)v6", svg.all("path", "scale")[0].attributes["d"])
    assert bar is not None
    (strip,) = [one for one in svg.all("path", "strip") if one.has("heavy")]
    (sign,) = [
        one for one in svg.all("path", "sign") if one.attributes["d"] == KIND_SIGNS["well"].point
    ]
    moved = MOVED.search(sign.attributes["transform"])
    assert moved is not None
    return Measured(
        svg,
        float(words.removesuffix(" ft").replace(",", "")) / float(bar[1]),
        SCALE_OFF_PX / float(bar[1]),
        shapely.Polygon(corners_of(strip)),
        (float(moved[1]), float(moved[2])),
    )


def kept_off(site: Site) -> tuple[KeptOff, ...]:
    (job,) = [one for one in site.plan.jobs if one.id in (KILL, KILL.replace("lane", "strip-1"))]
    return job.kept_off


SHEETS = [("owner", SHEET), ("hired", THEIR_SHEET)]


@pytest.mark.parametrize(("reader", "address"), SHEETS)
def test_the_drawing_of_a_sheet_has_the_ground_that_is_lost_and_says_it_in_the_same_digits(
    before: dict[str, Site], after: dict[str, Site], reader: str, address: str
) -> None:
    for site, all_of_it in ((before[reader], before["owner"]), (after[reader], after["owner"])):
        drawn, text = measured(site, address), text_of(site, address)
        told = drawn.svg.all("desc")[0].text()
        rings, lost_ac = drawn.rings(), 1 - treated_ac(all_of_it)
        if not lost_ac:
            assert rings == []
            assert "Hatched" not in text
            continue
        (ring,) = rings
        hatched = ring.intersection(drawn.strip)
        acres = hatched.area * drawn.ft_per_px**2 / SQ_FT_PER_AC
        # no edge of it lies farther off than its corners are rounded
        off = hatched.length * RING_OFF_PX / hatched.area + 2 * drawn.scale_off_fraction
        assert off < 0.04
        assert acres == pytest.approx(lost_ac, rel=off)
        (kept,) = kept_off(site)
        assert kept.reach is not None
        assert kept.lost.value == pytest.approx(lost_ac, rel=1e-9)
        digits = f"60 ft around {kept.name}, {shown(lost_ac, 'ac')}"
        assert kept.reach.printed() == "60 ft"
        assert digits in told
        assert text.count(digits) == 2, "told with the drawing, to whoever sees it and who does not"
        assert f"{kept.name}{shown(lost_ac, 'ac')}: 60 ft around it" in text


def test_drawings_of_place_and_sheet_have_the_well_and_what_is_kept_off_100_ft_elsewhere(
    before: dict[str, Site], after: dict[str, Site], request: pytest.FixtureRequest
) -> None:
    move = MOVES[request.node.callspec.params["after"]]
    for sites, lies in ((before, (200.5, 20.0)), (after, move)):
        for reader, address in [*SHEETS, ("owner", PLACE)]:
            drawn = measured(sites[reader], address)
            # of two spots, and of the scale over so many feet
            off = 2 * CORNER_OFF_PX * drawn.ft_per_px + drawn.scale_off_fraction * lies[0]
            assert drawn.along_ft(drawn.well) == pytest.approx(lies, abs=off)
            for ring in drawn.rings():
                west, top, east, base = ring.bounds
                middle = (west + east) / 2, (top + base) / 2
                off += RING_OFF_PX * drawn.ft_per_px
                assert drawn.along_ft(middle) == pytest.approx(lies, abs=off)

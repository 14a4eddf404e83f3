"""A well is found to lie 100 ft elsewhere, and all that is made of it agrees, on finished pages.

The strip of 726 by 60 ft, an acre, runs from west to east; the well lies 20 ft north of its middle.
By hand: the label keeps 50 ft, and the points of both may be off by 5 ft, so 60 ft around the well
are left out; that lies 10 ft inside of the north edge, and the circle reaches over all of the
width but its corners.
"""

import csv
import io
import re

import pytest

from generator.book.exports import BUY_CSV
from generator.geometry.plane import middle_of_plane, off_plane
from generator.units import shown
from tests.book.reading import read, workings
from tests.book.sites import Site, build_sites
from tests.plan.planned import KILL
from tests.properties import Data, full_card, full_use, small_property, write_property

MIDDLE = middle_of_plane((41.03, -93.02))
SHEET = "work/lane-2027-autumn_kill.html"
THEIR_SHEET = "work/strip-1-2027-autumn_kill.html"
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

"""One typed number is changed, and every place that shows what comes of it shows the same."""

import csv
import io
import re
import shutil

import pytest
from click.testing import CliRunner
from openpyxl import load_workbook

from generator.book.exports import BUDGET_CSV, BUDGET_XLSX, BUY_CSV
from generator.cli import main
from generator.units import shown
from tests.book.reading import Element, Working, read, workings
from tests.book.sites import DEMO, Site, build_sites

COST = "lane/2027/frost_seeding/sg-26a.used_usd"
SEED = "lane/2027/frost_seeding/sg-26a.bulk_seed_lb"
GROUND = "lane/2027/ground/area_ac"
NEEDED = "buy/2027/sg-26a/needed_lb"
# The seed rate feeds the seed; the width feeds the ground too.
CHANGES = {
    "seed rate": ("rate_pls_lb_per_ac: 8", "rate_pls_lb_per_ac: 9.7", {SEED, NEEDED}),
    "width": ("width_ft: 24", "width_ft: 27.5", {SEED, NEEDED, GROUND}),
}


@pytest.fixture(scope="module")
def before(demo_sites: dict[str, Site]) -> dict[str, Site]:
    return demo_sites


@pytest.fixture(scope="module", params=CHANGES)
def moved(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> tuple[dict[str, Site], set[str]]:
    old, new, changed = CHANGES[request.param]
    work = tmp_path_factory.mktemp("moved")
    shutil.copytree(DEMO, work / "land")
    screens = work / "land" / "screens.yaml"
    text = screens.read_text(encoding="utf-8")
    assert text.count(old) >= 1
    screens.write_text(text.replace(old, new, 1), encoding="utf-8")
    return build_sites(work / "land", work / "land-handbook"), changed


def on_page(site: Site, address: str) -> dict[str, Working]:
    """The workings of a page by their ids."""
    page = read((site.folder / address).read_text(encoding="utf-8"))
    return {one.identity: one for one in workings(page).values() if one.identity}


def text_of(site: Site, address: str) -> str:
    page: Element = read((site.folder / address).read_text(encoding="utf-8"))
    return page.text()


def cells(site: Site, name: str, item: str, **others: str) -> dict[str, str]:
    content = (site.folder / name).read_bytes().decode("utf-8-sig")
    found = csv.DictReader(io.StringIO(content, newline=""))
    wanted = {"item": item, **others}
    return next(row for row in found if wanted.items() <= row.items())


def sheet_cells(site: Site, sheet: str, item: str) -> dict[str, object]:
    book = load_workbook(site.folder / BUDGET_XLSX)[sheet]
    head, *rows = [[cell.value for cell in row] for row in book.iter_rows()]
    found = (dict(zip(map(str, head), row, strict=True)) for row in rows)
    return next(row for row in found if row["item"] == item)


def explained(site: Site, number: str) -> tuple[str, float]:
    """What the command says of a number: as a page prints it, and unrounded."""
    said = CliRunner().invoke(main, ["explain", str(site.property_folder), number])
    assert said.exit_code == 0, said.output
    match = re.match(rf"{re.escape(number)} = (.+) \((.+)\)\n", said.stdout)
    assert match is not None
    return match[1], float(match[2])


def seed_in(site: Site) -> dict[str, float]:
    """The pounds of seed as every output of the owner's and the contractor's has them."""
    owner = site
    places = {
        "sheet": on_page(owner, "work/lane-2027-frost_seeding.html")[SEED].value,
        "buy page": on_page(owner, "buy.html")[NEEDED].value,
        "explain": explained(owner, SEED)[1],
    }
    for sheet, name in (("Lines", "amount"), ("Buy", "needed")):
        value = sheet_cells(owner, sheet, "sg-26a")[name]
        assert isinstance(value, float)
        places[sheet] = value
    return places


def seed_as_written(owner: Site) -> set[str]:
    """The pounds of seed as the CSV files have them, with two decimals."""
    columns = ((BUDGET_CSV, "amount"), (BUY_CSV, "needed"))
    return {cells(owner, name, "sg-26a")[column] for name, column in columns}


def test_every_output_shows_the_same_new_digits(
    before: dict[str, Site], moved: tuple[dict[str, Site], set[str]]
) -> None:
    sites, _ = moved
    old, new = seed_in(before["owner"]), seed_in(sites["owner"])
    assert seed_as_written(before["owner"]) == {f"{old['sheet']:.2f}"}
    assert seed_as_written(sites["owner"]) == {f"{new['sheet']:.2f}"}
    assert len({f"{value:.12g}" for value in old.values()}) == 1
    assert len({f"{value:.12g}" for value in new.values()}) == 1
    told = shown(new["sheet"], "lb")
    assert told != shown(old["sheet"], "lb")
    assert explained(sites["owner"], SEED)[0] == told
    pages = ("work/lane-2027-frost_seeding.html", "buy.html")
    for address in pages:
        assert told in text_of(sites["owner"], address), address
        assert told not in text_of(before["owner"], address), address
    for one in (before["owner"], sites["owner"]):
        cost = on_page(one, "work/lane-2027-frost_seeding.html")[COST].value
        parts = [
            part.value for total in on_page(one, "costs.html").values() for part in total.inputs
        ]
        assert cost in parts
    hired = sites["hired-sprayer"]
    assert told in text_of(hired, "work/strip-1-2027-frost_seeding.html")


def test_the_place_page_shows_what_it_rests_on(
    before: dict[str, Site], moved: tuple[dict[str, Site], set[str]]
) -> None:
    sites, changed = moved
    old, new = (on_page(one["owner"], "places/lane.html")[GROUND] for one in (before, sites))
    assert (old.value != new.value) == (GROUND in changed)
    sheet = on_page(sites["owner"], "work/lane-2027-frost_seeding.html")
    assert sheet[GROUND].value == new.value
    assert sheet[GROUND].printed == new.printed
    rate = "9.7 lb/ac" if GROUND not in changed else "8 lb/ac"
    assert rate in text_of(sites["owner"], "places/lane.html")


def test_what_does_not_rest_on_it_stays(
    before: dict[str, Site], moved: tuple[dict[str, Site], set[str]]
) -> None:
    sites, changed = moved
    found = {
        cells(one["owner"], BUDGET_CSV, "demo-burn-down-a", place="lane")["amount"]
        for one in (before, sites)
    }
    assert (len(found) == 1) == (GROUND not in changed)

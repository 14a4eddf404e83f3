"""Pages of runs, read off the finished book: the mix, the order, what is left, blanks, why not."""

from pathlib import Path

import pytest

from tests.book.reading import Element, read
from tests.book.sites import Site, build_sites
from tests.properties import Data, write_property
from tests.three_places import three_places, work_on

RUN = "runs/one-2027-autumn_kill.html"


def built(folder: Path, data: Data) -> dict[str, Site]:
    land = write_property(folder / "land", data)
    return build_sites(land, folder / "books")


def page_of(site: Site, address: str) -> Element:
    return read((site.folder / address).read_text(encoding="utf-8"))


def words(element: Element) -> str:
    return " ".join(element.text().split())


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Site]:
    data = three_places()
    work_on(data, "three")["rate_product_fl_oz_per_ac"] = 48
    handed = [{"planting": f"{name}-27", "steps": ["autumn_kill"]} for name in ("one", "two")]
    data["readers"] = {"readers": [{"id": "hired", "kind": "contractor", "jobs": handed}]}
    return built(tmp_path_factory.mktemp("runs"), data)


@pytest.fixture(scope="module")
def three(tmp_path_factory: pytest.TempPathFactory) -> Site:
    return built(tmp_path_factory.mktemp("three"), three_places())["owner"]


def test_the_page_has_the_mix_the_order_and_what_is_left_at_each_gate(three: Site) -> None:
    page = page_of(three, RUN)
    told = words(page)
    assert "4.58 gal of spray with 19.5 fl oz Made-up product brew, on 0.305 ac" in told
    assert "Fill to 4 gal 2 qt 16 fl oz" in told
    rows = [[words(cell) for cell in row.all("td")] for row in page.all("tr")]
    assert [row for row in rows if row and row[0][:2] in ("1.", "2.", "3.")] == [
        ["1. Piece one", "0.125 ac", "1.88 gal", "8 fl oz", "2.75 gal"],
        ["2. Piece two", "0.1 ac", "1.5 gal", "6.4 fl oz", "1.25 gal"],
        ["3. Piece three", "0.08 ac", "1.2 gal", "5.12 fl oz", "0.05 gal"],
    ]


def test_a_line_to_write_on_holds_nothing_of_the_plan(three: Site) -> None:
    (lines,) = page_of(three, RUN).all("ol", "run-lines")
    places = list(lines.all("li"))
    assert len(places) == 3
    for place in places:
        blanks = list(place.all("span", "write"))
        # product, amount, ground, from and to, wind and where it came from
        assert len(blanks) == 7
        assert {words(blank) for blank in blanks} == {""}
        (beside,) = place.all("span", "beside")
        assert words(beside).startswith("Planned: ")


def test_the_run_is_reached_from_the_work_and_from_each_sheet(three: Site) -> None:
    assert 'href="runs.html"' in (three.folder / "work.html").read_text(encoding="utf-8")
    assert RUN in (three.folder / "runs.html").read_text(encoding="utf-8")
    for name in ("one", "two", "three"):
        sheet = (three.folder / f"work/{name}-2027-autumn_kill.html").read_text(encoding="utf-8")
        assert f"../{RUN}" in sheet


def test_the_owner_reads_why_a_place_is_not_in_it(sites: dict[str, Site]) -> None:
    told = words(page_of(sites["owner"], RUN))
    assert "Another rate Piece three, Kill the sod in fall" in told


def test_a_contractor_s_run_says_nothing_of_other_places(sites: dict[str, Site]) -> None:
    hired = sites["hired"]
    told = words(page_of(hired, "runs/strip-1-2027-autumn_kill.html"))
    assert "3.38 gal of spray with 14.4 fl oz" in told
    assert "Strip 2" in told
    assert "Not in this run" not in told
    every = (path.read_text(encoding="utf-8") for path in hired.folder.rglob("*.html"))
    assert not any("Strip 3" in page or "Piece three" in page for page in every)


def test_a_book_without_runs_has_no_page_of_them(tmp_path: Path) -> None:
    data = three_places()
    for name, rate in (("one", 40), ("two", 48)):
        work_on(data, name)["rate_product_fl_oz_per_ac"] = rate
    owner = built(tmp_path, data)["owner"]
    assert not (owner.folder / "runs.html").exists()
    assert "runs.html" not in (owner.folder / "work.html").read_text(encoding="utf-8")

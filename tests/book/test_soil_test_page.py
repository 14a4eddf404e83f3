"""The page of a soil test: called as a person calls it, with the jobs that spread by it."""

from pathlib import Path

from tests.book.reading import read
from tests.book.sites import build_sites
from tests.plan.test_fertilizing import POTASH, fed
from tests.properties import write_property

TITLE = "Soil test: Lane screen, Apr 11, 2026"


def test_a_soil_test_is_named_by_place_and_day_and_leads_to_its_jobs(tmp_path: Path) -> None:
    folder = write_property(tmp_path / "property", fed(POTASH))
    site = build_sites(folder, tmp_path / "sites", "owner")["owner"]
    page = read((site.folder / "ground/soil.html").read_text(encoding="utf-8"))
    (article,) = page.all("article")
    assert article.all("h1")[0].text().strip().startswith(TITLE)
    links = {one.attributes.get("href", ""): one.text() for one in article.all("a")}
    assert links["../places/lane.html"] == "Lane screen"
    assert links["../work/lane-2027-fertilizing.html"] == "Fertilize the ground"
    assert "../work/lane-2027-autumn_kill.html" not in links
    place = read((site.folder / "places/lane.html").read_text(encoding="utf-8"))
    (article,) = place.all("article")
    assert TITLE in [one.text() for one in article.all("a")]

"""What the log says was seen, on the page of the place, stand, walk, water hole or soil test."""

from pathlib import Path

import pytest

from tests.book.reading import read
from tests.book.sites import build_sites
from tests.properties import Data, small_property, write_property

SEEN: Data = {
    "id": "e-1",
    "done_on": "2026-08-12",
    "measured": {"planting": "lane-27", "height_in": 41, "at_ft": 120},
    "inspected": {"what": ["lane", "oak", "hole"], "found": "one rung loose", "sound": False},
    "sight_checked": {"route": "walk", "seen_from": "the creek", "hidden": False},
    "water_added": {"water_hole": "hole", "amount_gal": 175},
    "soil_tested": {"test": "cores"},
}


def pages(folder: Path, *entries: Data) -> dict[str, str]:
    """The words of every page of the owner by its address."""
    data = small_property()
    hole = {"id": "hole", "name": "Hole", "shape": "cone", "top_ft": 12, "depth_ft": 3}
    cores = {"id": "cores", "places": ["lane"], "sampled_on": "2026-04-02"}
    data["ground"] = {"water_holes": [hole], "soil_tests": [cores]}
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak"}]}
    corn = {"id": "corn", "kind": "field corn", "harvest_planned_on": "2026-10-10"}
    data["routes"] = {
        "routes": [
            {"id": "walk", "name": "Walk", "serves": ["oak"], "crops_beside": [corn]},
            {"id": "bank", "name": "Bank way", "serves": ["oak"]},
        ]
    }
    data["log"] = {"entries": list(entries)}
    sites = build_sites(write_property(folder / "property", data), folder / "sites")
    return {name: " ".join(read(html).text().split())
            for name, html in sites["owner"].pages().items()}  # fmt: skip


@pytest.mark.parametrize(
    ("page", "words"),
    [
        ("places/lane.html", ["Aug 12, 2026 Measured: 41 in tall", "to be mended first"]),
        ("stands/oak.html", ["Aug 12, 2026: unsafe: one rung loose", "Stop Oak was unsafe"]),
        ("routes/walk.html", ["looked at from the creek: whoever walks it is seen"]),
        ("ground/hole.html", ["Aug 12, 2026: 175 gal brought", "one rung loose"]),
        ("ground/cores.html", ["Came back"]),
    ],
)
def test_what_was_seen_stands_on_the_page_of_the_thing(
    tmp_path: Path, page: str, words: list[str]
) -> None:
    with_log, without = pages(tmp_path / "with", SEEN), pages(tmp_path / "without")
    for one in words:
        assert one in with_log[page]
        assert one not in without[page]


def test_what_is_sound_and_hidden_says_so(tmp_path: Path) -> None:
    fine = SEEN | {
        "inspected": {"what": ["oak"], "sound": True},
        "sight_checked": {"route": "walk", "seen_from": "the road", "hidden": True},
    }
    found = pages(tmp_path, fine)
    assert "Aug 12, 2026: sound" in found["stands/oak.html"]
    assert "looked at from the road: nobody walking it was seen" in found["routes/walk.html"]


def test_a_crop_that_is_cut_opens_its_walk_on_every_page_that_names_it(tmp_path: Path) -> None:
    before = pages(tmp_path / "before")
    harvested = {"crops": ["corn"], "stubble_in": 11}
    after = pages(tmp_path / "after", SEEN | {"harvested": harvested})
    opens = "open from Oct 10, 2026: field corn to be cut"
    is_open = "open from Aug 12, 2026: field corn cut"
    for page in ("routes.html", "routes/walk.html", "stands.html", "stands/oak.html"):
        assert opens in before[page]
        assert is_open in after[page]
        assert opens not in after[page]
    walk = after["routes/walk.html"]
    assert "Other way in to Oak" in walk
    assert "Bank way nobody has looked whether you are seen on it" in walk
    assert "field corn: cut Aug 12, 2026, stubble 11 in" in walk
    assert "open from" not in before["routes/bank.html"]

"""A spray sheet in the order of the work, with the numbers of the card beside the boxes."""

from pathlib import Path

import pytest

from tests.book.reading import Element, read
from tests.book.sites import build_sites
from tests.plan.test_passes import pattern, thrice, without_width
from tests.plan.test_tank_mixes import by_hand
from tests.properties import Data, full_card, full_use, small_property, write_property
from tests.properties_tank import three_in_the_tank


def sheet_of(data: Data, folder: Path, reader: str = "owner") -> Element:
    """The finished sheet of the kill."""
    site = build_sites(write_property(folder / "property", data), folder / "sites", reader)[reader]
    pages = {name: html for name, html in site.pages().items() if name.startswith("work/")}
    (page,) = [html for name, html in pages.items() if "autumn_kill" in name]
    (sheet,) = read(page).all("section", "sheet")
    return sheet


def ticks_of(sheet: Element) -> list[str]:
    (boxes,) = sheet.all("ul", "ticks")
    return [" ".join(one.text().split()) for one in boxes.all("li")]


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_whom_to_call_stands_first_and_what_to_wear_between_the_loads_and_the_boxes(
    tmp_path: Path, reader: str
) -> None:
    text = " ".join(sheet_of(small_property(), tmp_path, reader).text().split())
    order = [
        "When", "Days left", "State", "Call 911", "Done on", "Fill to", "Wear:", "Back in after:",
        "Speed:", "Go only if every box is ticked", "Flagged, not sprayed within:",
        "Wind is steady,", "Gate:",
    ]  # fmt: skip
    places = [text.index(one) for one in order]
    assert places == sorted(places)


def test_the_tightest_wind_and_the_longest_dry_time_stand_beside_the_boxes(tmp_path: Path) -> None:
    ticks = ticks_of(sheet_of(three_in_the_tank(), tmp_path))
    assert "Wind is steady, 4 mph to 8 mph." in ticks
    assert "No rain is due for 8 hours." in ticks


def test_a_card_without_numbers_leaves_wind_and_rain_to_the_label(tmp_path: Path) -> None:
    use = full_use(wind_mph="not_on_label")
    ticks = ticks_of(
        sheet_of(small_property(full_card(use, rainfast_hours="not_on_label")), tmp_path)
    )
    assert "Wind is steady, and within what the label says." in ticks
    assert "No rain is due within the time the label asks for." in ticks
    assert not [one for one in ticks if "mph" in one or "hours" in one]


def test_a_label_without_a_range_of_wind_is_named_beside_one_with(tmp_path: Path) -> None:
    data = three_in_the_tank()
    data["products"]["products"][2]["label"]["uses"][0]["wind_mph"] = "not_on_label"
    (told,) = [one for one in ticks_of(sheet_of(data, tmp_path)) if one.startswith("Wind")]
    assert told == (
        "Wind is steady, 4 mph to 8 mph, and within what the label of Made-up product third says."
    )


def test_lines_of_several_labels_stand_under_the_product(tmp_path: Path) -> None:
    sheet = sheet_of(three_in_the_tank(), tmp_path)
    heads = [one.text() for one in sheet.all("h3")]
    for name in ("brew", "other", "third"):
        assert f"Made-up product {name}" in heads
    worn = [
        one for one in sheet.all("span") if "protective" in one.attributes.get("data-safety", "")
    ]
    assert len(worn) == 3


def test_only_a_sheet_with_a_label_in_play_says_that_the_label_decides(tmp_path: Path) -> None:
    folder = write_property(tmp_path / "property", small_property())
    pages = build_sites(folder, tmp_path / "sites", "owner")["owner"].pages()
    told = {
        name: read(html).all("section", "sheet")[0].text()
        for name, html in pages.items()
        if name.startswith("work/")
    }
    assert {"autumn_kill", "first_summer_mowing", "frost_seeding"} <= {
        name.removeprefix("work/lane-2027-").removesuffix(".html") for name in told
    }
    for name, text in told.items():
        spraying = "kill" in name or "burn_down" in name
        assert ("label on the container decides" in text) == spraying, name
        assert (" wind ____" in text) <= spraying, name


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_length_and_width_of_the_strip_stand_on_the_sheet_of_whoever_works_there(
    tmp_path: Path, reader: str
) -> None:
    text = " ".join(sheet_of(small_property(), tmp_path, reader).text().split())
    assert "726 ft by 60 ft, 1 ac" in text
    assert "6, 10 ft wide" in text


@pytest.mark.parametrize(("reader", "first"), [("owner", "The ground"), ("hired", "Begin at")])
def test_where_to_begin_heads_the_sheet_of_others_and_is_a_bold_blank_where_not_typed(
    tmp_path: Path, reader: str, first: str
) -> None:
    text = " ".join(sheet_of(small_property(), tmp_path, reader).text().split())
    assert text.index(first) < text.index("Begin at") + 1
    assert "Begin atnot written down" in text or "Begin at: not written down" in text
    assert text.count("Begin at") == 1


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_the_sheet_says_how_the_passes_lie_and_what_they_take(tmp_path: Path, reader: str) -> None:
    # 24 ft: five of six nozzles on each of three passes, 25 ft on a length of 726
    data = small_property()
    data["screens"]["screens"][0]["width_ft"] = 24
    text = " ".join(sheet_of(data, tmp_path, reader).text().split())
    for told in (
        "3, 8 ft 4 in wide",
        "5 of 6 open, 1 shut, at one end",
        "first and last 4 ft 2 in inside the edge, 7 ft 10 in apart",
        "middle of the boom 10 in beside that line, toward the shut end",
        "Passes lap by6 in, 6%; sprayed twice",
        "Fill to 7 gal 3 qt",
    ):
        assert told in text


def test_the_sheet_says_where_a_last_pass_with_less_open_runs(tmp_path: Path) -> None:
    # 18 ft: six nozzles and then five, 8 ft 4 in wide, the middle 4 ft 2 in from the far edge
    data = small_property()
    data["screens"]["screens"][0]["width_ft"] = 18
    text = " ".join(sheet_of(data, tmp_path, "owner").text().split())
    assert "all 6 open; on the last pass 5 open, 1 shut, at the end toward the far edge" in text
    assert "Middle of what is openfirst 5 ft, last 4 ft 2 in inside the edge" in text
    assert "along that line; on the last pass 10 in beside it, toward the far edge" in text


def test_the_sheet_says_that_one_side_of_a_pattern_is_shut(tmp_path: Path) -> None:
    text = " ".join(sheet_of(pattern(9, sides_shut=True), tmp_path, "owner").text().split())
    assert "one side open, the other shut on every pass" in text
    assert "the sprayer 4 ft 7 1/2 in beside that line, toward the shut side" in text


def test_the_sheet_says_how_many_passes_lie_over_the_same_ground(tmp_path: Path) -> None:
    text = " ".join(sheet_of(thrice(75), tmp_path).text().split())
    assert "where most of them lie over each other the ground is sprayed 3 times" in text


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_the_sheet_says_where_no_passes_are_counted(tmp_path: Path, reader: str) -> None:
    text = " ".join(sheet_of(without_width(), tmp_path, reader).text().split())
    assert "no passes are counted. These amounts are for the bare ground" in text


def test_an_eighth_of_an_acre_stands_on_the_page_of_the_sprayer_alone(tmp_path: Path) -> None:
    data = by_hand(treated_sq_ft=5445)
    site = build_sites(write_property(tmp_path / "property", data), tmp_path / "sites", "owner")[
        "owner"
    ]
    pages = site.pages()
    (sprayer,) = [html for name, html in pages.items() if name == "equipment/boom.html"]
    assert "For an eighth of an acre" in sprayer
    (loads,) = read(sprayer).all("section", "load")
    assert "Fill to 3 gal 3 qt" in " ".join(loads.text().split())
    told = [name for name, html in pages.items() if "For an eighth of an acre" in html]
    assert told == ["equipment/boom.html"]


SET_BACK = "Flagged, not sprayed within: "


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_the_distances_of_the_label_are_ticked_and_nothing_is_set_back(
    tmp_path: Path, reader: str
) -> None:
    sheet = sheet_of(small_property(), tmp_path, reader)
    ticks = ticks_of(sheet)
    assert f"{SET_BACK}open water, 30 ft; wells, runoff points, tile inlets." in ticks
    assert "Mixed no nearer than wells, 50 ft." in ticks
    assert "Amounts cover all of it; buffers are not subtracted." in " ".join(sheet.text().split())


def test_a_label_that_keeps_no_distance_asks_for_no_such_tick(tmp_path: Path) -> None:
    silent = full_card(full_use(setbacks_ft="not_on_label"), mixing_setbacks_ft="not_on_label")
    sheet = sheet_of(small_property(silent), tmp_path)
    assert not [one for one in ticks_of(sheet) if one.startswith((SET_BACK, "Mixed"))]
    assert "buffers are not subtracted" not in sheet.text()


@pytest.mark.parametrize("slope", [None, 4])
def test_a_slope_that_is_not_typed_is_measured_before_the_work(
    tmp_path: Path, slope: float | None
) -> None:
    data = small_property(full_card(full_use(slope_limit_pct=6)))
    data["screens"]["screens"][0]["near"] = {} if slope is None else {"slope_pct": slope}
    told = "Slope measured: nowhere on it steeper than 6%." in ticks_of(sheet_of(data, tmp_path))
    assert told == (slope is None)


def test_the_leaves_that_seedlings_must_have_are_looked_for(tmp_path: Path) -> None:
    data = small_property(full_card(full_use(seedling_leaves_at_least=4)))
    assert (
        "Looked at ten spots: the grass has at least 4 leaves, as the label of Made-up product "
        "brew asks."
    ) in ticks_of(sheet_of(data, tmp_path))

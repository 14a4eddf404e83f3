"""A typed wind that the bearings speak against is told once, and no more once they agree."""

from generator.plan.findings.about_places import PlaceCaution, PlaceNote
from tests.plan.planned import planned
from tests.properties import Data, small_property

WRONG, RIGHT = PlaceCaution.TYPED_WIND_IS_WRONG, PlaceNote.TYPED_WIND_IS_RIGHT


def told(**stand: object) -> list[tuple[str, str, str]]:
    data: Data = small_property()
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak", **stand}]}
    codes = {WRONG.value.code, RIGHT.value.code}
    return [
        (found.code, found.words, found.place)
        for found in planned(data).findings_on("oak")
        if found.code in codes
    ]


# Worked by hand: from the northwest it blows toward 135, and 160 lies 25 off that line; from the
# south toward 0, and 160 lies 160 off it.
BED = {"beds": [{"toward": 160, "distance_yd": 180}]}


def test_a_wind_it_is_for_that_blows_to_a_bed_is_told_once() -> None:
    ((code, words, place),) = told(winds_for=["NW", 320, "south"], **BED)
    assert code == WRONG.value.code
    assert "wind from the northwest and wind from the bearing 320 degrees" in words
    assert "south" not in words
    assert place.startswith("stands.yaml:")


def test_a_wind_it_is_not_for_that_blows_past_is_a_note() -> None:
    ((code, words, _),) = told(winds_against=["S", "NW"], **BED)
    assert code == RIGHT.value.code
    assert "wind from the south" in words
    assert "northwest" not in words


def test_once_wind_or_bearing_is_mended_nothing_is_told() -> None:
    assert told(winds_for=["S"], winds_against=["NW"], **BED) == []
    assert told(winds_for=["NW"], beds=[{"toward": 300, "distance_yd": 180}]) == []
    # where it is the hunter's call, nothing speaks against what is typed
    assert told(winds_for=["NW"], beds=[{"toward": 160}]) == []
    assert told(winds_for=["NW"], winds_against=["S"]) == []

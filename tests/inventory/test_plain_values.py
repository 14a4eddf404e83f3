"""Values as people write them: what can only mean one thing is taken, what is unclear is a fault.

The editors' rules and the reader are held against each other on every one of them.
"""

from __future__ import annotations

import datetime
import re
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from generator.inventory.json_schema import file_schemas
from generator.inventory.load import Loaded, load_inventory
from generator.inventory.plain_values import (
    COMPASS_DEG,
    number_patterns,
    plain_number,
    us_day,
)
from generator.inventory.yaml_positions import read_document
from tests.inventories.overlaid import HERE
from tests.properties import small_property, write_property

SCHEMAS = file_schemas()
BASE = HERE / "base"


def read_with(file: str, text: str, **others: str) -> Loaded:
    """The base property with one file, and others by their names without ending, typed anew."""
    beside = {f"{name}.yaml": content.encode() for name, content in others.items()}
    return load_inventory(BASE, {f"{file}.yaml": text.encode(), **beside})


def codes(loaded: Loaded) -> list[str]:
    return [one.code for one in loaded.problems]


def editor_faults(file: str, text: str) -> list[str]:
    """What the rules for editors say of a file, in the data that the reader's parser gives."""
    document, _ = read_document(text.encode(), f"{file}.yaml")
    assert document is not None
    found = Draft202012Validator(SCHEMAS[file]).iter_errors(document.data)
    return [one.json_path for one in found]


LOT = """lots:
  - id: sg
    species: switchgrass
    tag: {{purity_pct: 98, germination_pct: 41, hard_pct: 0, dormant_pct: 49}}
    {line}
  - id: bb
    species: big-bluestem
    tag: {{{tag}, germination_pct: 60, hard_pct: 0, dormant_pct: 10}}
"""


def lots(line: str = "note: none", tag: str = "purity_pct: 90") -> str:
    return LOT.format(line=line, tag=tag)


@pytest.mark.parametrize(
    ("line", "typed"),
    [
        ("package_lb: .75", 0.75),
        ("package_lb: 3 1/2", 3.5),
        ("package_lb: 3/4", 0.75),
        ("package_lb: 0 1/2", None),
        ("package_lb: 10 5/16", 10.3125),
        ("price_usd: $140", 140),
        ("price_usd: $12.50", 12.5),
        ("price_usd: $ .95", 0.95),
        ("price_usd: $1,200", 1200),
        ("price_usd: $12,345.50", 12345.5),
        ("price_usd: $1,20", None),
        ("price_usd: $1,2000", None),
        ("price_usd: 1,200", None),  # a point to some
        ("price_usd: 1,5", None),
        ("price_usd: 140$", None),
        ("price_usd: 15%", None),
        ("package_lb: $5", None),
        ("package_lb: 15%", None),
        ("package_lb: 1,5", None),
        ("package_lb: 10/12", None),
        ("package_lb: 3 5/4", None),
        ("package_lb: 8-1/2", None),
        ("package_lb: about 5", None),
        ("package_lb: '24'", None),
        ("package_lb: 5 lb", None),
    ],
)
def test_a_number_that_can_only_mean_one_is_taken(line: str, typed: float | None) -> None:
    text = lots(line)
    loaded = read_with("seed", text)
    assert codes(loaded) == ([] if typed is not None else ["F206"])
    assert bool(editor_faults("seed", text)) == (typed is None)
    if loaded.inventory is not None:
        lot = loaded.inventory.lots[0]
        given_number = lot.package_lb or lot.price_usd
        assert given_number is not None
        assert given_number.typed == typed


@pytest.mark.parametrize(
    ("tag", "fraction"),
    [
        ("purity_pct: 98%", 0.98),
        ("purity_pct: 90.5%", 0.905),
        ("purity_pct: 98 %", 0.98),
        ("purity_fraction: 98%", 0.98),
        ("purity_fraction: .98", 0.98),
        ("purity_fraction: 7/8", 0.875),
        ("purity_pct: '98,2%'", None),
        ("purity_pct: 98%%", None),
        ("purity_pct: 90-98%", None),
    ],
)
def test_a_percent_is_taken_where_a_part_is_asked_for(tag: str, fraction: float | None) -> None:
    text = lots(tag=tag)
    loaded = read_with("seed", text)
    assert codes(loaded) == ([] if fraction is not None else ["F206"])
    assert bool(editor_faults("seed", text)) == (fraction is None)
    if loaded.inventory is not None:
        found = loaded.inventory.lots[1].tag.purity_fraction.value
        assert found == pytest.approx(fraction, rel=1e-12)


def test_a_number_taken_as_plain_keeps_to_the_limits_of_its_field() -> None:
    assert codes(read_with("seed", lots(tag="purity_pct: 101%"))) == ["F204"]
    assert codes(read_with("seed", lots("package_lb: -3 1/2"))) == ["F204"]


@pytest.mark.parametrize("key", ["rate_pls_lb_per_ac: 15%", "rate_seeds_per_sq_ft: $15"])
def test_a_sign_of_another_kind_says_which_keys_take_it(key: str) -> None:
    screens = (BASE / "screens.yaml").read_text().replace("rate_pls_lb_per_ac: 8", key)
    (fault,) = read_with("screens", screens).problems
    assert fault.code == "F206"
    assert "_pct" in fault.accepted or "_usd" in fault.accepted


@given(st.text(" 0123456789.,/%$-", max_size=9), st.sampled_from(["ft", "pct", "usd", "fraction"]))
def test_no_text_raises_and_what_is_taken_is_what_it_says(text: str, unit: str) -> None:
    number = plain_number(text, unit)
    if number is None:
        return
    assert any(re.fullmatch(one, text) for one in number_patterns(unit))
    if "/" not in text:
        told = float(text.replace("$", "").replace("%", "").strip())
        assert number == (told / 100 if unit == "fraction" and "%" in text else told)


@pytest.mark.parametrize(
    ("tested", "day"),
    [
        ("10/2026", datetime.date(2026, 10, 1)),
        ("3/2026", datetime.date(2026, 3, 1)),
        ("2026-10", datetime.date(2026, 10, 1)),
        ("2026-10-14", datetime.date(2026, 10, 14)),
        ("13/2026", None),
        ("10/26", None),
        ("10-2026", None),
        ("9/14/2026", None),
        ("0000-10", None),
    ],
)
def test_a_tag_may_know_a_month_alone(tested: str, day: datetime.date | None) -> None:
    text = lots(tag=f"tested_on: {tested}, purity_pct: 90")
    loaded = read_with("seed", text)
    assert codes(loaded) == ([] if day is not None else ["F212"])
    if loaded.inventory is not None:
        assert loaded.inventory.lots[1].tag.tested_on == day
        assert editor_faults("seed", text) == []


@pytest.mark.parametrize(("month", "kept"), [("9/2026", "2026-09"), ("2026-09", "2026-09")])
def test_the_month_of_a_bulletin_is_kept_as_one(month: str, kept: str, tmp_path: Path) -> None:
    data = small_property()
    told = [{"checked_on": "2026-08-01", "month": month}]
    data["products"]["products"][0]["label"]["bulletin"] = told
    loaded = load_inventory(write_property(tmp_path / "land", data))
    assert loaded.inventory is not None
    card = loaded.inventory.products[0].label
    assert card is not None
    assert isinstance(card.bulletin, tuple)
    assert card.bulletin[0].month == kept
    told[0]["month"] = "September"
    assert codes(load_inventory(write_property(tmp_path / "other", data))) == ["F212"]


US = "format: 1\nname: Small bend\nseason: 2027\ndates: us\n"
ISO = "format: 1\nname: Small bend\nseason: 2027\n"


@pytest.mark.parametrize("word", ["us", "US", "Us"])
def test_a_word_out_of_a_list_is_taken_in_any_case(word: str) -> None:
    log = "entries:\n  - {id: one, done_on: 9/14/2026}\n"
    land = US.replace("dates: us", f"dates: {word}")
    loaded = read_with("log", log, property=land)
    assert codes(loaded) == editor_faults("property", land) == []
    assert loaded.inventory is not None
    assert loaded.inventory.property.dates == "us"
    text = "products:\n  - {id: brew, name: Made-up, label: {signal_word: CAUTION}}\n"
    loaded = read_with("products", text)
    assert codes(loaded) == editor_faults("products", text) == []
    assert loaded.inventory is not None
    card = loaded.inventory.products[0].label
    assert card is not None
    assert card.signal_word == "caution"


@pytest.mark.parametrize("typed", ["9/14/2026", "09/14/2026", "9/4/2026", "2026-09-14"])
def test_a_day_is_month_day_year_where_the_folder_says_so(typed: str) -> None:
    """Everywhere a day is typed: property, log and stock, and the days of a year alike."""
    signs = "season_signs: {thaw: {early: 3/1, typical: 03/10, late: 03-20}}\n"
    log = f"entries:\n  - {{id: one, done_on: {typed}, recorded_on: {typed}}}\n"
    seed = lots(f"counted_on: {typed}")
    loaded = read_with("seed", seed, log=log, property=f"{US}as_of: {typed}\n{signs}")
    assert codes(loaded) == []
    assert loaded.inventory is not None
    day = datetime.date.fromisoformat(us_day(typed) or typed)
    assert loaded.inventory.property.as_of == day
    assert loaded.inventory.entries[0].recorded_on == day
    assert loaded.inventory.lots[0].counted_on == day
    thaw = loaded.inventory.property.season_signs.thaw  # type: ignore[union-attr]
    assert thaw is not None
    assert (thaw.early, thaw.typical, thaw.late) == ((3, 1), (3, 10), (3, 20))
    assert editor_faults("log", log) == editor_faults("seed", seed) == []


def test_without_that_word_every_such_day_is_a_fault_that_names_it() -> None:
    signs = "season_signs: {thaw: {early: 3/1, typical: 03-10, late: 03-20}}\n"
    log = "entries:\n  - {id: one, done_on: 9/14/2026, recorded_on: 9/4/2026}\n"
    loaded = read_with("log", log, property=f"{ISO}as_of: 9/14/2026\n{signs}")
    assert codes(loaded) == ["F212"] * 4
    assert all("dates: us" in one.accepted for one in loaded.problems)
    assert loaded.problems[0].accepted.startswith("write 2026-09-14; or ")


@pytest.mark.parametrize("typed", ["14/9/2026", "9/14/26", "9/31/2026", "9-14-2026", "9/2026"])
def test_what_is_no_day_of_that_kind_stays_a_fault(typed: str) -> None:
    log = f"entries:\n  - {{id: one, done_on: {typed}}}\n"
    assert codes(read_with("log", log, property=US)) == ["F212"]


def test_no_other_word_than_us_is_taken_for_days() -> None:
    assert codes(read_with("property", f"{ISO}dates: eu\n")) == ["F211"]


def test_a_fault_in_the_property_file_makes_no_fault_of_every_day_in_the_log() -> None:
    log = "entries:\n  - {id: one, done_on: 9/14/2026}\n"
    loaded = read_with("log", log, property=US.replace("dates: us", "dates us"))
    assert codes(loaded) == ["F108"]


def test_a_page_and_a_setting_may_be_whole_numbers(tmp_path: Path) -> None:
    data: Any = small_property()
    data["products"]["products"][0]["label"]["uses"][0]["page"] = 4
    data["products"]["products"][0]["label"]["label_date"] = 2026
    data["log"] = {"entries": [
        {"id": "one", "done_on": "2026-08-01", "seeded": {"setting": 12}},
        {"id": "two", "done_on": "2026-08-01", "sprayed": {"lot_number": 7, "licence_number": 8}},
    ]}  # fmt: skip
    loaded = load_inventory(write_property(tmp_path / "land", data))
    assert codes(loaded) == []
    inventory = loaded.inventory
    assert inventory is not None
    card, entries = inventory.products[0].label, inventory.entries
    assert card is not None
    assert (card.uses[0].page, card.label_date) == ("4", "2026")
    assert entries[0].seeded is not None
    assert entries[0].seeded.setting == "12"
    for name in ("products", "log"):
        text = (tmp_path / "land" / f"{name}.yaml").read_text(encoding="utf-8")
        assert editor_faults(name, text) == []


@pytest.mark.parametrize(("key", "typed"), [("name", "27"), ("setting", "1.5"), ("page", "true")])
def test_other_numbers_for_text_stay_a_fault(key: str, typed: str) -> None:
    line = {
        "name": ("products", f"products:\n  - {{id: brew, name: {typed}}}\n"),
        "setting": (
            "log",
            f"entries:\n  - {{id: a, done_on: 2026-08-01, seeded: {{setting: {typed}}}}}\n",
        ),
        "page": (
            "products",
            "products:\n  - {id: brew, name: x, label: {uses: [{site_words: y, page: true}]}}\n",
        ),
    }[key]  # fmt: skip
    assert codes(read_with(*line)) == ["F203"]
    assert editor_faults(*line)


@pytest.mark.parametrize(
    ("yes", "no"),
    [("true", "false"), ("yes", "no"), ("Yes", "No"), ("YES", "NO"), ("True", "FALSE"),],
)  # fmt: skip
def test_true_and_yes_are_alike_as_are_false_and_no(yes: str, no: str) -> None:
    text = f"""products:
  - id: brew
    name: Made-up product
    invented: {yes}
    label:
      restricted_use: {no}
      state_registered: {yes}
      uses:
        - {{site_words: Grass, allowed: {no}}}
"""
    loaded = read_with("products", text)
    assert codes(loaded) == []
    assert loaded.inventory is not None
    product = loaded.inventory.products[0]
    assert product.label is not None
    assert (product.invented, product.label.restricted_use) == (True, False)
    assert (product.label.state_registered, product.label.uses[0].allowed) == ("yes", "no")
    assert editor_faults("products", text) == []


@pytest.mark.parametrize("typed", ["on", "y", "1", "'true'", "yes please", "tRUE"])
def test_no_other_word_is_taken_for_yes(typed: str) -> None:
    text = f"products:\n  - {{id: brew, name: Made-up, invented: {typed}}}\n"
    assert codes(read_with("products", text)) == ["F211"]
    assert editor_faults("products", text)


def test_an_empty_line_of_a_card_counts_as_left_out_and_no_other_does() -> None:
    text = """products:
  - id: brew
    name: Made-up product
    label:
      read_on:
      rainfast_hours:
      reentry: {elsewhere: , agricultural_hours: }
      actives:
      uses:
        - site_words: Grass
          page:
          covers: {kinds: }
          rate_low_pt_per_ac:
"""
    loaded = read_with("products", text)
    assert codes(loaded) == []
    assert editor_faults("products", text) == []
    assert loaded.inventory is not None
    card = loaded.inventory.products[0].label
    assert card is not None
    assert (card.read_on, card.rainfast_hours, card.actives) == (None, None, ())
    assert card.uses[0].rate_low is None
    for old, new in (("site_words: Grass", "site_words:"), ("name: Made-up product", "name:")):
        assert codes(read_with("products", text.replace(old, new))) == ["F203"]


STAND = "stands:\n  - id: oak\n    name: Oak\n    at_lat_lon:{}\n"


@pytest.mark.parametrize(
    "typed",
    [
        " [41.02, -93.1]",
        " [41.02, - 93.1]",
        " [41.02,  -  93.1]",
        " [41.02, \N{MINUS SIGN}93.1]",
        " [41.02, -93.1\N{DEGREE SIGN}]",
        " [41.02 N, 93.1 W]",
        " ['41.02', '-93.1']",
        " [+41.02, -093.1]",
        " 41.02, -93.1",
        " 41.02N, 93.1W",
        "\n      - 41.02\n      - -93.1",
        "\n      - 41.02\n      - - 93.1",
    ],
)
def test_a_point_is_taken_as_maps_and_people_write_it(typed: str) -> None:
    text = STAND.format(typed)
    loaded = read_with("stands", text)
    assert codes(loaded) == editor_faults("stands", text) == []
    assert loaded.inventory is not None
    assert loaded.inventory.stands[0].at_lat_lon == (41.02, -93.1)


@pytest.mark.parametrize(
    "typed",
    [
        " [41.02, --93.1]",
        " [41.02 W, 93.1 N]",
        " [41.02, -93.1 W]",
        " 41.02 -93.1",
        " 41,02, -93,1",
        " [41.02, [93.1]]",
        " [41.02, - west]",
        "\n      - 41.02\n      - - -93.1",
        "\n      - 41.02\n      - - 93.1\n        - 4",
    ],
)
def test_a_point_that_may_be_another_stays_a_fault(typed: str) -> None:
    found = codes(read_with("stands", STAND.format(typed)))
    assert len(found) == 1
    assert found[0] in ("F203", "F104")


def test_a_line_of_points_may_be_typed_without_brackets() -> None:
    line = "    line_lat_lon:\n      - 41.02, -93.1\n      - 41.021, -93.1\n    hides"
    text = (BASE / "screens.yaml").read_text().replace("    hides", line)
    loaded = read_with("screens", text)
    assert codes(loaded) == editor_faults("screens", text) == []
    assert loaded.inventory is not None
    shape = loaded.inventory.screens[0].line_lat_lon
    assert shape is not None
    assert shape.lat_lon == ((41.02, -93.1), (41.021, -93.1))


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [
        ("wind_from: SW", 225),
        ("wind_from_deg: nnw", 337.5),
        ("wind_from: northwest", 315),
        ("wind_from: N", 0),
        ("wind_from_deg: 270", 270),
        ("wind_from: 270", None),
        ("wind_from: SWN", None),
        ("wind_from_deg: calm", None),
        ("wind_from: SW, wind_from_deg: 225", None),
    ],
)
def test_wind_comes_from_a_point_of_the_compass_or_from_degrees(
    typed: str, degrees: float | None
) -> None:
    log = f"entries:\n  - {{id: one, done_on: 2026-08-01, sprayed: {{{typed}}}}}\n"
    loaded = read_with("log", log)
    assert (codes(loaded) == []) == (degrees is not None)
    assert len(codes(loaded)) <= 1
    if loaded.inventory is not None:
        assert editor_faults("log", log) == []
        said = loaded.inventory.entries[0].sprayed
        assert said is not None
        assert said.wind_from_deg is not None
        assert (said.wind_from_deg.value, said.wind_from_deg.name) == (degrees, "wind_from_deg")


def test_the_points_of_the_compass_go_around_in_equal_steps() -> None:
    """By definition: sixteen points, from north by east, 22.5 degrees apart."""
    points = [one for one in COMPASS_DEG if len(one) <= len("nne")]
    assert points[::4] == ["n", "e", "s", "w"]
    assert [plain_number(one, "deg") for one in points] == [22.5 * n for n in range(16)]


@pytest.mark.parametrize(("typed", "season"), [("2027.0", 2027), ("2027.5", None)])
def test_a_whole_number_with_a_point_and_a_nought_is_one(typed: str, season: int | None) -> None:
    text = ISO.replace("season: 2027", f"season: {typed}")
    loaded = read_with("property", text)
    assert codes(loaded) == ([] if season else ["F203"])
    assert bool(editor_faults("property", text)) == (season is None)


def test_the_month_of_an_inoculant_is_taken_as_that_of_a_tag() -> None:
    text = lots("inoculant: {group: EL, expires_on: 6/2028}")
    loaded = read_with("seed", text)
    assert codes(loaded) == editor_faults("seed", text) == []
    assert loaded.inventory is not None
    inoculant = loaded.inventory.lots[0].inoculant
    assert inoculant is not None
    assert inoculant.expires_on == datetime.date(2028, 6, 1)

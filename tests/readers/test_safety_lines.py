"""No reader's job sheet loses a safety line of the owner's."""

import re
from collections.abc import Iterator
from dataclasses import replace
from html import unescape
from pathlib import Path

import pytest

from generator.book.make import make_book
from generator.book.model import Book, Page
from generator.inventory.label import LabelCard, Use
from generator.inventory.places import Hazards
from generator.inventory.schema import PARTNER, EmergencyCard
from generator.plan.findings.words import NOT_CLEARED
from generator.plan.jobs.safety import safety_fields
from generator.plan.readers.seen_by import seen_by
from generator.site.publish import publish
from tests.book.reading import Element, read
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, planned, stops_of
from tests.plan.test_near_things import east, with_things
from tests.properties import Data, full_card, full_use, property_data, small_property

KEY = "data-safety"
BLANK = '<strong class="blank">'

# What to type, and what a sheet must then say, for each field marked as safety.
EMERGENCY: dict[str, tuple[object, *tuple[str, ...]]] = {
    "address_911": ("77 Odd Road", "77 Odd Road"),
    "gate_lat_lon": ([41.77317, -92.31771], "41.77317, -92.31771"),
    "gate_words": ("odd blue gate", "odd blue gate"),
    "hospital": ("odd hospital", "odd hospital"),
    "neighbour": ("odd white house", "odd white house"),
    "owner_telephone": ("555-0177", "555-0177"),
    "signal": ("odd hill top", "odd hill top"),
}
NEAR: dict[str, tuple[object, *tuple[str, ...]]] = {
    "water_and_wells": ("odd well", "odd well"),
    "slope": ("odd bank", "odd bank"),
    "slope_pct": (13.7, "13.7%"),
    "lines": ("odd buried gas line", "odd buried gas line"),
    "neighbours": ("odd beehives", "odd beehives"),
    "others": ("odd hunting guests", "odd hunting guests"),
    "block_lat_lon": ([41.7331, -92.7713], "41.7331, -92.7713"),
}
SETBACK = [{"keep_from": "odd ditch", "distance_ft": 77.3}]
CARD: dict[str, tuple[object, *tuple[str, ...]]] = {
    "epa_reg_no": ("odd number", "odd number"),
    "signal_word": ("danger_poison", "DANGER POISON"),
    "reentry": ({"agricultural_hours": 17.3, "elsewhere": "odd words"}, "17.3 hours", "odd words"),
    "protective_equipment": (["odd boots", "odd hood"], "odd boots; odd hood"),
    "mixing_setbacks_ft": (SETBACK, "odd ditch, 77.3 ft"),
}
USE: dict[str, tuple[object, *tuple[str, ...]]] = {
    "wind_mph": ({"low_mph": 2.13, "high_mph": 7.31}, "2.13 mph", "7.31 mph"),
    "droplet": ("odd droplets", "odd droplets"),
    "setbacks_ft": (SETBACK, "odd ditch, 77.3 ft"),
    "slope_limit_pct": (17.3, "17.3%"),
    "waiting_days": ([{"before": "grazing", "wait_days": 17.3}], "No grazing for", "17.3 days"),
}
SAID = {"emergency": EMERGENCY, "near": NEAR, "label": CARD, "use": USE}
TYPED = [(part, field) for part, fields in SAID.items() for field in fields]


def test_every_field_marked_as_safety_is_typed_here() -> None:
    assert set(EMERGENCY) == set(safety_fields(EmergencyCard))
    assert set(NEAR) == set(safety_fields(Hazards))
    # A restricted use product has a sheet only where a license fits; it says so to every reader.
    assert set(CARD) | {"restricted_use"} == set(safety_fields(LabelCard))
    assert set(USE) == set(safety_fields(Use))


def record(data: Data, part: str) -> Data:
    """The record of the small property that holds a part's fields."""
    if part == "emergency":
        return data["property"].setdefault("emergency", {})
    if part == "near":
        return data["screens"]["screens"][0].setdefault("near", {})
    card: Data = data["products"]["products"][0]["label"]
    found: Data = card if part == "label" else card["uses"][0]
    return found


def books(data: Data) -> tuple[Book, Book, Book]:
    """The owner's book, the contractor's, and that of a partner who is handed the same jobs."""
    plan, contractor = planned(data), inventory_of(data).readers[0]
    partner = replace(contractor, kind=PARTNER)
    others = (make_book(seen_by(plan, one)) for one in (contractor, partner))
    return (make_book(plan), *others)


def sheet(book: Book, job_id: str = KILL) -> Page:
    """The sheet of a job: its address ends alike for every reader."""
    ending = job_id.partition("/")[2].replace("/", "-") + ".md"
    return next(one for one in book.pages if one.address.endswith(ending))


def told_on(page: Page) -> dict[str, Element]:
    """What the safety lines of a page tell, by key."""
    every = read(page.markdown).walk()
    return {one.attributes[KEY]: one for one in every if KEY in one.attributes}


def lines_on(page: Page) -> dict[str, str]:
    """The safety lines of a page by key, as text."""
    return {key: " ".join(one.text().split()) for key, one in told_on(page).items()}


def blanks_on(page: Page) -> set[str]:
    """The keys of the safety lines that are bold blanks."""
    return {key for key, one in told_on(page).items() if one.all("strong", "blank")}


def whole_lines_on(page: Page) -> str:
    """The lines of a page that hold safety lines, with the words that head them."""
    every = (one for one in read(page.markdown).walk() if one.tag in ("li", "p", "dd"))
    holding = (one for one in every if any(KEY in inner.attributes for inner in one.walk()))
    return " ".join(" ".join(one.text().split()) for one in holding)


@pytest.mark.parametrize(("part", "field"), TYPED)
def test_a_typed_safety_field_stands_on_every_reader_s_sheet(part: str, field: str) -> None:
    data = small_property()
    typed, *said = SAID[part][field]
    record(data, part)[field] = typed
    assert stops_of(planned(data)) == set()
    for book in books(data):
        told = whole_lines_on(sheet(book))
        assert all(words in " ".join(lines_on(sheet(book)).values()) for words in said[-1:])
        assert all(words in told for words in said), book.reader


@pytest.mark.parametrize(
    ("part", "field"),
    [*(("emergency", field) for field in EMERGENCY), *(("near", field) for field in NEAR)],
)
def test_an_unknown_safety_field_prints_as_a_bold_blank(part: str, field: str) -> None:
    data = small_property()
    record(data, part).update({name: entry[0] for name, entry in SAID[part].items()})
    del record(data, part)[field]
    for book in books(data):
        for page in (sheet(book), sheet(book, BURN_DOWN)):
            blank = {key for key in blanks_on(page) if key.startswith(part)}
            assert blank == {f"{part}.{field}"}, book.reader


def test_what_lies_near_stands_on_every_reader_s_sheet_and_a_blank_beside_it() -> None:
    well, inlet = east("well", 120), east("tile_inlet", -1, known_as="Low inlet")
    data = with_things(well, inlet, east("dwelling", 200, radius_ft=30))
    record(data, "near")["neighbours"] = "odd beehives"
    for book in books(data):
        for page in (sheet(book), sheet(book, BURN_DOWN)):
            told = whole_lines_on(page)
            assert "Low inlet, on this ground or at its edge; Well, 120 ft from the edge" in told
            assert "Dwelling, 170 ft from the edge; also odd beehives" in told
            assert "near.water_and_wells" in blanks_on(page)
            assert set(page.safety_keys) == set(lines_on(page))


def test_a_property_without_any_safety_field_prints_every_blank() -> None:
    data = small_property()
    del data["property"]["emergency"]
    wanted = {f"emergency.{one}" for one in EMERGENCY} | {f"near.{one}" for one in NEAR}
    for book in books(data):
        assert blanks_on(sheet(book)) == wanted
        card = next(one for one in book.pages if one.address == "emergency.md")
        assert card.markdown.count(BLANK) >= len(EMERGENCY)


def test_a_restricted_use_product_is_a_stop_on_every_reader_s_sheet() -> None:
    data = small_property(full_card(full_use(), restricted_use=True))
    for book in books(data):
        told = unescape(sheet(book).markdown)
        assert "finding stop" in told
        assert ("S114" in told) == (book.reader == "owner")
        refused = "Restricted product without a license" if book.reader == "owner" else NOT_CLEARED
        assert refused in told


@pytest.mark.parametrize("seed", range(8))
def test_sheets_of_generated_properties_carry_the_same_safety_lines(seed: int) -> None:
    data = property_data(seed, 4)
    plan = planned(data)
    reader = inventory_of(data).readers[0]
    owner, contractor = make_book(plan), make_book(seen_by(plan, reader))
    names = {screen.id: screen.known_as for screen in inventory_of(data).screens}
    compared = 0
    for page, mine in _pairs(owner, contractor, names):
        assert lines_on(page) == lines_on(mine)
        assert page.safety_keys == mine.safety_keys
        assert set(page.safety_keys) == set(lines_on(page))
        compared += 1
    assert compared or not any(
        names[job.place_id] for job in plan.jobs if job.id in plan.handed[0].job_ids
    )


def _pairs(
    owner: Book, contractor: Book, names: dict[str, str | None]
) -> Iterator[tuple[Page, Page]]:
    theirs = {page.address: page for page in contractor.pages}
    for page in owner.pages:
        place, _, rest = page.address.removeprefix("work/").partition("-2027-")
        known_as = names.get(place)
        if rest and known_as:
            mine = theirs.get(f"work/{known_as.lower().replace(' ', '-')}-2027-{rest}")
            if mine is not None:
                yield page, mine


def _loses(book: Book, key: str) -> Book:
    """The book with one safety line taken off the sheet of the kill."""
    lost = sheet(book)
    line = re.search(rf'<span {KEY}="{re.escape(key)}">.*?</span>', lost.markdown, re.DOTALL)
    assert line is not None
    changed = replace(lost, markdown=lost.markdown.replace(line[0], ""))
    return replace(book, pages=tuple(changed if one is lost else one for one in book.pages))


@pytest.mark.parametrize("key", ["label.protective_equipment", "near.lines", "emergency.hospital"])
def test_a_build_that_lost_a_safety_line_fails(key: str, tmp_path: Path) -> None:
    book = books(small_property())[1]
    site = tmp_path / "site"
    problems = publish(_loses(book, key), site)
    assert [one for one in problems if key in one] == list(problems) != []
    assert not site.exists()
    assert publish(book, site) == ()
    assert f'data-safety="{key}"' in (site / sheet(book).address).with_suffix(".html").read_text()

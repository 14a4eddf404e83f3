"""Every number on a finished page leads to a working, and the working gives that number."""

import posixpath
import re

import pytest

from generator.book.homes import homes_of
from generator.book.money_views import view_numbers
from generator.plan.views.numbers import numbers_of
from generator.units import convert, shown
from generator.working import Quantity, replay
from tests.book.plain_numbers import plain_numbers, typed_texts
from tests.book.reading import (
    Element,
    Input,
    Working,
    marked_numbers,
    read,
    to_replay,
    workings,
)
from tests.book.sites import Site, build_sites
from tests.properties import make_property

# The property's sites, and the reader whose site it is.
READERS = [
    ("demo_sites", "owner"),
    ("demo_sites", "hired-sprayer"),
    ("generated_sites", "owner"),
    ("generated_sites", "hired"),
]
GENERATED_SEED, GENERATED_SCREENS = 1, 6


@pytest.fixture(scope="module")
def generated_sites(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Site]:
    """The sites of a property with several screens, metric units, stops, and cleared work."""
    folder = tmp_path_factory.mktemp("generated")
    land = make_property(folder / "land", GENERATED_SEED, GENERATED_SCREENS)
    return build_sites(land, folder / "handbook")


@pytest.fixture(scope="module", params=READERS, ids="-".join)
def site(request: pytest.FixtureRequest) -> Site:
    sites, reader = request.param
    one: Site = request.getfixturevalue(sites)[reader]
    return one


@pytest.fixture(scope="module")
def documents(site: Site) -> dict[str, Element]:
    return {address: read(html) for address, html in site.pages().items()}


def test_no_number_with_a_unit_stands_outside_a_mark(
    site: Site, documents: dict[str, Element]
) -> None:
    typed = typed_texts(site.property_folder)
    found = {address: plain_numbers(page, typed) for address, page in documents.items()}
    assert {address: plain for address, plain in found.items() if plain} == {}


@pytest.mark.parametrize(
    "line",
    [
        "Mow at 6 in.",
        "about <strong>12</strong> ft wide",
        "0.68 ac",
        "<td>1,240 ft</td>",
        "1.5&nbsp;qt/ac",
        "14&#46;9 gal&#47;ac",
        "$41.25",
        "89%",
        "89 percent",
        "a 24-foot strip",
        "wait 7 days",
        "<code>n</code> 3 acres",
        '<svg><text x="0">6 ft</text></svg>',
    ],
)
def test_a_number_typed_into_a_page_is_seen(line: str) -> None:
    page = read(f"<main><p>Nothing here.</p><p>{line}</p></main>")
    assert len(plain_numbers(page)) == 1


@pytest.mark.parametrize(
    "line",
    [
        '<a class="n" href="#w-1">6 in</a>',
        '<span class="n">6 in</span>',
        '<time datetime="2027-03-03">Mar 3, 2027</time> days',
        'walked <a class="n" href="#w-1">2</a> ft',
        "<code>5940 ft</code>",
        "Season 2027 in the north",
        "Drive 22 minutes north",
        "<td>12</td><td>ft</td>",
        '<svg><text x="0" class="scale">6 ft</text></svg>',
        "S101 days",
    ],
)
def test_marks_dates_names_and_typed_text_are_let_through(line: str) -> None:
    assert plain_numbers(read(f"<p>{line}</p>"), ["Drive 22 minutes north"]) == []


def test_what_a_source_says_may_quote_it_on_the_page_of_sources_alone(site: Site) -> None:
    quoted = '<ul class="sources"><li><p>6 in</p><p class="says">Cut at 6 in.</p></li></ul>'
    assert len(plain_numbers(read(quoted))) == 1
    using = {address for address, text in site.pages().items() if 'class="says"' in text}
    assert using == {"sources.html"}


def _printed_is_the_value(working: Working, printed: str) -> bool:
    """Whether the digits are the value's; a typed number may show the owner's own unit first."""
    canonical = shown(working.value, working.unit)
    if working.read_as:
        number, _, tape = printed.rpartition(" (")
        both = working.read_as == "both" and number == canonical
        as_one = printed if working.read_as == "tape" else canonical
        return _is_on_the_tape(tape.removesuffix(")") if both else as_one, working)
    return printed == canonical or (
        not working.formula and printed.endswith(f" ({canonical})") and printed[0].isdigit()
    )


def _is_on_the_tape(printed: str, working: Working) -> bool:
    """Whether feet and inches come to the value, within a quarter of an inch."""
    told = re.fullmatch(r"(?:([\d,]+) ft)? ?(?:(\d+(?:\.\d+)?)? ?(1/2)? ?in)?", printed)
    assert told is not None, printed
    feet, inches, half = told.groups()
    found_in = int((feet or "0").replace(",", "")) * 12 + float(inches or 0) + bool(half) / 2
    return abs(found_in - convert(working.value, working.unit, "in")) <= 0.25 + 1e-9


@pytest.mark.parametrize(
    ("printed", "value", "read_as", "fits"),
    [
        ("8 ft 4 in", 25 / 3, "tape", True),
        ("8 ft 4 1/2 in", 25 / 3, "tape", False),
        ("10 in", 10 / 12, "tape", True),
        ("13 ft", 13, "tape", True),
        ("0.1 in", 0.1 / 12, "tape", True),
        ("13.3 ft (13 ft 3 1/2 in)", 13.3, "both", True),
        ("13.3 ft (13 ft 4 1/2 in)", 13.3, "both", False),
        ("15 ft", 15, "both", True),
    ],
)
def test_feet_and_inches_that_are_not_the_value_are_seen(
    printed: str, value: float, read_as: str, fits: bool
) -> None:
    working = Working("ft", value, "lane/2027/kill/width_ft", printed, "a_ft", (), read_as)
    assert _printed_is_the_value(working, printed) == fits


def test_every_marked_number_has_its_working(documents: dict[str, Element]) -> None:
    by_page = {address: workings(page) for address, page in documents.items()}
    marks = 0
    for address, page in documents.items():
        for mark in marked_numbers(page):
            working = _leads_to(mark, address, by_page)
            assert mark.text() == working.printed
            assert _printed_is_the_value(working, mark.text()), (address, mark.text())
            marks += 1
    assert marks > 50


def test_every_number_computed_replays_to_the_last_bit(
    site: Site, documents: dict[str, Element]
) -> None:
    replayed, kept = 0, set()
    by_page = {address: workings(page) for address, page in documents.items()}
    for address, by_anchor in by_page.items():
        for working in by_anchor.values():
            assert bool(working.identity) == bool(working.formula) == bool(working.inputs)
            for one in working.inputs:
                _check_input(one, address, by_page)
            if any(one.value is None for one in working.inputs):
                kept.add(working.identity)
            elif working.formula:
                assert replay(*to_replay(working)) == working.value, (address, working)
                replayed += 1
    assert replayed > 20
    if site.plan.reader == "owner":
        assert kept <= _beside_limits(site)
    else:
        assert kept


Pages = dict[str, dict[str, Working]]


def _leads_to(mark: Element, address: str, by_page: Pages) -> Working:
    """The working that a marked number of a page leads to, there or on another page."""
    target, _, anchor = mark.attributes["href"].partition("#")
    page = posixpath.normpath(posixpath.join(posixpath.dirname(address), target))
    return by_page[page if target else address][anchor]


def _check_input(one: Input, address: str, by_page: Pages) -> None:
    """An input that was itself computed leads to its own working, with the same value."""
    if one.mark is not None:
        assert _leads_to(one.mark, address, by_page).value == one.value


def test_a_sheet_holds_all_that_its_numbers_rest_on(documents: dict[str, Element]) -> None:
    """It is read on paper, where no link leads anywhere."""
    sheets = {address: page for address, page in documents.items() if address.startswith("work/")}
    assert sheets
    for address, page in sheets.items():
        by_anchor = workings(page)
        folded = {id(mark) for fold in page.all("details", "workings") for mark in fold.walk()}
        waiting = [mark for mark in marked_numbers(page) if id(mark) not in folded]
        seen: set[str] = set()
        while waiting:
            href = waiting.pop().attributes["href"]
            assert href.startswith("#"), address
            if href not in seen:
                seen.add(href)
                inputs = by_anchor[href.removeprefix("#")].inputs
                waiting += [one.mark for one in inputs if one.mark is not None]


def test_a_number_is_the_same_on_every_page(documents: dict[str, Element]) -> None:
    first: dict[str, Working] = {}
    for page in documents.values():
        for working in workings(page).values():
            if working.identity:
                assert first.setdefault(working.identity, working).value == working.value
    assert len(first) > 15


def test_every_number_of_the_book_is_listed_or_at_home(
    site: Site, documents: dict[str, Element]
) -> None:
    by_page = {address: workings(page) for address, page in documents.items()}
    homes = homes_of(site.plan)
    for identity, home in homes.of_number.items():
        assert by_page[f"{home.page}.html"][home.anchor].identity == identity
    listed = list(homes.of_number)
    for row in documents["workings.html"].all("li"):
        if name := row.attributes.get("data-q"):
            working = _leads_to(row.all("a", "n")[0], "workings.html", by_page)
            assert working.identity == name
            listed.append(name)
    assert len(listed) == len(set(listed))
    everywhere = {one.identity for page in by_page.values() for one in page.values()} - {""}
    assert set(listed) == everywhere
    if site.plan.reader == "owner":
        assert set(listed) == set(numbers_of(site.plan, view_numbers(site.plan)))


def _beside_limits(site: Site) -> set[str]:
    """The numbers that only a stop shows: the owner's rate beside the card's limits."""
    return {
        figure.identity
        for one in site.plan.findings
        if one.severity == "stop"
        for _, figure in one.figures
        if isinstance(figure, Quantity)
    }

"""What a partner sees: handed jobs, stands and walks, what is safe there, and nothing else."""

import copy
import html
import re
from dataclasses import replace
from pathlib import Path

import pytest

from generator.book.content import finding_heads
from generator.book.make import make_book
from generator.book.model import Book
from generator.inventory.load import load_inventory
from generator.inventory.schema import PARTNER
from generator.plan.build.season_plan import make_plan
from generator.plan.findings.about_places import PlaceCaution, PlaceStop
from generator.plan.findings.words import Stop
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.site.publish import publish
from tests.plan.planned import AS_OF, KILL, inventory_of
from tests.properties import SEASON, Data, small_property, write_property
from tests.readers.test_safety_lines import lines_on
from tests.reasons import every

ELM = "Elm behind the gulch"
HUNTED = {"first": "2026-11-05", "last": "2026-11-20"}
JOBS = [{"planting": "lane-27", "steps": ["autumn_kill"]}]


def shared() -> Data:
    """The small property with two stands and two walks, one of each handed to a partner.

    The walk that is handed over leads to both stands.
    """
    data = small_property()
    data["stands"] = {"stands": [
        {"id": "oak", "name": "Oak ladder", "seat_height_ft": 15, "at_lat_lon": [41.0313, -93.0217],
         "straps_checked_on": "2026-07-12", "upkeep": "stand_inspection", "note": "my thorn"},
        {"id": "elm", "name": ELM, "seat_height_ft": 18.7, "upkeep": "stand_inspection"},
    ]}  # fmt: skip
    data["routes"] = {"routes": [
        {"id": "walk", "name": "Lane walk", "serves": ["elm", "oak"], "length_ft": 877,
         "walked_on": "2026-07-13", "upkeep": "walk_in_work", "note": "my thistle"},
        {"id": "gulch", "name": "Gulch way", "serves": ["oak"], "length_ft": 733},
    ]}  # fmt: skip
    data["screens"]["screens"][0] |= {"hides": ["walk", "gulch"]}
    partner = {"id": "friend", "kind": "partner", "jobs": JOBS, "stands": ["oak"],
               "routes": ["walk"]}  # fmt: skip
    data["readers"]["readers"].append(partner)
    return data


def looked(data: Data, *looks: tuple[str, str, bool]) -> Data:
    """The property with looks over stands in its log: day, stand, whether it was sound."""
    entries = [
        {"id": f"look-{number}", "done_on": day, "by": "me",
         "inspected": {"what": [stand], "sound": sound, "found": "a cracked weld"}}
        for number, (day, stand, sound) in enumerate(looks)
    ]  # fmt: skip
    return data | {"log": {"entries": entries}}


def plan_of(data: Data, reader: str = "friend") -> Plan:
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, AS_OF)
    return seen_by(plan, next(one for one in inventory.readers if one.id == reader))


def book_of(data: Data) -> Book:
    return make_book(plan_of(data))


def told(book: Book) -> dict[str, str]:
    """The words of every page by its address."""
    return {
        page.address: " ".join(html.unescape(re.sub(r"<[^>]*>", " ", page.markdown)).split())
        for page in book.pages
    }


def everything(book: Book) -> str:
    """All that stands in a book, search records and addresses among it."""
    parts = [f"{one.address} {one.title} {one.markdown} {one.search}" for one in book.pages]
    return html.unescape(" ".join(parts))


def test_the_book_has_the_pages_of_what_is_handed_over_and_no_other() -> None:
    addresses = {one.address for one in book_of(shared()).pages}
    own = {one for one in addresses if one.partition("/")[0] in ("stands", "routes", "places")}
    assert own == {"stands/oak-ladder.md", "routes/lane-walk.md", "places/strip-1.md"}
    assert {"index.md", "emergency.md", "safety.md", "dates.md", "work.md"} <= addresses
    assert {"months.md", "missed.md"} <= addresses
    owners = {"money.md", "buy.md", "findings.md", "records.md", "readers.md", "counts.md",
              "ahead.md", "year.md", "stands.md", "routes.md", "places.md"}  # fmt: skip
    assert owners & addresses == set()
    sheets = {one for one in addresses if one.startswith("work/")}
    assert f"work/strip-1-{SEASON}-autumn_kill.md" in sheets
    assert f"work/oak-ladder-{SEASON}-stand_check.md" in sheets
    assert f"work/lane-walk-{SEASON}-rake_walk.md" in sheets
    assert not [one for one in sheets if "elm" in one or "gulch" in one]


def test_a_handed_stand_and_walk_say_what_is_written_down_of_them() -> None:
    pages = told(book_of(shared()))
    stand, walk = pages["stands/oak-ladder.md"], pages["routes/lane-walk.md"]
    for words in ("15 ft above the ground", "Jul 12, 2026", "Walks to it Lane walk",
                  "Stands at not handed to you: ask the owner", "Before you climb",
                  "Inspect stand, steps and harness"):  # fmt: skip
        assert words in stand, words
    for words in ("877 ft", "Jul 13, 2026", "Leads to Oak ladder", "Rake the walk bare"):
        assert words in walk, words
    assert "Hidden by" not in walk
    home = pages["index.md"]
    for words in ("Your stands and walks", "As of Aug 20, 2026", "Oak ladder", "Lane walk",
                  "Kill the sod in fall", "Inspect stand"):  # fmt: skip
        assert words in home, words


def test_where_a_stand_is_goes_to_a_partner_only_where_the_owner_says_so() -> None:
    data = shared()
    stand = data["stands"]["stands"][0]
    for said in (None, "no"):
        stand |= {"coordinates": said} if said else {}
        book = book_of(data)
        assert "41.0313" not in everything(book) + repr(book.files) + repr(plan_of(data))
    stand["coordinates"] = "yes"
    data["stands"]["stands"][1]["at_lat_lon"] = [41.0377, -93.0291]
    data["routes"]["routes"][0]["coordinates"] = "yes"
    text = everything(book_of(data))
    assert (
        "Stands at latitude 41.0313, longitude -93.0217"
        in told(book_of(data))["stands/oak-ladder.md"]
    )
    assert "41.0377" not in text
    assert "41.0313" not in everything(make_book(plan_of(data, "hired")))


def test_the_owner_is_told_which_stands_are_handed_with_their_coordinates() -> None:
    data = shared()
    plan = make_plan(inventory_of(data), SEASON, AS_OF)
    pages = told(make_book(plan))
    assert "Oak ladder , without its coordinates" in pages["readers/friend.md"]
    assert "A partner sees its coordinates no" in pages["stands/oak.md"]
    data["stands"]["stands"][0]["coordinates"] = "yes"
    plan = make_plan(inventory_of(data), SEASON, AS_OF)
    pages = told(make_book(plan))
    assert "Oak ladder , with its coordinates" in pages["readers/friend.md"]
    assert "A partner sees its coordinates yes" in pages["stands/oak.md"]


@pytest.mark.parametrize("kind", ["stands", "routes"])
@pytest.mark.parametrize("typed", ["maybe", "true", "", "ja"])
def test_any_other_word_for_coordinates_is_a_fault(kind: str, typed: str, tmp_path: Path) -> None:
    data = shared()
    data[kind][kind][0]["coordinates"] = typed
    problems = load_inventory(write_property(tmp_path / "land", data)).problems
    assert [str(one).partition(" - ")[2] for one in problems] == ["yes or no"]


def test_nothing_else_of_the_ground_is_named_anywhere() -> None:
    data = looked(shared(), ("2026-08-01", "elm", False), ("2026-08-02", "oak", True))
    book = book_of(data)
    text = everything(book)
    for words in (ELM, "elm", "Gulch way", "gulch", "my thorn", "my thistle", "cracked weld",
                  "18.7", "733", "Small bend", "Lane screen", "lane-27", "118.5"):  # fmt: skip
        assert not re.search(rf"\b{re.escape(words)}\b", text), words
    # chapters say how the owner writes things down
    own = [one for one in book.pages if not one.address.startswith("chapters/")]
    for words in (".yaml", "handbook record", "log/"):
        assert [one.address for one in own if words in one.markdown] == [], words


def test_the_plan_a_partner_s_book_is_made_from_knows_of_nothing_else() -> None:
    data = looked(shared(), ("2026-08-01", "elm", False), ("2026-08-02", "oak", True))
    data["dates"] = {"dates": [{"id": "guns", "kind": "hunting", "places": ["oak", "elm"],
                                "note": "my dates"} | HUNTED]}  # fmt: skip
    plan = plan_of(data)
    assert [one.serves for one in plan.land.routes] == [("oak-ladder",)]
    known = repr(replace(plan, jobs=()))
    for words in ("elm", ELM, "gulch", "Gulch way", "my thorn", "my thistle", "my dates",
                  "cracked weld", "guns", "look-", "'me'", "'oak'", "'walk'", ".yaml"):  # fmt: skip
        assert words not in known, words


def test_a_walk_whose_stands_are_kept_back_leads_nowhere() -> None:
    data = shared()
    data["readers"]["readers"][-1]["stands"] = []
    page = told(book_of(data))["routes/lane-walk.md"]
    assert "Leads to" not in page
    alone = copy.deepcopy(data)
    alone["routes"]["routes"][0]["serves"] = []
    assert told(book_of(alone))["routes/lane-walk.md"] == page


def test_a_stand_without_a_handed_walk_says_to_ask() -> None:
    data = shared()
    data["readers"]["readers"][-1]["routes"] = []
    assert "none handed to you: ask the owner" in told(book_of(data))["stands/oak-ladder.md"]


def test_a_stand_found_not_sound_says_so_wherever_a_partner_meets_it() -> None:
    data = looked(shared(), ("2026-08-01", "oak", False))
    pages = told(book_of(data))
    for address in ("stands/oak-ladder.md", f"work/oak-ladder-{SEASON}-stand_check.md"):
        assert "It was unsafe when it was last inspected. Do not climb it." in pages[address]
    (found,) = (one for one in plan_of(data, "friend").findings if one.subject.kind == "stand")
    assert f"{finding_heads()[found.code]} : Oak ladder" in pages["index.md"]
    assert "Aug 1, 2026 : unsafe" in pages["stands/oak-ladder.md"]
    assert "inspected: Aug 1, 2026 , unsafe: do not climb it" in pages["index.md"]
    mended = looked(shared(), ("2026-08-01", "oak", False), ("2026-08-03", "oak", True))
    pages = told(book_of(mended))
    assert "unsafe" not in pages["index.md"]
    assert "harness last inspected: Aug 3, 2026 , sound" in pages["stands/oak-ladder.md"]


def test_another_stand_that_is_not_sound_is_not_told() -> None:
    data = looked(shared(), ("2026-08-01", "elm", False))
    assert book_of(data) == book_of(shared())


def test_a_stand_nobody_looked_over_says_so() -> None:
    data = shared()
    del data["stands"]["stands"][0]["straps_checked_on"]
    pages = told(book_of(data))
    assert "Do not climb it until all of it has been inspected." in pages["stands/oak-ladder.md"]
    assert "inspected: not written down" in pages["index.md"]
    assert "harness last inspected: not written down" in pages["stands/oak-ladder.md"]


def test_a_stop_has_words_for_everybody_and_so_have_the_cautions_on_stands() -> None:
    silent = {one.value.code for one in every(Stop) if not one.value.others}
    assert silent == set()
    assert PlaceStop.STAND_UNSAFE.value.others
    assert PlaceCaution.STRAPS_NOT_LOOKED_OVER.value.others


@pytest.mark.parametrize(
    ("places", "where"),
    [("all", "all the ground"), (["oak"], "Oak ladder"), (["walk", "gulch"], "Lane walk"),
     (["lane", "elm"], "Strip 1")],
)  # fmt: skip
def test_days_on_which_others_hunt_are_told_for_what_is_handed_over(
    places: str | list[str], where: str
) -> None:
    data = shared()
    guns = {"id": "guns", "kind": "hunting", "places": places, "note": "my dates"} | HUNTED
    data["dates"] = {"dates": [guns]}
    pages = told(book_of(data))
    dates = pages["dates.md"]
    assert f"Hunting Nov 5 to 20, 2026 {where} not looked up yet" in dates
    hunted = "Others may be hunting here on Nov 5 to 20, 2026"
    assert (hunted in pages["stands/oak-ladder.md"]) == (places == "all" or "oak" in places)
    assert (hunted in pages["routes/lane-walk.md"]) == (places == "all" or "walk" in places)


def test_dates_of_other_ground_and_its_quiet_dates_are_not_told() -> None:
    data = shared()
    data["dates"] = {"dates": [
        {"id": "guns", "kind": "hunting", "places": ["elm", "gulch"]} | HUNTED,
        {"id": "still", "kind": "quiet", "places": ["elm", "gulch"]} | HUNTED,
    ]}  # fmt: skip
    assert everything(book_of(data)) == everything(book_of(shared()))
    assert "That does not mean that nobody hunts here" in told(book_of(data))["dates.md"]


def test_quiet_dates_of_a_stand_handed_over_close_it_and_no_more_is_told() -> None:
    data = shared()
    data["dates"] = {"dates": [{"id": "still", "kind": "quiet", "places": ["oak"]} | HUNTED]}
    with_dates, without = everything(book_of(data)), everything(book_of(shared()))
    said = "The owner keeps it closed"
    assert said in with_dates
    assert said not in without
    for word in ("quiet", "stay-out", "Stay-out"):
        assert with_dates.count(word) == without.count(word)


def test_a_place_called_all_is_not_all_the_ground() -> None:
    data = shared()
    data["screens"]["screens"][0]["known_as"] = "All"
    data["dates"] = {"dates": [{"id": "guns", "kind": "hunting", "places": ["lane"]} | HUNTED]}
    pages = told(book_of(data))
    assert "Nov 5 to 20, 2026 All not looked up" in pages["dates.md"]
    assert "no days written down: ask the owner" in pages["stands/oak-ladder.md"]


def test_an_upkeep_sheet_names_others_who_hunt_on_its_days_for_owner_and_partner() -> None:
    data = shared()
    late = {"id": "late", "kind": "hunting", "first": "2027-02-10", "last": "2027-02-14"}
    data["dates"] = {"dates": [late | {"places": ["oak"]}]}
    plan = make_plan(inventory_of(data), SEASON, AS_OF)
    for book, name in ((make_book(plan), "oak"), (book_of(data), "oak-ladder")):
        cut, check = (
            next(one for one in book.pages if one.address == f"work/{name}-{SEASON}-{step}.md")
            for step in ("lane_cutting", "stand_check")
        )
        # the lanes are cut from Feb 1 to Mar 15, the stand is looked over in summer
        assert lines_on(cut)["dates.others"].endswith("Feb 10 to 14, 2027")
        assert "dates.others" not in lines_on(check)
        assert set(cut.safety_keys) == set(lines_on(cut))


def test_a_handed_job_is_the_sheet_a_contractor_has() -> None:
    data = shared()
    data["readers"]["readers"][0]["jobs"] = JOBS
    # a card without a volume, so that neither reads of a sprayer of their own
    use = data["products"]["products"][0]["label"]["uses"][0]
    use["carrier_gal_per_ac"] = "not_on_label"
    address = f"work/strip-1-{SEASON}-autumn_kill.md"
    partner, contractor = (
        next(one for one in make_book(plan_of(data, reader)).pages if one.address == address)
        for reader in ("friend", "hired")
    )
    assert lines_on(partner) == lines_on(contractor) != {}
    # behind the sheet stand the chapters, of which a partner has more
    paper = re.compile(r'<section class="sheet.*?</section>', re.DOTALL)
    assert paper.findall(partner.markdown) == paper.findall(contractor.markdown) != []


def test_a_place_without_a_name_for_others_is_a_stop_for_a_partner_too() -> None:
    data = shared()
    del data["screens"]["screens"][0]["known_as"]
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, AS_OF)
    assert "S122" in {one.code for one in plan.findings_on(KILL)}
    text = everything(book_of(data))
    assert "Place without a name 1" in text
    assert "Lane screen" not in text


def test_a_name_for_others_stands_in_place_of_the_owner_s() -> None:
    data = shared()
    data["stands"]["stands"][0]["known_as"] = "North ladder"
    data["routes"]["routes"][0]["known_as"] = "North walk"
    text = everything(book_of(data))
    assert "North ladder" in text
    assert "stands/north-ladder.md" in text
    assert "North walk" in text
    assert [
        one for one in ("Oak ladder", "oak-ladder", "Lane walk", "lane-walk") if one in text
    ] == []


def test_the_owner_sees_what_is_handed_over() -> None:
    plan = make_plan(inventory_of(shared()), SEASON, AS_OF)
    (_, handed) = plan.handed
    assert (handed.kind, handed.stand_ids, handed.route_ids) == (PARTNER, ("oak",), ("walk",))
    pages = told(make_book(plan))
    assert "All that friend sees" in pages["readers.md"]
    partner = pages["readers/friend.md"]
    assert "Oak ladder" in partner
    assert "Lane walk" in partner
    assert ELM not in partner


def test_the_book_of_a_partner_builds_and_a_contractor_has_no_stand(tmp_path: Path) -> None:
    assert publish(book_of(shared()), tmp_path / "site") == ()
    assert (tmp_path / "site/stands/oak-ladder.html").is_file()
    contractor = make_book(plan_of(shared(), "hired"))
    assert not [one for one in contractor.pages if one.address.startswith(("stands", "routes"))]


def test_a_partner_without_any_stand_walk_or_job_has_a_book(tmp_path: Path) -> None:
    data = shared()
    data["readers"]["readers"][-1] = {"id": "friend", "kind": "partner"}
    assert publish(book_of(data), tmp_path / "site") == ()
    assert "Nothing can be done today, and nothing begins soon." in told(book_of(data))["index.md"]

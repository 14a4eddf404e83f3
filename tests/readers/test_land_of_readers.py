"""What of the land another reader sees: what is dangerous near their work, what they are shown."""

import pytest

from generator.book.make import make_book
from generator.inventory.schema import Reader
from generator.plan.build.season_plan import make_plan
from generator.plan.land.lying import lying_of
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.reference.land_kinds import land_kinds
from tests.plan.planned import AS_OF, inventory_of
from tests.plan.test_near_things import LAT, LON, east, moved, with_things
from tests.properties import SEASON, Data
from tests.readers.test_non_interference import made
from tests.readers.test_partner import told as pages_told

CONTRACTOR, PARTNER = "hired", "hunts"
FAR_OFF = {"at_lat_lon": moved(LAT, LON, 90, 4000)}


def land(*things: Data) -> Data:
    """The strip of 400 feet with things, its jobs handed to somebody hired and to a partner."""
    data = with_things(*things)
    jobs = data["readers"]["readers"][0]["jobs"]
    data["readers"]["readers"].append({"id": PARTNER, "kind": "partner", "jobs": jobs})
    return data


def views(data: Data) -> dict[str, tuple[Reader, Plan]]:
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, AS_OF)
    return {reader.id: (reader, seen_by(plan, reader)) for reader in inventory.readers}


def names(data: Data, reader: str) -> list[str]:
    """What the reader's plan holds of the land, by name."""
    return [thing.name for thing in views(data)[reader][1].land.things]


def test_what_is_dangerous_near_work_is_there_for_everybody_under_its_name_for_others() -> None:
    data = land(
        east("well", 50, name="Widow's well"),
        east("pond", 90, radius_ft=20, known_as="The pond"),
        east("building", 60),
        {"kind": "dwelling"} | FAR_OFF,
    )
    for reader in (CONTRACTOR, PARTNER):
        _, view = views(data)[reader]
        assert names(data, reader) == ["The pond", "Well"]
        assert [thing.id for thing in view.land.things] == ["thing--1", "thing--2"]
        near = {(one.thing_id, one.name) for job in view.jobs for one in job.near}
        assert near == {("thing--1", "The pond"), ("thing--2", "Well")}
        assert all(one.apart.file == "" for job in view.jobs for one in job.near)
        assert "Widow" not in repr(view)
        assert "land.yaml" not in repr(view)


def test_a_thing_shown_to_somebody_is_there_for_them_alone_however_far_off() -> None:
    data = land({"kind": "building", "known_as": "The barn", "shown_to": [PARTNER]} | FAR_OFF)
    assert names(data, PARTNER) == ["The barn"]
    assert names(data, CONTRACTOR) == []


@pytest.mark.parametrize("kind", [name for name, kind in land_kinds().items() if kind.private])
def test_what_tells_of_deer_never_reaches_somebody_hired(kind: str) -> None:
    line = {"line_lat_lon": [moved(LAT, LON, 90, 20), moved(LAT, LON, 0, 300)]}
    lies = line if kind == "deer_trail" else {"at_lat_lon": [LAT, LON]}
    thing = {"kind": kind, "known_as": "Thick place", "shown_to": [PARTNER]} | lies
    assert names(land(thing), PARTNER) == ["Thick place"]
    assert names(land(thing), CONTRACTOR) == []
    assert names(land(thing | {"shown_to": []}), PARTNER) == []


def test_coordinates_go_along_only_where_the_owner_says_so_for_that_reader() -> None:
    data = land(east("well", 50, coordinates_for=[PARTNER]), east("bees", 70))
    told = {
        reader: {thing.kind: bool(thing.coordinates_for) for thing in view.land.things}
        for reader, (_, view) in views(data).items()
    }
    assert told == {
        CONTRACTOR: {"well": False, "bees": False},
        PARTNER: {"well": True, "bees": False},
    }


def test_a_place_of_their_work_lies_where_it_lies_and_no_other_is_there() -> None:
    data = land()
    screens = data["screens"]["screens"]
    screens[0]["near"] = {"block_lat_lon": [LAT, LON]}
    other = {"id": "other", "name": "Other", "length_ft": 90, "width_ft": 10}
    line = [[LAT, LON + 0.01], [LAT + 0.001, LON + 0.01]]
    screens.append(other | {"line_lat_lon": line})
    inventory = inventory_of(data)
    for _, view in views(data).values():
        (place,) = view.places
        assert place.lies == lying_of(inventory.screens[0])
        assert place.begins_lat_lon == (LAT, LON)
        assert repr(LON + 0.01) not in repr(view)


@pytest.mark.parametrize("seed", range(4))
def test_a_reader_s_things_are_those_near_their_jobs_and_those_shown(seed: int) -> None:
    """By another way: all pairs measured, and what is told held against the words of the files."""
    data = made(seed)
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, AS_OF)
    typed = {thing.id: thing for thing in inventory.land}
    for reader in inventory.readers:
        view = seen_by(plan, reader)
        near = {one.thing_id for job in view.jobs for one in job.near}
        for thing in view.land.things:
            (of_the_owner,) = (
                one
                for one in typed.values()
                if one.kind == thing.kind and lying_of(one) == lying_of(thing)
            )
            is_told = reader.id in (*of_the_owner.shown_to, *of_the_owner.coordinates_for)
            assert is_told or (thing.id in near and land_kinds()[thing.kind].danger)
            assert reader.kind == "partner" or not land_kinds()[thing.kind].private
        told = {thing.name for thing in view.land.things}
        assert not told & {thing.name for thing in typed.values()}


def test_the_owner_reads_what_each_reader_sees_of_the_land_and_why() -> None:
    shed = {"kind": "building", "shown_to": [PARTNER], "coordinates_for": [PARTNER]} | FAR_OFF
    data = land(east("well", 50, name="Widow's well", known_as="The well"), shed)
    pages = pages_told(make_book(make_plan(inventory_of(data), SEASON, AS_OF)))
    hired, hunts = (pages[f"readers/{reader}.md"] for reader in (CONTRACTOR, PARTNER))
    for page in (hired, hunts):
        assert "so that they find the work: Lane screen" in page
        assert "Widow's well, as The well: near Lane screen, without its coordinates" in page
    assert "T 1" not in hired
    assert "T 1, as Building: you show it to them, with its coordinates" in hunts
    with_nothing = pages_told(make_book(make_plan(inventory_of(land()), SEASON, AS_OF)))
    assert "Nothing of what you typed of the land" in with_nothing[f"readers/{CONTRACTOR}.md"]

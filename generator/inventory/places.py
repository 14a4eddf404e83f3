"""What stands on the ground: strips with their plantings, stands, routes."""

import datetime
from dataclasses import dataclass

from generator.inventory.fields import (
    POSITIVE,
    LatLon,
    Limits,
    Record,
    choice,
    day,
    identity,
    lat_lon,
    measure,
    record,
    reference,
    text,
    whole,
)
from generator.working import Given


@dataclass(frozen=True, slots=True, kw_only=True)
class CoverNow(Record):
    """What grows on a place now."""

    kind: str = choice(
        "page",
        "what grows there now",
        "perennial_sod",
        "annual_weeds",
        "stubble",
        "bare",
        "native_grass",
        "clover",
        "brush",
        "unsure",
        required=True,
    )
    seen_on: datetime.date | None = day("page", "seen on", recorded=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazards(Record):
    """What can hurt or be hurt near a place; what is left out prints as a bold blank."""

    water_and_wells: str | None = text("page", "water, wells, tile inlets near", safety=True)
    slope: str | None = text("page", "slopes and soft ground", safety=True)
    lines: str | None = text("page", "lines above and below ground", safety=True)
    neighbours: str | None = text("page", "sensitive crops, bees, dwellings near", safety=True)
    others: str | None = text("page", "others present or hunting on work days", safety=True)
    block_lat_lon: LatLon | None = lat_lon("page", "where the work begins", safety=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class SownSeed(Record):
    """One kind of seed in a planting."""

    species: str = reference("page", "species", "species", required=True)
    lot: str = reference("page", "seed lot", "lot", required=True)
    rate_pls_lb_per_ac: Given = measure(
        "page",
        "pure live seed on the tag, pounds to an acre",
        "lb_per_ac",
        Limits(above=0, at_most=300),
        required=True,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Work(Record):
    """How the owner means to do one step: with what and how much."""

    step: str = reference("page", "step of the step plan", "step", required=True)
    product: str | None = reference("page", "product to spray", "product")
    rate_product: Given | None = measure("page", "product to an acre", "fl_oz_per_ac", POSITIVE)
    rate_ai_lb_per_ac: Given | None = measure(
        "page", "active ingredient to an acre", "lb_per_ac", POSITIVE
    )
    rate_ae_lb_per_ac: Given | None = measure(
        "page", "acid equivalent to an acre", "lb_per_ac", POSITIVE
    )
    method: str | None = choice("page", "broadcast or spot", "broadcast", "spot")
    sprayer: str | None = reference("page", "sprayer", "sprayer")
    spreader: str | None = reference("page", "spreader", "spreader")
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Planting(Record):
    """What grows on a place from one season on."""

    id: str = identity("id of the planting")
    season: int = whole(
        "page",
        "season it is sown, named by its spring",
        Limits(at_least=1990, at_most=2100),
        required=True,
    )
    seed: tuple[SownSeed, ...] = record("page", "what is sown", SownSeed, many=True, required=True)
    method: str = choice("page", "how it is sown", "frost_seed", required=True)
    steps: str = reference("page", "step plan", "step_plan", required=True)
    work: tuple[Work, ...] = record("page", "how each step is done", Work, many=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Screen(Record):
    """A strip of cover: ground with a shape."""

    id: str = identity("id of the place")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    known_as: str | None = text("page", "name other readers see")
    length_ft: Given = measure("place", "measured length", "ft", POSITIVE, required=True)
    width_ft: Given = measure("page", "taped width", "ft", POSITIVE, required=True)
    hides: tuple[str, ...] = reference("place", "routes it hides", "route", many=True)
    contract: str | None = text("page", "contract the ground is under, or none")
    cover_now: CoverNow | None = record("page", "what grows there now", CoverNow)
    near: Hazards | None = record("page", "what to watch for", Hazards, safety=True)
    plantings: tuple[Planting, ...] = record("page", "plantings", Planting, many=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand(Record):
    """A hunting stand."""

    id: str = identity("id of the stand")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    at_lat_lon: LatLon | None = lat_lon("place", "where it stands")
    seat_height_ft: Given | None = measure("place", "height of the seat", "ft", POSITIVE)
    straps_checked_on: datetime.date | None = day(
        "place", "straps and harness looked over on", recorded=True
    )
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Route(Record):
    """A way to walk to stands."""

    id: str = identity("id of the route")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    serves: tuple[str, ...] = reference("place", "stands it leads to", "stand", many=True)
    length_ft: Given | None = measure("place", "measured length", "ft", POSITIVE)
    walked_on: datetime.date | None = day("place", "last walked on", recorded=True)
    note: str | None = text("note", "a note of your own")

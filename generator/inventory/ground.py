"""What is known of the ground: soil tests as the lab prints them, dug water holes."""

import datetime
from typing import Any

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
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
)
from generator.units import LatLon
from generator.working import Given

MOST_NUTRIENT = Limits(at_least=0, at_most=600)
# A lab that asks for no lime prints 0.
AMOUNT = Limits(at_least=0)
ANY_PH = Limits(at_least=2, at_most=11)
# Burned lime neutralizes more than its own weight of pure limestone does.
# Limes sold for fields are far stronger: a tenth is a fraction typed for a percent.
LIME_STRENGTH = Limits(at_least=0.1, at_most=2)
LIME_BASES = ("enm", "cce", "ecce")
SHAPES = ("round", "cone", "rectangle")
# Said of one stand or walk alone: whether a partner who is handed it sees where it lies.
YES, NO = "yes", "no"
FAR = "yes where it truly lies that far from the middle of the property"
# How points were got, which says how far they may be off.
PHONE, UNDER_TREES, SURVEYED, DRAWN = "phone", "phone_under_trees", "surveyed", "drawn"
MAY_BE_OFF = "how far its points may be off, as you know it"


def how_got() -> Any:
    """Declare how the points of a thing were got."""
    return choice(
        "place",
        "how its points were got: by phone, under trees or not, surveyed, or drawn",
        PHONE,
        UNDER_TREES,
        SURVEYED,
        DRAWN,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapeInFile(Record):
    """A shape that a file in `shapes/` holds: the file's name, and the name of the shape in it."""

    file: str = text("place", "file in the folder shapes", required=True)
    name: str | None = text("place", "name of the shape there, where it holds several")


def shape_in_file() -> Any:
    """Declare the shape of a thing in a file, in place of points that are typed."""
    return record("place", "its shape in a file, in place of typed points", ShapeInFile)


@dataclass(frozen=True, slots=True, kw_only=True)
class NutrientNeed(Record):
    """What a planting needs to an acre, as the lab prints it; a lab's none is 0."""

    n_lb_per_ac: Given = measure(
        "page", "nitrogen (N) needed", "lb_per_ac", MOST_NUTRIENT, required=True
    )
    p2o5_lb_per_ac: Given = measure(
        "page", "phosphate (P2O5) needed", "lb_per_ac", MOST_NUTRIENT, required=True
    )
    k2o_lb_per_ac: Given = measure(
        "page", "potash (K2O) needed", "lb_per_ac", MOST_NUTRIENT, required=True
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class LimeNeed(Record):
    """Lime needed to an acre, exactly as the lab prints it, with what the figure counts."""

    amount_lb_per_ac: Given = measure(
        "page", "lime the lab asks for", "lb_per_ac", AMOUNT, required=True
    )
    base: str = choice(
        "page",
        "what the amount counts: pounds of ENM, or lime of a stated CCE or ECCE",
        *LIME_BASES,
        required=True,
    )
    base_fraction: Given | None = measure(
        "page", "CCE or ECCE of the lime the lab reckons with", "fraction", LIME_STRENGTH
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class SoilTest(Record):
    """One soil test and the places its cores came from."""

    id: str = identity("id of the soil test")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    places: tuple[str, ...] = reference(
        "place", "places the cores came from", "place", many=True, required=True
    )
    sampled_on: datetime.date = day("page", "sampled on", required=True)
    lab: str | None = text("place", "laboratory")
    depth_in: Given | None = measure("page", "depth of the cores", "in", POSITIVE)
    soil_ph: Given | None = measure("page", "pH in water", "ph", ANY_PH)
    buffer_ph: Given | None = measure("page", "buffer pH", "ph", ANY_PH)
    need: NutrientNeed | None = record("page", "fertilizer the lab asks for", NutrientNeed)
    lime_need: LimeNeed | None = record("page", "lime the lab asks for", LimeNeed)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterHole(Record):
    """A dug water hole: its shape and sizes at the full mark, and who drinks there."""

    id: str = identity("id of the water hole")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    shape: str = choice("place", "shape, seen from above and cut through", *SHAPES, required=True)
    at_lat_lon: LatLon | None = lat_lon("place", "where it lies")
    far: str | None = choice("place", FAR, YES, NO)
    top_ft: Given | None = measure("place", "across the top of a round hole", "ft", POSITIVE)
    bottom_ft: Given | None = measure(
        "place", "across the bottom of a round hole", "ft", Limits(at_least=0)
    )
    length_ft: Given | None = measure("place", "length of a rectangle at the top", "ft", POSITIVE)
    width_ft: Given | None = measure("place", "width of a rectangle at the top", "ft", POSITIVE)
    side_ft_per_ft: Given | None = measure(
        "place",
        "sides of a rectangle, feet out for each foot down",
        "ft_per_ft",
        Limits(at_least=0),
    )
    depth_ft: Given = measure("place", "depth at the full mark", "ft", POSITIVE, required=True)
    ramp_ft_per_ft: Given | None = measure(
        "place", "ramp, feet out for each foot down", "ft_per_ft", POSITIVE
    )
    deer_count: Given | None = measure("place", "deer that drink there", "count", POSITIVE)
    deer_weight_lb: Given | None = measure("place", "weight of a deer", "lb", POSITIVE)
    need_qt_per_100_lb_per_day: Given | None = measure(
        "place", "water a deer drinks", "qt_per_100_lb_per_day", Limits(above=0, at_most=20)
    )
    dry_spell_days: Given | None = measure("place", "longest dry spell", "days", POSITIVE)
    refill_gal: Given | None = measure("place", "one load of water brings", "gal", POSITIVE)
    refilled_on: datetime.date | None = day("place", "last refilled on")
    inspected_on: datetime.date | None = day("place", "last inspected on")
    wet_ground_asked_on: datetime.date | None = day(
        "place", "asked whether it lies in a wetland or by a stream on"
    )
    upkeep: str | None = reference("place", "step plan of every season", "step_plan")
    asked_for: tuple[str, ...] = reference(
        "place", "steps of it that are done only where you ask for them", "step", many=True
    )
    note: str | None = text("note", "a note of your own")

"""The log: what was done, used and bought, entry by entry. An entry is never changed later."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.counted import Counted, WeedSeen
from generator.inventory.fields import (
    POSITIVE,
    Limits,
    Record,
    amount,
    choice,
    day,
    identity,
    measure,
    record,
    reference,
    text,
    yes_no,
)
from generator.inventory.label import RATE_UNITS
from generator.inventory.log_sat import Sat
from generator.inventory.log_seen import (
    DriftChecked,
    Harvested,
    HeightsLogged,
    Inspected,
    LaidDown,
    SightChecked,
    SoilTested,
)
from generator.inventory.log_work import (
    Burned,
    CleanedOut,
    Mowed,
    NotDoing,
    Seeded,
    Sprayed,
    UpkeepDone,
    WaterAdded,
)
from generator.inventory.season import a_season
from generator.working import Given

AMOUNT_UNITS = ("lb", "fl_oz", "count")
# Kinds of records that can be on hand, used and bought, as mentions of one name them.
_KEPT = ("lot", "plant", "guard", "product", "adjuvant", "fertilizer", "lime")


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedJob(Record):
    """The job an entry is about."""

    planting: str = reference("place", "planting", "planting", required=True)
    step: str = reference("place", "step of its step plan", "step", required=True)
    season: int | None = a_season(
        "place", "season it counts for, where the step comes back: else its day's"
    )
    area_ac: Given | None = measure("place", "acres it was done on", "ac", POSITIVE)
    part: str | None = text("place", "part of the place it was done on, as you call it")
    finished: bool | None = yes_no("place", "true once nothing of the job is left to do")
    answer: str | None = choice("place", "answer to what the step asks", "yes", "no")
    decide_on: datetime.date | None = day("place", "day to decide, where it is too early to answer")


@dataclass(frozen=True, slots=True, kw_only=True)
class Used(Record):
    """So much of one thing used."""

    item: str = reference("money", "what was used", *_KEPT, required=True)
    amount: Given = amount("money", "used", AMOUNT_UNITS, required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought(Record):
    """So much of one thing bought."""

    item: str = reference("money", "what was bought", *_KEPT, required=True)
    amount: Given = amount("money", "bought", AMOUNT_UNITS, required=True)
    cost_usd: Given | None = measure("money", "paid for it", "usd", Limits(at_least=0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Spent(Record):
    """Money spent on something that is not kept: hire, fuel, rent, a fee."""

    what: str = text("money", "what it was spent on", required=True)
    cost_usd: Given = measure("money", "paid for it", "usd", Limits(at_least=0), required=True)
    planting: str | None = reference("place", "planting it was for", "planting")


@dataclass(frozen=True, slots=True, kw_only=True)
class Unknown(Record):
    """What can no longer be known of a spraying, and how far it is bounded all the same."""

    products: tuple[str, ...] = reference(
        "place", "products it could have been; any where left out", "product", many=True
    )
    most: Given | None = amount("place", "the most that an acre can have got of it", RATE_UNITS)
    places: tuple[str, ...] = reference(
        "place", "places it could have been on; any where left out", "place", many=True
    )
    latest_on: datetime.date | None = day("place", "the latest day it can have been")
    checked_with: str = text("person", "who was asked, or what was looked at", required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class LogEntry(Record):
    """What was done on a day; an entry that was wrong is left and corrected by another."""

    id: str = identity("id of the entry")
    done_on: datetime.date = day("place", "day it was done", required=True)
    recorded_on: datetime.date | None = day("place", "day it was written down")
    by: str | None = text("person", "who did it")
    job: LoggedJob | None = record("place", "the job it was", LoggedJob)
    used: tuple[Used, ...] = record("money", "what was used", Used, many=True)
    bought: tuple[Bought, ...] = record("money", "what was bought", Bought, many=True)
    counted: Counted | None = record("place", "plants counted", Counted)
    weeds_seen: tuple[WeedSeen, ...] = record("place", "weeds seen", WeedSeen, many=True)
    sprayed: Sprayed | None = record("place", "how it was sprayed", Sprayed)
    seeded: Seeded | None = record("place", "how it was sown", Seeded)
    mowed: Mowed | None = record("place", "how it was mowed", Mowed)
    burned: Burned | None = record("place", "how it was burned", Burned)
    cleaned_out: CleanedOut | None = record("place", "sprayer cleaned out", CleanedOut)
    markers_seen: tuple[str, ...] = reference(
        "place", "season markers seen that day", "season_sign", many=True
    )
    upkeep: tuple[UpkeepDone, ...] = record("place", "maintenance done", UpkeepDone, many=True)
    not_doing: tuple[NotDoing, ...] = record(
        "place", "steps that will not be done, and why", NotDoing, many=True
    )
    water_added: WaterAdded | None = record("place", "water brought to a water hole", WaterAdded)
    measured: HeightsLogged | None = record("place", "height measured", HeightsLogged)
    inspected: Inspected | None = record("place", "what was inspected", Inspected)
    soil_tested: SoilTested | None = record("place", "soil test that came back", SoilTested)
    sight_checked: SightChecked | None = record("place", "walk looked at", SightChecked)
    harvested: Harvested | None = record("place", "crops beside walks that were cut", Harvested)
    laid_down: LaidDown | None = record("place", "screens laid down by ice or snow", LaidDown)
    sat: Sat | None = record("place", "a sit that is over", Sat)
    drift_checked: DriftChecked | None = record("place", "looked at for drift", DriftChecked)
    spent: tuple[Spent, ...] = record("money", "other money spent", Spent, many=True)
    corrects: str | None = reference("place", "earlier entry this one replaces", "entry")
    not_done: bool | None = yes_no(
        "place", "true where what the corrected entry tells was not done at all"
    )
    unknown: Unknown | None = record(
        "place", "what can no longer be known of a spraying, and how far it is bounded", Unknown
    )
    confirms: tuple[str, ...] = reference(
        "place", "entries that look wrong, looked at again, and right", "entry", many=True
    )
    note: str | None = text("note", "a note of your own")

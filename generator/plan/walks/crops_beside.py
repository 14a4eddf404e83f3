"""From which day a crop beside a walk or a screen hides nobody: by log, as typed, or as planned."""

import datetime
from collections.abc import Iterable, Mapping

from generator.dataclass import dataclass
from generator.inventory.crops import CropBeside
from generator.inventory.log import LogEntry
from generator.inventory.places import Route, Screen
from generator.plan.model.place import CutKnown
from generator.plan.model.plan import Plan
from generator.working import Given


@dataclass(frozen=True, slots=True)
class StandingCrop:
    """A crop and what it stands beside: a walk, or a screen."""

    crop: CropBeside
    beside: Route | Screen


@dataclass(frozen=True, slots=True)
class CropCut:
    """A crop with the day from which it hides nobody, and how that is known."""

    standing: StandingCrop
    day: datetime.date
    known: CutKnown
    stubble_in: Given | None


def crops_of(plan: Plan) -> tuple[StandingCrop, ...]:
    """Return every crop beside a walk or a screen, walks first, as they are typed."""
    screens = [place.typed for place in plan.places if isinstance(place.typed, Screen)]
    grounds: list[Route | Screen] = [*plan.land.routes, *screens]
    return tuple(StandingCrop(crop, beside) for beside in grounds for crop in beside.crops_beside)


def crop_cut(standing: StandingCrop, entries: Mapping[str, LogEntry]) -> CropCut | None:
    """Return from which day a crop hides nobody; None where no day of its cut is known.

    Once the day it is meant to be cut is there it counts as cut, unless that day is typed anew.
    """
    crop = standing.crop
    entry = entries.get(crop.id)
    if entry is not None and entry.harvested is not None:
        stubble = entry.harvested.stubble_in or crop.stubble_in
        return CropCut(standing, entry.done_on, "logged", stubble)
    if crop.harvested_on is not None:
        return CropCut(standing, crop.harvested_on, "typed", crop.stubble_in)
    if crop.harvest_planned_on is not None:
        return CropCut(standing, crop.harvest_planned_on, "planned", None)
    return None


def cut_in(entries: Iterable[LogEntry]) -> dict[str, LogEntry]:
    """Return the first entry that says of a crop that it was cut, by the crop's id."""
    found: dict[str, LogEntry] = {}
    for entry in entries:
        if entry.harvested is not None:
            for crop in entry.harvested.crops:
                found.setdefault(crop, entry)
    return found

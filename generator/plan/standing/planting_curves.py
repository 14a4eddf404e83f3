"""Plantings whose growth is known: which curves count for them, and what the log has of them."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import field, replace
from functools import partial
from typing import Any, TypeVar

from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.places import Planting, SownSeed
from generator.plan.jobs.ground import length_of
from generator.plan.model.place import Place
from generator.plan.model.plan import Land, Plan
from generator.plan.standing.cover_by_season import grown_in
from generator.plan.standing.standing_now import kill_of, plantings_of
from generator.reference.growth import Growth, kind_growth, on_soil, species_growth
from generator.working import Given
from generator.working import Measured as LengthMeasured

_Made = TypeVar("_Made")
FIRST_MONTH_OF_GROWTH = 5


@dataclass(frozen=True, slots=True)
class Growing:
    """A planting whose growth is known: its place, its season, what was measured, cut, laid down.

    `kind` is how the seed that counts grows, `growth` what is counted on of it on the place's soil.
    `length` is that of the place, None where it is not known; `part_ft` is the part of it, by feet
    from where its stations begin, whose heights are asked for: None is all of it.
    """

    place: Place
    planting: Planting
    seed: SownSeed
    kind: Growth
    growth: Growth
    measured: tuple[LogEntry, ...]
    cut: tuple[LogEntry, ...]
    laid: tuple[LogEntry, ...] = ()
    length: Given | LengthMeasured | None = None
    part_ft: tuple[float, float] | None = None
    _made: dict[object, Any] = field(init=False, repr=False, compare=False, default_factory=dict)

    def once(self, about: object, make: Callable[[], _Made]) -> _Made:
        """Return what `make` makes of this planting, made when it is first asked for."""
        if about not in self._made:
            self._made[about] = make()
        found: _Made = self._made[about]
        return found

    def part(self, begins_ft: float, ends_ft: float) -> Growing:
        """Return the same planting, of which a part is asked."""
        part_ft = (begins_ft, ends_ft)
        return self.once(("part", part_ft), lambda: replace(self, part_ft=part_ft))

    def year_of(self, day: datetime.date) -> int:
        """Return the season of growth that a day shows, from 1; 0 and less before the first."""
        return growing_year(day) - self.planting.season + 1


def growing(entries: tuple[LogEntry, ...], land: Land, place: Place) -> tuple[Growing, ...]:
    """Return the plantings of a place whose growth is known, by their season.

    On one that was killed for another, all of it or a part, nothing is counted any more.
    """
    found = (
        _growing(entries, land, place, planting)
        for planting in sorted(plantings_of(place), key=lambda planting: planting.season)
        if kill_of(entries, land, place, planting) is None
    )
    return tuple(grown for grown in found if grown is not None)


def _growing(
    entries: tuple[LogEntry, ...], land: Land, place: Place, planting: Planting
) -> Growing | None:
    """Return how a planting grows: of a mixture as what is sown of the least height in the end."""
    soil = place.typed.soil if place.typed is not None else None
    sown = [
        (seed, kind, on_soil(kind, unknown, soil))
        for seed in planting.seed
        if (kind := _kind(land, seed)) is not None
        if (unknown := species_growth(seed.species)) is not None
    ]
    if not sown:
        return None
    seed, kind, growth = min(sown, key=lambda part: _least(part[2]))
    return Growing(
        place,
        planting,
        seed,
        kind,
        growth,
        tuple(e for e in entries if e.measured and e.measured.planting == planting.id),
        tuple(e for e in entries if _cuts(e, planting.id)),
        tuple(e for e in entries if e.laid_down and place.id in e.laid_down.places),
        length_of(place.typed) if place.typed is not None else None,
    )


def _kind(land: Land, seed: SownSeed) -> Growth | None:
    lot = next((seed_lot for seed_lot in land.lots if seed_lot.id == seed.lot), None)
    if lot is None:
        return species_growth(seed.species)
    return kind_growth(seed.species, lot.ecotype, lot.tag.variety)


def _least(growth: Growth) -> tuple[float, float]:
    full = growth.full[-1]
    return (full["low"].value, full["typical"].value)


def _cuts(entry: LogEntry, planting_id: str) -> bool:
    """Return whether an entry mows or burns the whole of a planting, to a height that is known."""
    if entry.job is None or entry.job.planting != planting_id:
        return False
    if entry.burned is not None:
        return entry.burned.part is None and entry.job.area_ac is None
    return entry.mowed is not None and entry.mowed.cut_height_in is not None


def growing_on(plan: Plan, place: Place) -> tuple[Growing, ...]:
    """Return the plantings of a place of a plan whose growth is known, by their season."""
    return plan.once(f"growing on {place.id}", lambda plan: growing(plan.entries, plan.land, place))


def standing_growth(plan: Plan, place: Place) -> tuple[Growing, ...]:
    """Return the planting of a place whose heights a page tells: what stands in the season."""
    return plan.once(f"growth on {place.id}", partial(_standing_on, place=place))


def _standing_on(plan: Plan, place: Place) -> tuple[Growing, ...]:
    stands = plan.once("standing", _standing)
    return tuple(grown for grown in growing_on(plan, place) if grown.planting.id in stands)


def _standing(plan: Plan) -> frozenset[str]:
    return frozenset(grown.planting.id for grown in grown_in(plan, plan.season))


def growing_year(day: datetime.date) -> int:
    """Return the year of the summer whose growth a day shows."""
    return day.year if day.month >= FIRST_MONTH_OF_GROWTH else day.year - 1

"""Sits that are not over on the plan's day, with the light of their days."""

import datetime
from collections.abc import Iterable, Mapping

from generator.inventory.places import Stand
from generator.inventory.schema import Inventory
from generator.inventory.sits import Sit
from generator.plan.days.shooting import on_stand
from generator.plan.model.plan import HuntedDates, HuntedDay
from generator.plan.model.sits import Hours, SitAhead


def hours_of(sit: Sit) -> Hours:
    """Return the hours of a sit, from the gate and back to it."""
    return (
        datetime.time.fromisoformat(sit.from_time),
        datetime.time.fromisoformat(sit.until_time),
    )


def not_over(inventory: Inventory, as_of: datetime.date) -> tuple[Sit, ...]:
    """Return the sits of the plan's day and later ones, the first to begin first."""
    ahead = (sit for sit in inventory.sits if sit.sits_on >= as_of)
    return tuple(sorted(ahead, key=lambda sit: (sit.sits_on, sit.from_time, sit.id)))


def sits_ahead(
    inventory: Inventory, hunted: tuple[HuntedDates, ...], as_of: datetime.date
) -> tuple[SitAhead, ...]:
    """Return the sits that are not over, as their owner sees them."""
    stands = {stand.id: stand for stand in inventory.stands}
    return tuple(_ahead(sit, stands, hunted) for sit in not_over(inventory, as_of))


def _ahead(sit: Sit, stands: Mapping[str, Stand], hunted: Iterable[HuntedDates]) -> SitAhead:
    days = [
        day for hunt in on_stand(hunted, sit.stand) for day in hunt.days if day.day == sit.sits_on
    ]
    holds = any(
        first <= sit.sits_on <= last
        for hunt in on_stand(hunted, sit.stand)
        for first, last in hunt.spans
    )
    return SitAhead(
        id=sit.id,
        day=sit.sits_on,
        hours=hours_of(sit),
        stand=stands[sit.stand],
        who=sit.person,
        is_readers=False,
        walks=(sit.walk_in, sit.walk_out),
        is_hunted=holds,
        legal=_of_all_rules(days),
        sunset=days[0].sunset if days else None,
        note=sit.note,
        reader=sit.reader,
    )


def _of_all_rules(days: list[HuntedDay]) -> tuple[datetime.datetime, datetime.datetime] | None:
    """Return the hours that every rule of a day lets game be taken in; None where one is not known.

    Rules of two kinds of game may have no minute in common: then there are none.
    """
    starts = [day.starts for day in days if day.starts is not None]
    ends = [day.ends for day in days if day.ends is not None]
    if not days or len(starts) < len(days) or len(ends) < len(days) or max(starts) > min(ends):
        return None
    return max(starts), min(ends)

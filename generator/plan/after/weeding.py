"""Weeds seen near a count: which are many, which the law names, which ways of working spare us."""

import datetime
from collections.abc import Iterable, Iterator

from generator.inventory.counted import HEAVY_SHARES, Counted, NoxiousWeed, WeedSeen
from generator.inventory.log import LogEntry
from generator.plan.after.counting import apart
from generator.plan.model.counts import WeedFound
from generator.reference.library import ways_of_working
from generator.reference.weeds import Weed, weed_named

NEAR_DAYS = 30  # common practice: what was seen a month before a count still stands beside it
NONE_LEFT = "none"
BEFORE_IT_COMES_UP = "soil_residual"


def weeds_near(
    counted: Counted,
    kinds: frozenset[str],
    counted_on: datetime.date,
    entries: Iterable[LogEntry],
    noxious: tuple[NoxiousWeed, ...],
    *,
    established: bool,
) -> tuple[WeedFound, ...]:
    """Return each weed of a planting as last seen, from a month before the count on.

    `established` says the grass is past its first summer. Before that no way spares it, and what
    is seen more than a month later belongs to another count.
    """
    last: dict[str, WeedFound] = {}
    for entry in entries:
        days = (entry.done_on - counted_on).days
        if days < -NEAR_DAYS or (days > NEAR_DAYS and not established):
            continue
        for seen in _in_stretch(counted, entry):
            weed = weed_named(seen.weed)
            ways = weed.spares(kinds) if weed is not None and established else ()
            named = _declared(seen, weed, noxious)
            # by what is meant, so that a second name for a weed does not count it twice
            last[weed.id if weed is not None else seen.weed.strip().casefold()] = WeedFound(
                seen, entry.done_on, weed, ways, named
            )
    # only here: a weed seen to be gone has to take the place of what was seen before
    return tuple(found for found in last.values() if found.seen.share != NONE_LEFT)


def _in_stretch(counted: Counted, entry: LogEntry) -> Iterator[WeedSeen]:
    """Yield what was seen in the planting, less what was seen at a count of another stretch."""
    beside = entry.counted
    # stations of a count are those of the weeds beside it
    if beside is not None and beside.planting == counted.planting and apart(beside, counted):
        return
    of_entry = beside.planting if beside is not None else None
    if of_entry is None and entry.job is not None:
        of_entry = entry.job.planting
    yield from (
        seen for seen in entry.weeds_seen if (seen.planting or of_entry) == counted.planting
    )


def _declared(
    seen: WeedSeen, weed: Weed | None, noxious: tuple[NoxiousWeed, ...]
) -> NoxiousWeed | None:
    wanted = seen.weed.strip().casefold()
    for listed in noxious:
        # law and owner may call one weed by two names
        if listed.weed.strip().casefold() == wanted or (weed and weed_named(listed.weed) == weed):
            return listed
    return None


def heavy(found: tuple[WeedFound, ...]) -> tuple[WeedFound, ...]:
    """Return the weeds that are as many as the grass, or more."""
    return tuple(weed for weed in found if weed.seen.share in HEAVY_SHARES)


def ways_words(found: Iterable[WeedFound]) -> str:
    """Return which ways of working spare the planting, weed by weed, and mowing first."""
    return " ".join(_ways_of(weed) for weed in found)


def _ways_of(found: WeedFound) -> str:
    if found.weed is None:
        return f"{found.name} is not in our list: ask an extension office what holds it down."
    # told apart: it kills what has yet to come up, and nothing that stands there now
    now = [ways_of_working()[way].name for way in found.ways if way != BEFORE_IT_COMES_UP]
    later = BEFORE_IT_COMES_UP in found.ways
    told = [f"Against {found.in_text}: mow above the grass"]
    if now:
        told.append(f"; {' or '.join(now)} spares this planting where a label card clears it")
    if later:
        told.append("; a residual works before it comes up next spring, where a card clears it")
    if not now and not later:
        told.append("; no way of working in our list spares this planting now")
    return f"{''.join(told)}. Its weak time: {_small(found.weed.weak)}"


def _small(words: str) -> str:
    return words[0].lower() + words[1:]

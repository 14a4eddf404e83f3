"""What to do with a planting of native grass by its counts: keep, weed, overseed, start over."""

import datetime
from collections.abc import Iterable, Iterator
from dataclasses import replace

from generator.inventory.counted import Counted
from generator.inventory.log import LogEntry
from generator.inventory.places import Planting
from generator.inventory.schema import Inventory
from generator.plan.after.counting import (
    WHOLE_PLACE,
    count_numbers,
    covers,
    ground_of,
    placements_wanted,
    seed_for,
    stretch_figures,
    stretch_words,
)
from generator.plan.after.weeding import heavy, ways_words, weeds_near
from generator.plan.findings.about_after import AfterCaution, AfterNote
from generator.plan.findings.order import finding
from generator.plan.findings.words import Reason
from generator.plan.model.counts import CountSaid, Outcome, PlaceWaits, PlantingCounts
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, about_place
from generator.plan.model.place import Place
from generator.plan.standing.stretches import is_enough, stations
from generator.reference.library import species, values
from generator.working import Figure, Quantity

COUNTED_KIND = "native_grass"
# Common practice: the first fall is too early, mid-June of the second year decides.
LOOK_ON = (9, 1)
LOOK_FOR_DAYS = 60
DECIDE_ON = (6, 15)
ASKED_FOR_YEARS = 3  # growing seasons in which a missing count is told


def planting_counts(
    inventory: Inventory, places: Iterable[Place], entries: tuple[LogEntry, ...]
) -> tuple[PlantingCounts, ...]:
    """Return every planting of native grass with what its counts say, place by place."""
    plans = inventory.plans()
    return tuple(
        _planting_counts(inventory, place, planting, entries)
        for place in places
        if place.typed is not None
        for planting in place.typed.plantings
        if planting.seed and plans[planting.steps].kind == COUNTED_KIND
    )


def _planting_counts(
    inventory: Inventory, place: Place, planting: Planting, entries: tuple[LogEntry, ...]
) -> PlantingCounts:
    assert place.typed is not None
    decide_on = datetime.date(planting.season + 1, *DECIDE_ON)
    counts = tuple(
        _said(inventory, place, planting, entry, entry.counted, decide_on, entries)
        for entry in _last_of_each_stretch(planting.id, entries)
        if entry.counted is not None
    )
    return PlantingCounts(
        place.id,
        planting,
        _all_thin(place, counts),
        datetime.date(planting.season, *LOOK_ON),
        decide_on,
        any(other.season > planting.season for other in place.typed.plantings),
    )


def _last_of_each_stretch(planting_id: str, entries: tuple[LogEntry, ...]) -> tuple[LogEntry, ...]:
    """Return the counts that no later count covers, in order of their stations."""
    kept: list[LogEntry] = []
    # from the last count back: an earlier one that reaches farther still speaks for the rest
    for entry in reversed(entries):
        counted = entry.counted
        if counted is None or counted.planting != planting_id:
            continue
        if not any(covers(later.counted, counted) for later in kept if later.counted is not None):
            kept.append(entry)
    return tuple(
        sorted(kept, key=lambda entry: (stations(entry.counted)[0], entry.done_on, entry.id))
    )


def _said(
    inventory: Inventory,
    place: Place,
    planting: Planting,
    entry: LogEntry,
    counted: Counted,
    decide_on: datetime.date,
    entries: tuple[LogEntry, ...],
) -> CountSaid:
    base = f"{place.id}/{planting.season}/count-{entry.id}"
    numbers = count_numbers(base, counted)
    area = ground_of(base, counted, place)
    if area is not None:
        # without a taped width a stretch keeps its outcome and has no seed
        numbers |= {"area_ac": area}
        if counted.placements_count is not None:
            numbers |= {"placements_count": placements_wanted(base, area)}
    kinds = frozenset({COUNTED_KIND, *(species()[seed.species].kind for seed in planting.seed)})
    weeds = weeds_near(
        counted,
        kinds,
        entry.done_on,
        entries,
        inventory.property.noxious,
        established=entry.done_on >= decide_on,
    )
    outcome = _outcome(numbers, counted, bool(heavy(weeds)), entry.done_on >= decide_on)
    needed = area is not None and outcome in ("overseed", "start_over")
    return CountSaid(
        entry,
        counted,
        entry.done_on.year - planting.season + 1,
        outcome,
        numbers,
        area,
        seed_for(base, planting, area, inventory.lots) if needed and area is not None else (),
        weeds,
    )


def _outcome(
    numbers: dict[str, Quantity], counted: Counted, weedy: bool, may_decide: bool
) -> Outcome:
    # first of all: a first fall condemns no planting, however few have come up
    if not may_decide:
        return "too_early"
    # before weeds, since holding those down brings no plants to thin ground
    if not is_enough(numbers):
        return "start_over" if stretch_words(counted) == WHOLE_PLACE else "overseed"
    return "weeds" if weedy else "keep"


def _all_thin(place: Place, counts: tuple[CountSaid, ...]) -> tuple[CountSaid, ...]:
    """Return the counts; thin stretches that make up the whole place are a place to start over."""
    assert place.typed is not None
    length = place.typed.length_ft
    thin = [count for count in counts if count.outcome == "overseed"]
    reached = 0.0
    for stretch in thin:
        begins, ends = stations(stretch.counted)
        # by their stations, so the first gap ends for good what is reached
        if begins <= reached:
            reached = max(reached, ends)
    # where no length is typed nobody knows whether the stretches are all of the place
    if length is None or reached < length.value:
        return counts
    return tuple(
        replace(count, outcome="start_over") if count in thin else count for count in counts
    )


def decision_findings(
    all_counts: Iterable[PlantingCounts], waits: Iterable[PlaceWaits], as_of: datetime.date
) -> Iterator[Finding]:
    """Yield what is to be told of counts, of weeds beside them, and of counts that are missing."""
    by_place = {wait.place_id: wait for wait in waits}
    for counts in all_counts:
        # what is planted after it has the say over the ground
        if counts.superseded:
            continue
        yield from _missing(counts, as_of)
        # what a law asks is told once for a planting, not for every stretch
        noxious: set[str] = set()
        for count in counts.counts:
            # a later summer has answered what the first fall left open
            if count.outcome == "too_early" and counts.decided():
                continue
            yield from _told(counts, count, by_place[counts.place_id])
            yield from _placements(counts, count)
            for found in count.weeds:
                if found.noxious is not None and found.name not in noxious:
                    noxious.add(found.name)
                    yield finding(
                        AfterCaution.NOXIOUS_SEEN,
                        about_place(counts.place_id),
                        found.seen.where,
                        weed=found.name,
                        planting=counts.planting.id,
                        day=day_words(found.seen_on),
                        looked_up=day_words(found.noxious.looked_up_on),
                        source=found.noxious.source,
                    )


def _missing(counts: PlantingCounts, as_of: datetime.date) -> Iterator[Finding]:
    planting = counts.planting
    days = [count.entry.done_on for count in counts.counts]
    first_year = 0 <= (as_of - counts.look_on).days <= LOOK_FOR_DAYS
    told_until = datetime.date(planting.season + ASKED_FOR_YEARS - 1, 12, 31)
    reason = None
    if first_year and not days:
        # it decides nothing, so once its weeks are over nobody is asked for it
        reason = AfterNote.COUNT_IN_AUTUMN
    # a count of the first fall does not stand in for this one
    elif counts.decide_on <= as_of <= told_until and not any(
        day >= counts.decide_on for day in days
    ):
        reason = AfterNote.COUNT_NOW
    if reason is not None:
        decide_on = day_words(counts.decide_on)
        yield finding(
            reason,
            about_place(counts.place_id),
            planting.where,
            planting=planting.id,
            decide_on=decide_on,
        )


def _told(counts: PlantingCounts, count: CountSaid, waits: PlaceWaits) -> Iterator[Finding]:
    reasons: dict[Outcome, Reason] = {
        "too_early": AfterNote.TOO_EARLY,
        "weeds": AfterCaution.WEEDS_HEAVY,
        "overseed": AfterCaution.STRETCH_THIN,
        "start_over": AfterCaution.START_OVER,
    }
    if count.outcome == "keep":
        return
    weeds = heavy(count.weeds)
    yield finding(
        reasons[count.outcome],
        about_place(counts.place_id),
        count.counted.where,
        _figures(count, waits),
        planting=counts.planting.id,
        stretch=stretch_words(count.counted),
        day=day_words(count.entry.done_on),
        decide_on=day_words(counts.decide_on),
        weeds=" and ".join(weed.in_text for weed in weeds),
        ways=ways_words(weeds),
        residue=residue_words(waits),
        to_answer="".join(f" {ask.cure}" for ask in waits.logged_for(COUNTED_KIND).asks),
    )


def residue_words(waits: PlaceWaits) -> str:
    """Return from when native grass may be sown again by what the log says was sprayed."""
    answer = waits.logged_for(COUNTED_KIND)
    if answer.unknown:
        asks = " ".join(ask.asks for ask in answer.asks)
        return f"From when it may be sown is not known yet: {asks}"
    # an empty log is no clean ground: somebody may have sprayed and not written it down
    if not waits.any_logged():
        return (
            "From when it may be sown is not known yet: write each spraying down in the log, with "
            "what was used on which job."
        )
    if answer.day is None or answer.by is None or answer.by.last is None or answer.wait is None:
        return "By the cards of what is logged sprayed here, no wait stands before the sowing."
    return (
        f"By the card of {answer.by.product_name}, sprayed {day_words(answer.by.last)}, native "
        f"grass may be sown from {day_words(answer.day)} on."
    )


def _figures(count: CountSaid, waits: PlaceWaits) -> tuple[tuple[str, Figure], ...]:
    told: list[tuple[str, Figure]] = list(stretch_figures(count.counted))
    if "frequency_fraction" in count.numbers:
        told.append(("Cells with a plant", count.numbers["frequency_fraction"]))
        told.append(("Enough for cover", values()["cells_enough_for_cover_pct"]))
    else:
        told.append(("Enough", values()["enough_plants_per_sq_m"]))
    told.append(("Plants", count.numbers["plants_per_sq_m"]))
    asked = waits.logged_for(COUNTED_KIND).wait
    if count.outcome == "start_over" and asked is not None:
        told.append(("The label asks for", asked))
    return tuple(told)


def _placements(counts: PlantingCounts, count: CountSaid) -> Iterator[Finding]:
    placed, wanted = count.counted.placements_count, count.numbers.get("placements_count")
    # too few are a note and no fault: the count still says more than none
    if placed is None or wanted is None or placed.value >= wanted.value:
        return
    yield finding(
        AfterNote.FEW_PLACEMENTS,
        about_place(counts.place_id),
        count.counted.where,
        (*stretch_figures(count.counted), ("Placements", placed), ("Asked for", wanted)),
        stretch=stretch_words(count.counted),
        day=day_words(count.entry.done_on),
    )

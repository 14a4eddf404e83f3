"""Heights that nothing of its kind reaches: plants and weeds as logged, what a screen must hide."""

from collections.abc import Iterable, Iterator

from generator.inventory.log import LogEntry
from generator.inventory.places import Planting
from generator.inventory.rule import typed_at
from generator.inventory.schema import Inventory
from generator.plan.findings.about_usual import UsualCaution
from generator.plan.findings.order import about_record
from generator.plan.model.finding import Finding, Subject
from generator.plan.usual.out_of_usual import out_of_usual
from generator.reference.library import species
from generator.reference.usual import Usual, usual
from generator.working import Given, Reference

_WOODY = "woody_row"


def height_findings(inventory: Inventory, entries: Iterable[LogEntry]) -> Iterator[Finding]:
    """Yield a caution for each height out of the usual: of an entry that counts, or typed."""
    plantings = {
        planting.id: planting for place in inventory.places() for planting in place.plantings
    }
    for entry in entries:
        subject = about_record(entry)
        if entry.measured is not None:
            of_kind = _tallest(plantings[entry.measured.planting])
            for reading in entry.measured.readings:
                yield from _asked(subject, "The height measured", reading.height_in, of_kind)
        for weed in _weeds(entry):
            yield from _asked(subject, "The height of weeds", weed, usual("weed_height", "in"))
        if entry.mowed is not None:
            cut = entry.mowed.cut_height_in
            yield from _asked(subject, "The height of the cut", cut, usual("cut_height", "in"))
    for screen in inventory.screens:
        needed, hides = screen.height_needed_ft, usual("height_needed", "ft")
        yield from _asked(about_record(screen), "The height that hides", needed, hides)
    for stand in inventory.stands:
        seat = stand.seat_height_ft
        yield from _asked(
            about_record(stand), "The height of the seat", seat, usual("seat_height", "ft")
        )


def _weeds(entry: LogEntry) -> Iterator[Given | None]:
    yield from (weed.height_in for weed in entry.weeds_seen)
    if entry.mowed is not None:
        yield entry.mowed.weeds_height_in
    if entry.sprayed is not None:
        yield entry.sprayed.weed_height_in


def _tallest(planting: Planting) -> Usual:
    """Return up to where the tallest kind of a planting reaches."""
    grown = (*planting.species, *(seed.species for seed in planting.seed))
    kinds = {species()[name].kind for name in grown}
    kinds |= {_WOODY} if planting.woody else set()
    ends = [usual(f"{kind}_height", "in").high for kind in sorted(kinds)]
    known = [end for end in ends if isinstance(end, Reference)]
    # any of a mixture may be what was measured, so the tallest bounds it
    return Usual(None, max(known, key=lambda end: end.value, default=None))


def _asked(
    subject: Subject, what: str, typed: Given | None, range_of_it: Usual
) -> Iterator[Finding]:
    if typed is None:
        return
    found = out_of_usual(
        UsualCaution.HEIGHT_OUT_OF_USUAL,
        subject,
        typed_at(typed),
        (what, typed),
        range_of_it,
        what=what,
        key=f"{typed.name.removesuffix(f'_{typed.unit}')}_{typed.typed_unit}",
    )
    yield from [found] if found is not None else []

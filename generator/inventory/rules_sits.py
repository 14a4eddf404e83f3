"""Rules on sits: hours that can be read, walks that lead there, what a partner is handed."""

from collections.abc import Iterator

from generator.inventory.problems import listed, shown_value
from generator.inventory.rule import Broken, Rule
from generator.inventory.rules_records import TIME
from generator.inventory.schema import PARTNER, Inventory
from generator.inventory.sits import ArcOfFire, Sit

_TIMES = ("from_time", "until_time")
_WALKS = ("walk_in", "walk_out")


def _hours(inventory: Inventory) -> Iterator[Broken]:
    for sit in inventory.sits:
        wrong = [name for name in _TIMES if not TIME.fullmatch(getattr(sit, name))]
        for name in wrong:
            what = f"{shown_value(getattr(sit, name))} for {name} is no time of day"
            accepted = "hours and minutes of the day, as in 07:40 or 16:05"
            yield Broken(sit.where_of(name), what, accepted)
        # in two digits each, so as text they stand in the order of the day
        if not wrong and sit.until_time <= sit.from_time:
            what = f"until_time {sit.until_time} is not after from_time {sit.from_time}"
            accepted = "a sit of one day, that ends after it begins"
            yield Broken(sit.where_of("until_time"), what, accepted)


def _walks_to_it(inventory: Inventory) -> Iterator[Broken]:
    serves = {route.id: route.serves for route in inventory.routes}
    for sit in inventory.sits:
        leading = [route_id for route_id, stands in serves.items() if sit.stand in stands]
        for name in _WALKS:
            walk = getattr(sit, name)
            if walk is not None and walk not in leading:
                what = f"{name} {shown_value(walk)} does not lead to {shown_value(sit.stand)}"
                accepted = f"one that does: {listed(leading)}" if leading else "no walk leads there"
                yield Broken(
                    sit.where_of(name), what, f"{accepted}; or {sit.stand} under serves: of it"
                )


def _of_a_partner(inventory: Inventory) -> Iterator[Broken]:
    readers = {reader.id: reader for reader in inventory.readers}
    for sit in inventory.sits:
        if sit.reader is None:
            continue
        reader = readers[sit.reader]
        if reader.kind != PARTNER:
            what = f"{shown_value(reader.id)} is a {reader.kind}, who is handed no stand"
            yield Broken(sit.where_of("reader"), what, f"a reader of kind: {PARTNER}, or person:")
            continue
        handed = {*reader.stands, *reader.routes}
        for name in ("stand", *_WALKS):
            thing = getattr(sit, name)
            if thing is not None and thing not in handed:
                what = f"{shown_value(reader.id)} sits there and is not handed {shown_value(thing)}"
                accepted = "what readers.yaml hands to that partner; or person: in place of reader:"
                yield Broken(sit.where_of(name), what, accepted)


def _arcs(inventory: Inventory) -> Iterator[Broken]:
    for arc in _every_arc(inventory):
        if arc.from_deg.value == arc.to_deg.value:
            what = f"from_deg and to_deg are both {arc.from_deg.typed:g}"
            yield Broken(arc.where_of("to_deg"), what, "two sides; 0 and 360 for all around")


def _every_arc(inventory: Inventory) -> Iterator[ArcOfFire]:
    kept: list[ArcOfFire | None] = [stand.arc_of_fire for stand in inventory.stands]
    sits: tuple[Sit, ...] = inventory.sits
    kept += [sit.arc_of_fire for sit in sits]
    yield from (arc for arc in kept if arc is not None)


def _sits_over(inventory: Inventory) -> Iterator[Broken]:
    for sat in (entry.sat for entry in inventory.entries if entry.sat is not None):
        times = {name: time for name in ("began_at", "left_at") if (time := getattr(sat, name))}
        wrong = [name for name, time in times.items() if not TIME.fullmatch(time)]
        for name in wrong:
            what = f"{shown_value(times[name])} for {name} is no time of day"
            accepted = "hours and minutes of the day, as in 07:40 or 16:05"
            yield Broken(sat.where_of(name), what, accepted)
        began, left = sat.began_at, sat.left_at
        if began and left and not wrong and left < began:
            what = f"left_at {left} comes before began_at {began}"
            yield Broken(sat.where_of("left_at"), what, "a sit of one day, begun before it ended")
        seen, winded = sat.deer_count, sat.winded_count
        if seen is not None and winded is not None and winded.value > seen.value:
            what = f"{winded.typed:g} deer winded somebody, of {seen.typed:g} seen"
            yield Broken(sat.where_of("winded_count"), what, "at most as many as deer_count")


SIT_RULES = (
    Rule("F485", "A sit has hours of one day.", _hours, alone=True),
    Rule("F486", "The walks of a sit lead to its stand.", _walks_to_it),
    Rule("F487", "A partner sits where they are handed the stand and the walks.", _of_a_partner),
    Rule("F488", "An arc of fire has two sides.", _arcs, alone=True),
    Rule(
        "F489",
        "A sit that is over has hours of one day, and deer that were seen.",
        _sits_over,
        alone=True,
    ),
)

"""The whole property folder: files to records, every fault in one run."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from functools import cache, partial
from pathlib import Path
from typing import Any

from generator.dataclass import dataclass
from generator.inventory import problems as say
from generator.inventory.crops import CropBeside
from generator.inventory.dates import DateRange, ShootingHours
from generator.inventory.drill import Drill
from generator.inventory.elevation_read import with_elevation
from generator.inventory.equipment import Measure, Sprayer, Spreader
from generator.inventory.fields import Where, rules_of
from generator.inventory.files import content_of
from generator.inventory.fitting import fitting
from generator.inventory.folder import ENDING, PROPERTY_FILE, kind_meant, lies_in
from generator.inventory.ground import SoilTest, WaterHole
from generator.inventory.known import Known
from generator.inventory.label import ALL_OTHER_KINDS, NO_KIND
from generator.inventory.land import LandThing
from generator.inventory.law import LookedUp
from generator.inventory.log import LogEntry
from generator.inventory.machine import Machine
from generator.inventory.money import CostShare, Hire
from generator.inventory.papers import Contract, OneCall, Permit
from generator.inventory.people import Applicator, Contractor, Helper
from generator.inventory.places import Planting, Route, Screen, Stand, Strip
from generator.inventory.plain_values import US
from generator.inventory.problems import Problem, Sentence
from generator.inventory.reading import A_LIST, is_entry, keys_inside, read_record
from generator.inventory.reading_found import FAULT, Mention, NamedThing, Reading
from generator.inventory.rules import broken_beside
from generator.inventory.schema import FORMAT, Inventory, Property, Reader
from generator.inventory.shapes_read import with_shapes
from generator.inventory.sits import Sit
from generator.inventory.sound import Entry, is_known, sound_entries
from generator.inventory.spreadable import Fertilizer, Lime
from generator.inventory.steps import OwnPlan
from generator.inventory.stock import Adjuvant, Product, SeedLot
from generator.inventory.weather import Emergence, FreezeDates, Normals, Station, WindStation
from generator.inventory.weather_read import with_weather
from generator.inventory.woody import Guard, Plant
from generator.inventory.yaml_positions import Document, read_document
from generator.inventory.yaml_text import MOST_BYTES, too_long
from generator.inventory.zone_points import places_astray, points_astray
from generator.reference.land_kinds import land_kinds
from generator.reference.library import law_subjects, marker_names, planting_kinds, species
from generator.reference.operations import operations
from generator.reference.steps import step_plans

# file name without .yaml -> {key at the top of the file: kind of its entries}
FILES: dict[str, dict[str, type]] = {
    "screens": {"screens": Screen},
    "strips": {"strips": Strip},
    "stands": {"stands": Stand},
    "routes": {"routes": Route},
    "land": {"land": LandThing},
    "sits": {"sits": Sit},
    "seed": {"lots": SeedLot, "plants": Plant, "guards": Guard},
    "ground": {"soil_tests": SoilTest, "water_holes": WaterHole},
    "products": {
        "products": Product,
        "adjuvants": Adjuvant,
        "fertilizers": Fertilizer,
        "limes": Lime,
    },
    "equipment": {
        "sprayers": Sprayer,
        "spreaders": Spreader,
        "drills": Drill,
        "measures": Measure,
        "machines": Machine,
    },
    "readers": {"readers": Reader},
    "money": {"hires": Hire, "cost_share": CostShare},
    "steps": {"step_plans": OwnPlan},
    "log": {"entries": LogEntry},
    "dates": {"dates": DateRange, "shooting_hours": ShootingHours, "looked_up": LookedUp},
    "weather": {
        "stations": Station,
        "wind_stations": WindStation,
        "freeze_dates": FreezeDates,
        "normals": Normals,
        "emergence": Emergence,
    },
    "people": {"applicators": Applicator, "helpers": Helper, "contractors": Contractor},
    "papers": {"permits": Permit, "contracts": Contract, "one_calls": OneCall},
}
# More mentions of one word that names nothing have one cause: the name it should have.
MOST_NAMED_APART = 3
KIND_WORDS: dict[type, str] = {
    Screen: "place",
    Strip: "place",
    Stand: "stand",
    Route: "route",
    LandThing: "thing of the land",
    Sit: "sit",
    SeedLot: "lot",
    Plant: "plant",
    Guard: "guard",
    Product: "product",
    Adjuvant: "adjuvant",
    Sprayer: "sprayer",
    Spreader: "spreader",
    Drill: "drill",
    Measure: "measure",
    Planting: "planting",
    CropBeside: "crop",
    Reader: "reader",
    Machine: "machine",
    Hire: "hire",
    CostShare: "cost-share",
    OwnPlan: "step_plan",
    LogEntry: "entry",
    SoilTest: "soil_test",
    WaterHole: "water_hole",
    Fertilizer: "fertilizer",
    Lime: "lime",
    DateRange: "dates",
    ShootingHours: "shooting_hours",
    LookedUp: "looked_up",
    Station: "station",
    WindStation: "wind station",
    Applicator: "applicator",
    Helper: "helper",
    Contractor: "contractor",
    Permit: "permit",
    Contract: "contract",
    OneCall: "request",
}


@dataclass(frozen=True, slots=True)
class Loaded:
    """What a property folder gave: records, or none and the faults."""

    inventory: Inventory | None
    problems: tuple[Problem, ...]


def load_inventory(
    folder: Path, beside: Mapping[str, bytes] | None = None, known: Known | None = None
) -> Loaded:
    """Return the checked records of a property folder, or every fault found in it.

    `beside` are files of lists and shapes, by their names, read as if they stood in the folder. Of
    a file that holds what it held when it was `known`, nothing is parsed again. Reads only; nothing
    in the folder is changed. Raises OSError where the folder cannot be opened.
    """
    lying, known = lies_in(folder, FILES), known or Known()
    # shapes are read once it is known who names them
    new = {name: text for name, text in (beside or {}).items() if name.endswith(ENDING)}
    names = [*lying.names, *(name for name in sorted(new) if name not in lying.names)]
    problems, readings = list(lying.problems), list[Reading]()
    # what names a thing that may stand in a file nobody could read is no fault
    unread = {kind for problem in problems for kind in _kinds_in(problem.file)}
    for name in names:
        document, faults = _document(folder, name, new, known)
        problems += faults
        if document is not None:
            readings.append(Reading(document))
        if faults:
            unread |= set(_kinds_in(name))
    # alone: to this version any line of a newer format may look wrong
    if (newer := _newer_format(readings)) is not None:
        return Loaded(None, (newer,))
    # before any day is read: it stands in one file and holds for all of them
    us_dates = _us_dates(readings)
    for reading in readings:
        reading.us_dates = us_dates
    entries = _read_all(readings)
    problems += (problem for reading in readings for problem in reading.problems)
    unread |= {kind for reading in readings for kind in reading.unread}
    twice = _identity_faults(readings)
    problems += twice.values()
    unread |= {named.kind for named in twice}  # one of the two may be what is looked for in vain
    problems += _mention_faults(readings, unread)
    inventory, astray = _as_far_as_sound(readings, entries, unread), set[Where]()
    # beside faults elsewhere too: all that is wrong comes in one run
    read = _as_far_as_read(readings, entries)
    shapes = with_shapes(folder, read, beside or {})
    problems += shapes.problems
    if inventory is not None:
        inventory, unread_weather = with_weather(folder, shapes.laid_into(inventory), known)
        inventory, unread_heights = with_elevation(folder, inventory)
        points = [point for reading in readings for point in reading.points] + [*shapes.points]
        zone = inventory.property.time_zone
        problems += [*points_astray(points, zone), *unread_weather, *unread_heights]
        astray = places_astray(points, zone)
    problems += broken_beside(inventory, shapes.laid_into(read), astray)
    if problems or inventory is None:
        return Loaded(None, tuple(sorted(set(problems))))
    return Loaded(replace(inventory, passed_over=lying.passed_over), ())


def _document(
    folder: Path, name: str, new: Mapping[str, bytes], known: Known
) -> tuple[Document | None, tuple[Problem, ...]]:
    content = new[name] if name in new else content_of(folder / name, MOST_BYTES)
    if isinstance(content, bytes):
        read = partial(read_document, content, name, _keys_of_entries(name))
        return known.made_of(content, name, read)
    told = too_long(content.words) if content.what is None else say.closed(content.words)
    return None, (told.at(name, 1, 1),)


@cache
def _keys_of_entries(name: str) -> frozenset[str]:
    """Return the keys that entries of a file use, and the file itself at its top does not."""
    if name == PROPERTY_FILE:
        return keys_inside(Property) - rules_of(Property).keys()
    kinds = _kinds_in(name)
    every = frozenset[str]().union(*(keys_inside(kind) for kind in kinds))
    # a key that both use does not say by itself that it is out of line
    return every - FILES.get(kind_meant(name), {}).keys()


def _kinds_in(name: str) -> Iterable[type]:
    return FILES.get(kind_meant(name), {}).values()


def _newer_format(readings: list[Reading]) -> Problem | None:
    for reading in readings:
        data = reading.document.data
        if reading.document.file == PROPERTY_FILE and isinstance(data, dict):
            found = data.get("format")
            if isinstance(found, int) and not isinstance(found, bool) and found > FORMAT:
                mark = reading.document.mark(("format",))
                return say.newer_format(found, FORMAT).at(PROPERTY_FILE, mark.line, mark.column)
    return None


def _us_dates(readings: list[Reading]) -> bool:
    """Return whether the folder says that its days are month, day, year, or may have said so."""
    properties = [
        reading.document for reading in readings if reading.document.file == PROPERTY_FILE
    ]
    if not properties or properties[0].doubtful:
        # else one line that cannot be read would make a fault of every day in the folder
        return True
    data = properties[0].data
    return isinstance(data, dict) and str(data.get("dates")).casefold() == US


def _read_all(readings: list[Reading]) -> list[Entry]:
    entries: list[Entry] = []
    for reading in readings:
        if reading.document.file == PROPERTY_FILE:
            read_record(Property, reading.document.data, (), reading)
        else:
            entries += _read_lists(reading)
    return entries


def _as_far_as_sound(
    readings: list[Reading], entries: list[Entry], unread: set[type]
) -> Inventory | None:
    """Return what could be read and rests on nothing that could not; None without a property."""
    own = _property(readings)
    if own is None:
        return None
    hidden = {KIND_WORDS[kind] for kind in unread if kind in KIND_WORDS}
    sound = sound_entries(entries, _shipped_words(), KIND_WORDS, hidden)
    return _listed(own, sound)


def _as_far_as_read(readings: list[Reading], entries: list[Entry]) -> Inventory:
    """Return every record that could be read, whatever it leads to."""
    # no rule that is asked of one record looks at what is said of the property as a whole
    unsaid = Property(where=Where(PROPERTY_FILE, 1, 1), format=FORMAT, name="", season=0)
    whole = [entry for entry in entries if entry.record is not FAULT]
    return _listed(_property(readings) or unsaid, whole)


def _property(readings: list[Reading]) -> Property | None:
    wholes = [reading.whole for reading in readings if reading.document.file == PROPERTY_FILE]
    return wholes[0] if wholes else None


def _listed(own: Property, entries: list[Entry]) -> Inventory:
    lists: dict[str, list[object]] = {key: [] for keys in FILES.values() for key in keys}
    for entry in entries:
        lists[entry.key].append(entry.record)
    values: dict[str, Any] = {key: tuple(records) for key, records in lists.items()}
    return Inventory(property=own, **values)


def _read_lists(reading: Reading) -> Iterator[Entry]:
    document: Document = reading.document
    if document.data is None:
        return
    kinds = FILES[kind_meant(document.file)]
    if not isinstance(document.data, dict) or not set(document.data) <= set(kinds):
        # below a key that is misspelled entries of any kind of this file may stand
        reading.unread |= set(kinds.values())
    if not isinstance(document.data, dict):
        reading.fault(say.wrong_type(document.data, f"{next(iter(kinds))}: and a list below"), ())
        return
    for key, entries in document.data.items():
        if key not in kinds:
            reading.key_fault(say.unknown_key(key, tuple(kinds)), (key,))
        elif entries is not None and not isinstance(entries, list):
            reading.unread.add(kinds[key])
            reading.fault(say.wrong_type(entries, A_LIST), (key,))
            # read for its id and the faults in it; it counts as no entry until it has its dash
            if is_entry(kinds[key], entries):
                read_record(kinds[key], entries, (key,), reading)
        else:
            for n, entry in enumerate(entries or ()):
                # what is found from here on is this entry's, and falls with it
                ids, mentions = len(reading.named), len(reading.mentions)
                found = read_record(kinds[key], entry, (key, n), reading)
                yield Entry(
                    key, found, tuple(reading.named[ids:]), tuple(reading.mentions[mentions:])
                )


def _identity_faults(readings: list[Reading]) -> dict[NamedThing, Problem]:
    """Return the fault of each thing that goes by the id of another."""
    # of all kinds together: a mention may be of several, and goes by the id alone
    first: dict[str, NamedThing] = {}
    problems: dict[NamedThing, Problem] = {}
    for reading in readings:
        for named in reading.named:
            earlier = first.setdefault(named.identity, named)
            if earlier != named:
                place = f"{earlier.where.file}:{earlier.where.line}"
                problems[named] = _at(say.duplicate_id(named.identity, place), named.where)
    return problems


def _at(sentence: Sentence, where: Where) -> Problem:
    return sentence.at(where.file, where.line, where.column)


def _mention_faults(readings: list[Reading], unread: set[type]) -> list[Problem]:
    """Return a fault for every mention of nothing; what may stand in unread lines is let pass."""
    known: dict[str, set[str]] = {word: set() for word in KIND_WORDS.values()} | _shipped_words()
    for reading in readings:
        known["step"] |= reading.words
        for named in reading.named:
            known[KIND_WORDS[named.kind]].add(named.identity)
    # plantings stand inside places and are unread with them
    if unread & {Screen, Strip}:
        unread = unread | {Planting}
    passed = {KIND_WORDS[kind] for kind in unread if kind in KIND_WORDS}
    lost: dict[tuple[str, tuple[str, ...]], list[Mention]] = {}
    for reading in readings:
        for mention in reading.mentions:
            if not passed & set(mention.refers_to) and not is_known(mention, known):
                lost.setdefault((mention.word, mention.refers_to), []).append(mention)
    return [
        _mention_fault(mention, known, readings, mentions)
        for mentions in lost.values()
        for mention in (mentions if len(mentions) <= MOST_NAMED_APART else mentions[:1])
    ]


def _shipped_words() -> dict[str, set[str]]:
    return {
        "species": set(species()),
        "planting_kind": set(planting_kinds()),
        "operation": set(operations()),
        "season_sign": set(marker_names()),
        "law_subject": set(law_subjects()),
        "land_kind": set(land_kinds()),
        "step_plan": set(step_plans()),
        "step": {step.id for plan in step_plans().values() for step in plan.steps},
        "any": {"any"},
        "all": {"all"},
        "owner": {"owner"},
        NO_KIND: {NO_KIND},
        ALL_OTHER_KINDS: {ALL_OTHER_KINDS},
    }


def _mention_fault(
    mention: Mention, known: dict[str, set[str]], readings: list[Reading], every_one: list[Mention]
) -> Problem:
    """Return the fault of a mention; of many of one word, which have one cause, for all of them."""
    every = sorted({word for kind in mention.refers_to for word in known[kind]})
    words = fitting(mention, every, readings)
    kind = mention.refers_to[0].replace("_", " ")
    sentence = say.unknown_reference(mention.word, kind, words)
    if len(every_one) > MOST_NAMED_APART:
        counted = Counter(each.where.file for each in every_one)
        files = say.listed((f"{number} in {file}" for file, number in counted.items()), "and")
        what = f"{sentence.what}, and {len(every_one)} lines name it: {files}"
        sentence = replace(sentence, what=what)
    return _at(sentence, mention.where)

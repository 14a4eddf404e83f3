"""Reference data: species, kinds of planting, signs, sources, values and words, as records."""

from functools import cache

from generator.dataclass import dataclass
from generator.reference.read import read_data, value_of
from generator.working import Reference


@dataclass(frozen=True, slots=True)
class Source:
    """Where a value or a formula comes from; `trust` says how far."""

    key: str
    title: str
    publisher: str
    year: str
    address: str
    trust: str
    note: str


@dataclass(frozen=True, slots=True)
class Species:
    """A species a planting may name."""

    id: str
    name: str
    kind: str
    dormancy: bool
    legume: bool
    inoculant_group: str
    inoculant_source: str


@dataclass(frozen=True, slots=True)
class WayOfWorking:
    """How an active works, in words, and the kinds of planting it harms.

    `harms` are harmed by a rate, `trace_standing` and `trace_seed` by a trace left in a tank, by
    `source`.
    """

    id: str
    name: str
    harms: frozenset[str]
    trace_standing: frozenset[str]
    trace_seed: frozenset[str]
    source: str


@dataclass(frozen=True, slots=True)
class MixingStep:
    """One place in the order in which the parts of a tank go in."""

    id: str
    name: str
    source: str


def _names(name: str) -> dict[str, str]:
    return {entry["id"]: entry["name"] for entry in read_data(name)}


@cache
def sources() -> dict[str, Source]:
    """Return every source by its key."""
    return {
        key: Source(
            key,
            entry["title"],
            entry.get("publisher", ""),
            entry.get("year", ""),
            entry.get("address", ""),
            entry["trust"],
            entry.get("note", ""),
        )
        for key, entry in read_data("sources.yaml").items()
    }


@cache
def species() -> dict[str, Species]:
    """Return every species by its id."""
    return {
        entry["id"]: Species(
            entry["id"],
            entry["name"],
            entry["kind"],
            entry["dormancy"] == "true",
            entry.get("legume") == "true",
            entry.get("inoculant_group", ""),
            entry.get("source", ""),
        )
        for entry in read_data("species.yaml")
    }


@cache
def planting_kinds() -> dict[str, str]:
    """Return the name of every kind of planting by its id."""
    return _names("kinds.yaml")


@cache
def marker_names() -> dict[str, str]:
    """Return the name of every season sign by its id."""
    return _names("signs.yaml")


@cache
def emergency_numbers() -> dict[str, str]:
    """Return the phone number of every line that is the same everywhere, by its id."""
    return _names("emergency.yaml")


@dataclass(frozen=True, slots=True)
class LawSubject:
    """What the law decides for those who hunt: what it is called, and what to look up about it."""

    id: str
    name: str
    look_up: str


@cache
def law_subjects() -> dict[str, LawSubject]:
    """Return everything the law decides that a hunter's pages name, by its id."""
    return {
        entry["id"]: LawSubject(entry["id"], entry["name"], entry["look_up"])
        for entry in read_data("law.yaml")
    }


@cache
def words() -> dict[str, str]:
    """Return what every word of the glossary means."""
    return {entry["word"]: entry["meaning"] for entry in read_data("words.yaml")}


@dataclass(frozen=True, slots=True)
class Method:
    """How a number is measured, in words, and the key of the source that describes it."""

    words: str
    source: str


@cache
def methods() -> dict[str, Method]:
    """Return how numbers are measured that no line of formula gives, by the number's name."""
    return {
        entry["name"]: Method(entry["words"], entry["source"])
        for entry in read_data("methods.yaml")
    }


@cache
def values() -> dict[str, Reference]:
    """Return every value that chapters and callouts may show, by its name."""
    settings = (value_of(entry) for entry in read_data("values.yaml"))
    return {setting.name: setting for setting in settings}


@cache
def ways_of_working() -> dict[str, WayOfWorking]:
    """Return every way in which an active works by its id."""
    return {
        entry["id"]: WayOfWorking(
            entry["id"],
            entry["name"],
            frozenset(entry["harms"]),
            _kinds(entry["trace_standing"]),
            _kinds(entry["trace_seed"]),
            entry["source"],
        )
        for entry in read_data("works.yaml")
    }


def _kinds(named: list[str]) -> frozenset[str]:
    return frozenset(planting_kinds()) if named == ["every"] else frozenset(named)


@dataclass(frozen=True, slots=True)
class NameWords:
    """Words around the name of an active that do not tell it from another, and words of classes."""

    salts_and_esters: frozenset[str]
    around: frozenset[str]
    phrases: tuple[str, ...]
    classes: frozenset[str]


@cache
def name_words() -> NameWords:
    """Return the words by which names of actives are compared."""
    data = read_data("name_words.yaml")
    return NameWords(
        frozenset(data["salts_and_esters"]),
        frozenset(data["around"]),
        tuple(data["phrases"]),
        frozenset(data["classes"]),
    )


@cache
def known_actives() -> dict[str, frozenset[str]]:
    """Return how the actives known by name work; names in small letters."""
    return {entry["id"]: frozenset(entry["works_as"]) for entry in read_data("actives.yaml")}


@cache
def hard_on() -> dict[str, tuple[tuple[str, str], ...]]:
    """Return the species that trials found an active hard on, each with its source, by active."""
    return {
        entry["id"]: tuple(
            (trial["species"], trial["source"]) for trial in entry.get("hard_on", ())
        )
        for entry in read_data("actives.yaml")
    }


@cache
def mixing_steps() -> tuple[MixingStep, ...]:
    """Return the order in which the parts of a tank go in."""
    return tuple(
        MixingStep(entry["id"], entry["name"], entry["source"])
        for entry in read_data("mixing.yaml")
    )

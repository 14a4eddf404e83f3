"""What of a folder with faults still holds together, so that rules can be looked at all the same.

A rule looks from one record into others. It is asked only of records that could be read and that
name nothing but such: what rests on a faulty line is left out, and no fault is told of it twice.
"""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence, Set

from generator.dataclass import dataclass
from generator.inventory.reading_found import FAULT, Mention, NamedThing


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a list: its record or the mark of a fault, the ids in it, what it mentions."""

    key: str
    record: object
    named: tuple[NamedThing, ...]
    mentions: tuple[Mention, ...]


def sound_entries(
    entries: Sequence[Entry],
    shipped: Mapping[str, Set[str]],
    words: Mapping[type, str],
    unread: Set[str],
) -> list[Entry]:
    """Return the entries that could be read and that rest on nothing that could not.

    `shipped` are words that are known by themselves, by their kind; of the kinds in `unread` none
    of them counts, since a line that could not be read may put another thing in its place. `words`
    names the kind of each record. The second of two things with one id is left out, and so is
    what mentions that id: nobody knows which of the two.
    """
    twice = _given_twice(entries)
    kept = [entry for entry in _each_id_once(entries) if entry.record is not FAULT]
    # until nothing falls: what named the last to be left out now rests on nothing
    while True:
        own = [thing for entry in kept for thing in entry.named]
        lost = {thing.identity for entry in entries for thing in entry.named}
        lost -= {thing.identity for thing in own} - twice
        # where the owner's plan of a shipped one's id is lost, the shipped one is not meant
        known = {kind: set(ids) - lost for kind, ids in shipped.items() if kind not in unread}
        for thing in own:
            if thing.identity not in twice:
                known.setdefault(words[thing.kind], set()).add(thing.identity)
        resting = [entry for entry in kept if all(is_known(each, known) for each in entry.mentions)]
        if len(resting) == len(kept):
            return kept
        kept = resting


def is_known(mention: Mention, known: Mapping[str, Set[str]]) -> bool:
    """Return whether what is mentioned is there; steps of a plan are looked at by rules."""
    return is_of_a_plan(mention) or any(
        mention.word in known.get(kind, ()) for kind in mention.refers_to
    )


def is_of_a_plan(mention: Mention) -> bool:
    """Return whether a step is named that must be one of the plan of what it is said of."""
    return set(mention.refers_to) <= {"step", "all"}


def _given_twice(entries: Iterable[Entry]) -> set[str]:
    counted = Counter(thing.identity for entry in entries for thing in entry.named)
    return {identity for identity, times in counted.items() if times > 1}


def _each_id_once(entries: Iterable[Entry]) -> list[Entry]:
    seen: set[str] = set()
    found = []
    for entry in entries:
        ids = [thing.identity for thing in entry.named]
        if len(set(ids)) == len(ids) and not seen & set(ids):
            found.append(entry)
        seen.update(ids)
    return found

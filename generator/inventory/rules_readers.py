"""Rules on what is handed to readers beside their jobs."""

from collections.abc import Iterator

from generator.inventory.page_names import names_a_page, slug
from generator.inventory.places import Route, Stand
from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule
from generator.inventory.schema import PARTNER, Inventory, Reader
from generator.reference.land_kinds import land_kinds

NAME_OF_ITS_OWN = "known_as: a short plain name of its own, as in Ladder 1"


def _jobs_alone(inventory: Inventory) -> Iterator[Broken]:
    for reader in inventory.readers:
        if reader.kind != PARTNER and (reader.stands or reader.routes):
            what = f"{reader.kind} {shown_value(reader.id)} is handed stands or routes"
            accepted = f"jobs alone; or kind: {PARTNER}, for somebody who hunts with you"
            yield Broken(reader.where_of("stands", "routes"), what, accepted)


def _names_handed_over(inventory: Inventory) -> Iterator[Broken]:
    """A partner must not climb one stand for another: each name is that of one thing alone."""
    for reader in inventory.readers:
        # names of the reader's places too: a strip and a stand may not go by one name
        seen = _names_of_places(reader, inventory)
        for thing in _handed_ground(reader, inventory):
            name = thing.known_as or thing.name
            short = slug(name)
            if not names_a_page(short):
                what = f"{shown_value(thing.id)} is handed over, and {shown_value(name)} cannot "
                where = thing.where_of("known_as", "name")
                yield Broken(where, f"{what}name a page", NAME_OF_ITS_OWN)
            elif short in seen:
                what = f"{shown_value(reader.id)} is handed two things called {shown_value(name)}"
                yield Broken(thing.where_of("known_as", "name"), what, NAME_OF_ITS_OWN)
            seen.add(short)


def _handed_ground(reader: Reader, inventory: Inventory) -> tuple[Stand | Route, ...]:
    """Return the stands and routes a reader is handed, each once."""
    stands = (stand for stand in inventory.stands if stand.id in reader.stands)
    return (*stands, *(route for route in inventory.routes if route.id in reader.routes))


def _names_of_places(reader: Reader, inventory: Inventory) -> set[str]:
    handed = {jobs.planting for jobs in reader.jobs}
    return {
        slug(place.known_as)
        for place in inventory.places()
        if place.known_as is not None and handed & {planting.id for planting in place.plantings}
    }


def _deer_told(inventory: Inventory) -> Iterator[Broken]:
    """Where deer bed, feed and go is nobody's to know who is hired for work."""
    hired = {reader.id for reader in inventory.readers if reader.kind != PARTNER}
    kinds = land_kinds()
    for thing in inventory.land:
        if not kinds[thing.kind].private:
            continue
        for field, readers in (
            ("shown_to", thing.shown_to),
            ("coordinates_for", thing.coordinates_for),
        ):
            for number, reader in enumerate(readers):
                if reader in hired:
                    told = kinds[thing.kind].name
                    what = f"{told} is shown to {shown_value(reader)}, who is hired for work"
                    accepted = f"readers of kind {PARTNER} alone: it tells where deer are"
                    yield Broken(thing.where_of(field, number=number), what, accepted)


READER_RULES = (
    Rule("F410", "Stands and routes are handed to a partner alone.", _jobs_alone, alone=True),
    Rule("F411", "What is handed over goes by a name of its own.", _names_handed_over),
)
SHOWN_RULES = (Rule("F550", "What tells of deer is shown to a partner alone.", _deer_told),)

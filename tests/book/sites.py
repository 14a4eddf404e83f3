"""Sites as they leave a build, with the plan each was made from."""

from dataclasses import dataclass
from pathlib import Path

from generator.book.make import make_book
from generator.book.model import Book
from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.site.publish import publish

CHECKOUT = Path(__file__).resolve().parents[2]
DEMO = CHECKOUT / "demo_property"


@dataclass(frozen=True)
class Site:
    """One reader's site: the property folder, what was planned and written, where it lies."""

    property_folder: Path
    plan: Plan
    book: Book
    folder: Path

    def pages(self) -> dict[str, str]:
        """The HTML of every page by its address."""
        return {
            path.relative_to(self.folder).as_posix(): path.read_text(encoding="utf-8")
            for path in sorted(self.folder.rglob("*.html"))
        }


def demo_readers() -> list[str]:
    """The ids of all whom the demo property's book is made for, the owner first."""
    loaded = load_inventory(DEMO)
    assert loaded.inventory is not None, "\n".join(map(str, loaded.problems))
    return ["owner", *(reader.id for reader in loaded.inventory.readers)]


def plans_of(property_folder: Path) -> dict[str, Plan]:
    """Every reader's plan by the reader's id; raises AssertionError where there are faults."""
    loaded = load_inventory(property_folder)
    assert loaded.inventory is not None, "\n".join(map(str, loaded.problems))
    day = loaded.inventory.property.as_of
    assert day is not None, "no test goes by the day it runs on"
    season = loaded.inventory.property.season
    plan = make_plan(loaded.inventory, season, day)
    return {"owner": plan} | {
        reader.id: seen_by(plan, reader) for reader in loaded.inventory.readers
    }


def build_sites(property_folder: Path, into: Path, only: str | None = None) -> dict[str, Site]:
    """Builds the site of every reader, or of one, into a folder of its own below `into`."""
    sites = {}
    for name, plan in plans_of(property_folder).items():
        if only is not None and name != only:
            continue
        book = make_book(plan)
        assert publish(book, into / name, property_folder) == ()
        sites[name] = Site(property_folder, plan, book, into / name)
    return sites

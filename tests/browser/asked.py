"""What a reader types into a search, and the page that is meant."""

from collections.abc import Iterator
from html import unescape
from pathlib import Path, PurePosixPath

import yaml

from generator.site.put import published
from tests.book.sites import Site

QUESTIONS = Path(__file__).parent / "forty_questions.yaml"
# A chapter whose every word is also the name of things and work; the list of chapters has it.
IN_OTHER_NAMES = ("A water hole",)
NAMED = ("places", "stands", "routes", "products", "seed", "equipment", "chapters")


def named_in(site: Site) -> Iterator[tuple[str, str]]:
    """The words a reader types, and the name of the page that is meant or its beginning.

    Of a sheet the work alone is typed: its place has a page of its own, which comes first.
    """
    for page in site.book.pages:
        title = unescape(page.title)
        if PurePosixPath(page.address).parts[0] in NAMED and title not in IN_OTHER_NAMES:
            yield title, title
        if PurePosixPath(page.address).parts[0] == "work" and ": " in title:
            yield title.split(": ")[0], title.split(": ")[0]


def the_forty(site: Site) -> dict[str, str]:
    """Each of the forty questions, and the file of the page that is to be found first."""
    pages = {published(page.address) for page in site.book.pages}
    wanted: dict[str, str] = {}
    for question in yaml.safe_load(QUESTIONS.read_text(encoding="utf-8")):
        named = question["page"] if isinstance(question["page"], list) else [question["page"]]
        wanted[question["asked"]] = next(f"{one}.html" for one in named if f"{one}.html" in pages)
    return wanted

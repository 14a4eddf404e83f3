"""What is drawn on the demo owner's pages, as it is read back."""

import datetime
from collections.abc import Iterator

from tests.book.reading import Element, read
from tests.book.sites import Site


def pages_with_pictures(site: Site) -> dict[str, Element]:
    """The pages of a site that hold a picture, by their addresses."""
    documents = {address: read(html) for address, html in site.pages().items()}
    return {address: one for address, one in documents.items() if pictures(one)}


def pictures(page: Element) -> list[Element]:
    """Every picture of a page."""
    return page.all("svg", "picture")


def name_of(picture: Element) -> str:
    """The id that a picture goes by; none where it is left to the words beside it."""
    return picture.attributes.get("aria-labelledby", "").split(" ")[0].removesuffix("-t")


def shapes(picture: Element, name: str) -> Iterator[Element]:
    """The shapes of a picture that stand for a value of this name."""
    return (one for one in picture.walk() if f"data-{name}" in one.attributes)


def day(text: str) -> datetime.date:
    """A day as it stands in an attribute."""
    return datetime.date.fromisoformat(text)


def number(shape: Element, name: str) -> float:
    """A length or a share in an attribute of a shape."""
    return float(shape.attributes[name].rstrip("%"))

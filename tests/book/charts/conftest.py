"""The demo owner's book and its pages with pictures, read once for each worker."""

import pytest

from tests.book.charts.drawn import pages_with_pictures
from tests.book.reading import Element
from tests.book.sites import Site


@pytest.fixture(scope="session")
def owner(demo_sites: dict[str, Site]) -> Site:
    return demo_sites["owner"]


@pytest.fixture(scope="session")
def pages(owner: Site) -> dict[str, Element]:
    return pages_with_pictures(owner)

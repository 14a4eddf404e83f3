"""Names of pages made from the names that other readers see."""

import re

from generator.inventory.problems import NO_FILE_NAMES

LONGEST_PAGE_NAME = 150  # season and step still have to fit into a file name


def slug(text: str) -> str:
    """Return small letters, digits and dashes for a name other readers see.

    >>> slug("Strip 1 (north)")
    'strip-1-north'
    """
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")


def names_a_page(short: str) -> bool:
    """Return whether a name in small letters, digits and dashes can be that of a file.

    >>> names_a_page("strip-1"), names_a_page(""), names_a_page("con")
    (True, False, False)
    """
    return bool(short) and len(short) <= LONGEST_PAGE_NAME and short not in NO_FILE_NAMES

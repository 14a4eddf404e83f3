"""Orders the pages of a book into heads, the lists under each, and what stands on a list.

Every page carries the head it stands under, so what a menu names there is paid on each page.
"""

from collections.abc import Iterator, Sequence
from typing import Any

from generator.book.model import Page
from generator.dataclass import dataclass
from generator.site.yaml_written import quoted

# A menu names what stands on a list up to here; of a longer one it names the list alone.
NAMED_UP_TO = 25
FIRST_PAGE, THIS_WEEK = "index.md", "This week"


@dataclass(frozen=True, slots=True)
class NavigationEntry:
    """A page (with an address) or a section (with entries) of the navigation."""

    title: str
    address: str = ""
    entries: tuple["NavigationEntry", ...] = ()


def navigation(pages: Sequence[Page]) -> tuple[NavigationEntry, ...]:
    """The navigation of `pages`: heads in the order of their first pages, pages in their own.

    A list and what stands on it are a section that is called as the list is and opens with it.
    """
    heads: dict[tuple[str, str], list[Page]] = {}
    for page in pages:
        # a page at the top is a head of its own
        heads.setdefault((page.group, "" if page.group else page.address), []).append(page)
    return tuple(_head(listed) for listed in heads.values())


def navigation_data(entries: Sequence[NavigationEntry]) -> list[dict[str, Any]]:
    """The `nav` setting as data: a page is its title and address, a section its title and list."""
    return [{entry.title: entry.address or navigation_data(entry.entries)} for entry in entries]


def navigation_yaml(entries: Sequence[NavigationEntry]) -> str:
    """The `nav` key of mkdocs.yml."""
    return "nav:\n" + "".join(_lines(entries, "  "))


def titles_in(entries: Sequence[NavigationEntry]) -> dict[str, str]:
    """What the navigation calls each page, by its address."""
    found: dict[str, str] = {}
    for entry in entries:
        found |= {entry.address: entry.title} if entry.address else titles_in(entry.entries)
    return found


def _head(pages: Sequence[Page]) -> NavigationEntry:
    first = pages[0]
    if not first.group:
        return NavigationEntry(
            THIS_WEEK if first.address == FIRST_PAGE else first.title, first.address
        )
    return NavigationEntry(first.group, entries=tuple(_under_a_head(pages)))


def _under_a_head(pages: Sequence[Page]) -> Iterator[NavigationEntry]:
    lists = {page.address: page for page in pages if page.listed_on == page.address}
    listed: dict[str, list[NavigationEntry]] = {address: [] for address in lists}
    for page in pages:
        if page.listed_on in lists:
            listed[page.listed_on].append(NavigationEntry(page.title, page.address))
    for page in pages:
        if page.listed_on not in lists:
            yield NavigationEntry(page.title, page.address)
        elif page.address == page.listed_on:
            opening = NavigationEntry(page.title, page.address)
            others = (entry for entry in listed[page.address] if entry != opening)
            entries = (opening, *others)
            yield opening if len(entries) == 1 else NavigationEntry(page.title, entries=entries)


def _lines(entries: Sequence[NavigationEntry], indent: str) -> Iterator[str]:
    for entry in entries:
        if entry.address:
            yield f"{indent}- {quoted(entry.title)}: {quoted(entry.address)}\n"
        else:
            yield f"{indent}- {quoted(entry.title)}:\n"
            yield from _lines(entry.entries, indent + "    ")

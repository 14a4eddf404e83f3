"""Orders the pages of a book into a navigation of small groups.

Every page carries the whole of the group it stands in, so a group's size is paid on each page.
"""

from collections.abc import Iterator, Sequence
from math import ceil
from typing import Any

from generator.book.model import Page
from generator.dataclass import dataclass
from generator.site.yaml_written import quoted

GROUP_LIMIT = 25


@dataclass(frozen=True, slots=True)
class NavigationEntry:
    """A page (with an address) or a section (with entries) of the navigation."""

    title: str
    first: str
    last: str
    address: str = ""
    entries: tuple["NavigationEntry", ...] = ()


def navigation(pages: Sequence[Page]) -> tuple[NavigationEntry, ...]:
    """The navigation of `pages`: their order kept, no section with more than GROUP_LIMIT entries.

    A section stands where its first page stands.
    """
    groups: dict[str, list[NavigationEntry]] = {}
    order: list[NavigationEntry | str] = []
    for page in pages:
        entry = NavigationEntry(page.title, page.title, page.title, page.address)
        if not page.group:
            order.append(entry)
            continue
        if page.group not in groups:
            order.append(page.group)
        groups.setdefault(page.group, []).append(entry)
    top = [_section(item, groups[item]) if isinstance(item, str) else item for item in order]
    # whatever is grouped, the first page stays at the top: links home lead there
    opening = [entry for entry in top[:1] if entry.address]
    return (*opening, *_in_small_groups(top[len(opening) :], GROUP_LIMIT - len(opening)))


def navigation_data(entries: Sequence[NavigationEntry]) -> list[dict[str, Any]]:
    """The `nav` setting as data: a page is its title and address, a section its title and list."""
    return [{entry.title: entry.address or navigation_data(entry.entries)} for entry in entries]


def navigation_yaml(entries: Sequence[NavigationEntry]) -> str:
    """The `nav` key of mkdocs.yml."""
    return "nav:\n" + "".join(_lines(entries, "  "))


def _section(title: str, entries: Sequence[NavigationEntry]) -> NavigationEntry:
    # A group's own first page stays the page its heading opens.
    opening = [entry for entry in entries[:1] if entry.address.endswith("index.md")]
    rest = _in_small_groups(entries[len(opening) :], GROUP_LIMIT - len(opening))
    return NavigationEntry(title, entries[0].first, entries[-1].last, entries=(*opening, *rest))


def _in_small_groups(
    entries: Sequence[NavigationEntry], limit: int = GROUP_LIMIT
) -> Sequence[NavigationEntry]:
    while len(entries) > limit:
        # parts as even as can be: 26 pages stand as 13 and 13, not as 25 and 1
        size = ceil(len(entries) / ceil(len(entries) / GROUP_LIMIT))
        parts = [entries[start : start + size] for start in range(0, len(entries), size)]
        entries = [
            NavigationEntry(
                f"{part[0].first} – {part[-1].last}", part[0].first, part[-1].last, "", (*part,)
            )
            for part in parts
        ]
    return entries


def _lines(entries: Sequence[NavigationEntry], indent: str) -> Iterator[str]:
    for entry in entries:
        if entry.address:
            yield f"{indent}- {quoted(entry.title)}: {quoted(entry.address)}\n"
        else:
            yield f"{indent}- {quoted(entry.title)}:\n"
            yield from _lines(entry.entries, indent + "    ")

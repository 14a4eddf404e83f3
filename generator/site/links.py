"""Reads what stands on every page: links, pictures, anchors, ids, and lines that must be there.

MkDocs checks links in Markdown only; most of ours stand in HTML.
"""

import posixpath
import re
from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache
from html import unescape
from types import MappingProxyType
from urllib.parse import unquote

from generator.dataclass import dataclass

_SCRIPT = re.compile(r"(<script\b[^>]*>).*?</script>", re.DOTALL)
# Only tags with attributes matter. Possessive repeats keep the reading of a page short.
_TAG = re.compile(r"""<[a-zA-Z][^<>="']*+=(?:[^<>"']*+(?:"[^"]*+"|'[^']*+'))*+[^<>"']*+>""")
# A quoted value of any other attribute is passed over whole: what stands in it is text.
_ATTRIBUTE = re.compile(
    r"""\s(?=[idhxspafb])"""
    r"""(id|href|xlink:href|src|srcset|poster|data|action|formaction|background|ping)"""
    r"""=("[^"]*+"|'[^']*+'|[^\s"'>]++)|"[^"]*+"|'[^']*+'"""
)
_STYLE = re.compile(r"<style\b[^>]*>(.*?)</style>|\sstyle=\"([^\"]*)\"", re.DOTALL)
_CSS_ADDRESS = re.compile(
    r"""url\(\s*(?:"([^"]*)"|'([^']*)'|([^)"']*))\s*\)|@import\s+["']([^"']+)"""
)
_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//", re.IGNORECASE)
# A phone dials; neither it nor text inside the page itself asks a network for anything.
_NO_NETWORK = ("data:image/", "tel:")
NO_FRAMES: Mapping[str, "Linked"] = MappingProxyType({})
_SOURCE_LINK = re.compile(r'<a\b(?=[^>]*\sclass="[^"]*\bsource\b)(?=[^>]*\srel="[^"]*\bnoopener\b)')


@dataclass(frozen=True, slots=True)
class Linked:
    """One page, or a part of one, as the check sees it: its anchors and where it leads.

    `addresses` leave out what leads to its own anchors.
    """

    ids: frozenset[str]
    addresses: frozenset[str]
    faults: tuple[str, ...] = ()


def check_links(
    files: Iterable[str], pages: Mapping[str, Linked], frames: Mapping[str, Linked] = NO_FRAMES
) -> tuple[str, ...]:
    """What is wrong with the pages of a site, one sentence each, in order of their addresses.

    `files` are all files of the site, `pages` what stands on its pages by their address, `frames`
    what the theme puts around one page of each kind, by the address of that page.
    """
    there, faults = frozenset(files), []
    around = frozenset[str]().union(*(frame.ids for frame in frames.values()))
    for address, page in sorted(pages.items()):
        if address not in there:
            faults.append(f"{address}: was not written.")
            continue
        twice = page.ids & around
        told = [*page.faults, *([_twice(twice)] if twice else [])]
        if address in frames:
            told += frames[address].faults
            told += _dead_ends(address, frames[address].addresses, pages, there, around)
        told += _dead_ends(address, page.addresses, pages, there, around)
        faults += [f"{address}: {fault}" for fault in told]
    return tuple(faults)


def read_file(name: str, text: str) -> Linked:
    """Return a drawing or a style sheet as the check sees it."""
    if name.endswith(".css"):
        return Linked(frozenset(), frozenset(_css_addresses(text)))
    return read(text)


def read(html: str, safety_keys: Iterable[str] = ()) -> Linked:
    """Return HTML as the check sees it; `safety_keys` name the lines of safety it must hold."""
    html = _SCRIPT.sub(r"\1", html)
    faults = ["has an HTML comment."] if "<!--" in html else []
    tags = _TAG.findall(html)
    ids: list[str] = []
    addresses: set[str] = set()
    for name, value in _ATTRIBUTE.findall("\n".join(tags)):
        if name == "id":
            ids.append(value.strip("\"'"))
        elif name:
            addresses.add(value.strip("\"'"))
    # most lead to a working on the page itself, and are there
    addresses.difference_update([f"#{name}" for name in ids])
    for address in [address for address in addresses if _ELSEWHERE.match(address)]:
        addresses.remove(address)
        if not address.startswith(_NO_NETWORK) and not _only_source_links(address, tags):
            faults.append(f"leads to the network address {address}.")
    if "<style" in html or " style=" in html:
        for styles in _STYLE.findall(html):
            addresses.update(_css_addresses("".join(styles)))
    # counted only where there are some: a page of workings has hundreds of ids
    if len(set(ids)) < len(ids):
        faults.append(_twice({name for name in ids if ids.count(name) > 1}))
    missing = [key for key in safety_keys if f'data-safety="{key}"' not in html]
    faults += [f"the safety line {key} is missing." for key in missing]
    return Linked(frozenset(ids), frozenset(addresses), tuple(sorted(faults)))


def _twice(ids: Iterable[str]) -> str:
    return f"uses the same id twice: {', '.join(sorted(ids))}."


def _only_source_links(address: str, tags: list[str]) -> bool:
    """Whether every tag that names `address` is a source link, which loads nothing by itself."""
    naming = [tag for tag in tags if address in tag]
    return address.startswith("https://") and all(map(_SOURCE_LINK.match, naming))


def _css_addresses(css: str) -> Iterator[str]:
    for found in _CSS_ADDRESS.findall(css):
        address = "".join(found).strip()
        if not address.startswith("data:"):
            yield address


def _dead_ends(
    page: str,
    addresses: Iterable[str],
    pages: Mapping[str, Linked],
    files: frozenset[str],
    around: frozenset[str],
) -> Iterator[str]:
    folder = posixpath.dirname(page)
    for address in sorted(addresses):
        if _ELSEWHERE.match(address):
            yield f"loads the network address {address}."
            continue
        target, anchor = _resolved(folder, address)
        target = target or page
        if target not in files:
            yield f"leads to {address}, which does not exist."
        elif anchor and (
            target not in pages or (anchor not in pages[target].ids and anchor not in around)
        ):
            yield f"leads to {address}, but {target} has no such place."


@lru_cache(maxsize=10_000)
def _resolved(folder: str, address: str) -> tuple[str, str]:
    """The file `address` means on a page in `folder`, "" for the page itself, and the anchor."""
    path, _, anchor = unquote(unescape(address)).partition("#")
    path = path.partition("?")[0]
    return posixpath.normpath(posixpath.join(folder, path)) if path else "", anchor

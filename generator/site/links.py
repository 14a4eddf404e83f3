"""Reads every finished page once more: links, pictures, anchors, ids, and lines that must be there.

MkDocs checks links in Markdown only; most of ours stand in HTML.
"""

import posixpath
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from html import unescape
from pathlib import Path
from urllib.parse import unquote

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
# A telephone dials; neither it nor text inside the page itself asks a network for anything.
_NO_NETWORK = ("data:image/", "tel:")
_SOURCE_LINK = re.compile(r'<a\b(?=[^>]*\sclass="[^"]*\bsource\b)(?=[^>]*\srel="[^"]*\bnoopener\b)')


@dataclass(frozen=True, slots=True)
class _Read:
    """One page as the check sees it: its anchors and the addresses it leads to."""

    ids: frozenset[str]
    addresses: frozenset[str]
    faults: tuple[str, ...]


def check_links(site: Path, safety_keys: Mapping[str, Iterable[str]]) -> tuple[str, ...]:
    """What is wrong with the pages of `site`, one sentence each, in order of their addresses.

    `safety_keys` gives, by a page's Markdown address, the safety lines its final page must show.
    """
    files = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    pages: dict[str, _Read] = {}
    faults: list[str] = []
    for address in sorted(files):
        if address.endswith((".html", ".svg")):
            pages[address] = _read((site / address).read_text(encoding="utf-8"))
        elif address.endswith(".css"):
            css = (site / address).read_text(encoding="utf-8")
            pages[address] = _Read(frozenset(), frozenset(_css_addresses(css)), ())
    for address, read in pages.items():
        faults += [f"{address}: {fault}" for fault in read.faults]
        faults += [f"{address}: {fault}" for fault in _dead_ends(address, read, pages, files)]
    return (*faults, *_missing_safety(site, safety_keys, files))


def _read(html: str) -> _Read:
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
    for address in [address for address in addresses if _ELSEWHERE.match(address)]:
        addresses.remove(address)
        if not address.startswith(_NO_NETWORK) and not _only_source_links(address, tags):
            faults.append(f"leads to the network address {address}.")
    if "<style" in html or " style=" in html:
        for styles in _STYLE.findall(html):
            addresses.update(_css_addresses("".join(styles)))
    # counted only where there are some: a page of workings has hundreds of ids
    if len(set(ids)) < len(ids):
        twice = sorted({name for name in ids if ids.count(name) > 1})
        faults.append(f"uses the same id twice: {', '.join(twice)}.")
    return _Read(frozenset(ids), frozenset(addresses), tuple(sorted(faults)))


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
    page: str, read: _Read, pages: Mapping[str, _Read], files: set[str]
) -> Iterator[str]:
    folder = posixpath.dirname(page)
    for address in sorted(read.addresses):
        if _ELSEWHERE.match(address):
            yield f"loads the network address {address}."
            continue
        target, anchor = _resolved(folder, address)
        target = target or page
        if target not in files:
            yield f"leads to {address}, which does not exist."
        elif anchor and (target not in pages or anchor not in pages[target].ids):
            yield f"leads to {address}, but {target} has no such place."


@lru_cache(maxsize=10_000)
def _resolved(folder: str, address: str) -> tuple[str, str]:
    """The file `address` means on a page in `folder`, "" for the page itself, and the anchor."""
    path, _, anchor = unquote(unescape(address)).partition("#")
    path = path.partition("?")[0]
    return posixpath.normpath(posixpath.join(folder, path)) if path else "", anchor


def _missing_safety(
    site: Path, safety_keys: Mapping[str, Iterable[str]], files: set[str]
) -> Iterator[str]:
    for address, keys in safety_keys.items():
        page = address.removesuffix(".md") + ".html"
        if page not in files:
            yield f"{page}: was not written."
            continue
        html = (site / page).read_text(encoding="utf-8")
        for key in keys:
            if f'data-safety="{key}"' not in html:
                yield f"{page}: the safety line {key} is missing."

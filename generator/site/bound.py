"""A page as it stands in the one file: its places named for it, its links leading inside the file.

A page is called there by its address in the folder, without the ending; a place on it by the mark
of the page and its own id, so that no two are the same. A mark is made from the page's address
alone and is the same in every build.
"""

import base64
import hashlib
import posixpath
import re
from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from functools import cache
from html import escape, unescape

from generator.book.model import Page
from generator.dataclass import dataclass
from generator.site.bodies import Body
from generator.site.links import Linked

FEWEST_SIGNS = 4
# Under this many signs a drawing is cheaper said again than pointed at.
SMALL_DRAWING = 200
PICTURES = {
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".jpg": "image/jpeg",
    ".webp": "image/webp",
}
# Of a drawing a page holds this until it is known which page shows it first.
DRAWN = re.compile("\x02([0-9a-f]+)\x03")
# The usual entities that keep Markdown from reading signs, which in HTML stand for themselves.
_PLAIN = {f"&#{ord(sign)};": sign for sign in ".-:/_"}
_LINK = re.compile(r' href="([^#"][^"]*)"')
_FILE_LINK = re.compile(r'<a\b[^>]*? href="([^"#:]+)"[^>]*>(.*?)</a>', re.DOTALL)
_IDS_NAMED = re.compile(r' (aria-(?:labelledby|describedby)|for)="([^"]*)"')
_NAMES_IDS = ('edby="', ' for="')
_ID = re.compile(r' id="([^"]*)"')
_ADDRESS = re.compile(r' (?:href|src)="([^"]*)"')
# A script that one page of the folder asks for; the file holds every script itself.
_SCRIPT = re.compile(r"<script\b[^>]*></script>\n?")
ELSEWHERE = ("https://", "tel:", "data:image/")
_SVG = re.compile(r"<(/?)svg\b")
_IMAGE = re.compile(r'<img\b[^>]*? src="([^":]+)"[^>]*>')
_DATA_IMAGE = re.compile(r'<img\b[^>]*? src="(data:[^"]+)"[^>]*>')
_ALT = re.compile(r' alt="([^"]*)"')
_TITLE = re.compile(r"<title\b[^>]*>(.*?)</title>", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing as the first page that shows it holds it, and in words."""

    html: str
    words: str


@dataclass(frozen=True, slots=True)
class BoundPage:
    """A page as it is bound into the one file; `drawings` are those on it, by their digests."""

    html: str
    linked: Linked
    drawings: Mapping[str, Drawing]


def name_of_page(address: str) -> str:
    """Return what a page is called in the one file."""
    return address.removesuffix(".md")


def page_marks(addresses: Iterable[str]) -> dict[str, str]:
    """Return the mark of each page: as few signs of a digest of its address as tell it apart."""
    digests = {address: _digest(address) for address in addresses}
    length, marks = FEWEST_SIGNS, dict[str, str]()
    while digests:
        counted = Counter(digest[:length] for digest in digests.values())
        twice = {one for one, count in counted.items() if count > 1}
        for address, digest in list(digests.items()):
            if digest[:length] not in twice:
                marks[address] = digest[:length]
                del digests[address]
        length += 1
    return marks


def binder(
    marks: Mapping[str, str], files: Mapping[str, bytes]
) -> Callable[[Page, Body], BoundPage]:
    """Return the function that binds pages, by their bodies, of a book of these pages and files.

    A page is known by its address, as in `marks`, and a file by its name in the folder.
    """
    names = {f"{name_of_page(address)}.html": address for address in marks}

    @cache
    def resolved(folder: str, address: str) -> str:
        """Return where a link of a page in a folder leads in the one file, "" if to a file."""
        path, _, anchor = unescape(address).partition("#")
        name = posixpath.normpath(posixpath.join(folder, path))
        page_meant = names.get(name)
        if page_meant is None:
            return "" if name in files else address
        # the check of links says where there is no such place
        return "#" + escape(f"{marks[page_meant]}:{anchor}" if anchor else name_of_page(page_meant))

    def made(page: Page, body: Body) -> BoundPage:
        folder, mark = posixpath.dirname(page.address), marks[page.address]
        html = body.html
        if "<h1" not in html:  # as the theme does
            html = f'<h1 id="this-page">{page.title}</h1>\n{html}'
        for entity, sign in _PLAIN.items():
            html = html.replace(entity, sign)

        to_files: list[str] = []

        def inside(link: re.Match[str]) -> str:
            where = resolved(folder, link[1])
            if not where:
                to_files.append(link[1])
            return f' href="{where or link[1]}"'

        def apart(link: re.Match[str]) -> str:
            if link[1] not in to_files:
                return link[0]
            return _in_the_folder(posixpath.basename(unescape(link[1])), link[2])

        def pictured(image: re.Match[str]) -> str:
            name = posixpath.normpath(posixpath.join(folder, unescape(image[1])))
            kind = PICTURES.get(posixpath.splitext(name)[1])
            if name not in files or kind is None:
                return image[0]
            data = base64.b64encode(files[name]).decode()
            return image[0].replace(f'"{image[1]}"', f'"data:{kind};base64,{data}"')

        if "<img" in html:
            html = _IMAGE.sub(pictured, html)
        if "<script" in html:
            html = _SCRIPT.sub("", html)
        html, drawings = _without_drawings(html)
        html = _LINK.sub(inside, _named(html, mark))
        if to_files:
            html = _FILE_LINK.sub(apart, html)
        name = name_of_page(page.address)
        html = f'<article class="md-content__inner md-typeset" id="{name}">\n{html}\n</article>'
        return BoundPage(html, _checked(html, page), drawings)

    return made


def elsewhere(digest: str, words: str) -> str:
    """Return what stands for a drawing on every page behind the first that shows it."""
    return f'<a class="drawn" href="#drawn:{digest}">{words}</a>'


def _digest(address: str) -> str:
    digest = hashlib.sha256(address.encode()).digest()
    return base64.b32encode(digest).decode().rstrip("=").lower()


def _in_the_folder(name: str, words: str) -> str:
    file = "" if unescape(words) == name else f"{escape(name)}, "
    place = "in the folder of this book and not in this file"
    return f'<span class="apart">{words} <small>({file}{place})</small></span>'


def _checked(html: str, page: Page) -> Linked:
    """Return a bound page as the check sees it; its body was read whole for the folder."""
    ids = _ID.findall(html)
    addresses = {one for one in _ADDRESS.findall(html) if not one.startswith(ELSEWHERE)}
    faults = [
        f"the safety line {key} is missing."
        for key in page.safety_keys
        if f'data-safety="{key}"' not in html
    ]
    if len(set(ids)) < len(ids):
        faults.append("uses an id twice.")
    # a page that ended its own wrapping would be read as part of the file around it
    if "noscript" in html.lower():
        faults.append("holds the tag noscript.")
    return Linked(frozenset(ids), frozenset(addresses - {f"#{one}" for one in ids}), tuple(faults))


def _named(html: str, mark: str) -> str:
    """Return HTML whose ids, and what asks for them on the same page, begin with a mark."""
    html = html.replace(' id="', f' id="{mark}:').replace('href="#', f'href="#{mark}:')
    html = html.replace("url(#", f"url(#{mark}:")
    if not any(one in html for one in _NAMES_IDS):
        return html
    return _IDS_NAMED.sub(
        lambda found: f' {found[1]}="{" ".join(f"{mark}:{one}" for one in found[2].split())}"', html
    )


def _without_drawings(html: str) -> tuple[str, dict[str, Drawing]]:
    """Return a page with a sign where each large drawing stands, and the drawings."""
    drawings: dict[str, Drawing] = {}
    rest: list[str] = []
    at = 0
    for start, end in _large_drawings(html):
        text = html[start:end]
        words = _words_of(text)
        if words is None:
            continue
        ids = _ID.findall(text)
        asked = {one for _, some in _IDS_NAMED.findall(text) for one in some.split()}
        others = html[:start] + html[end:]
        # one that its page leads into, or that leads out of itself, belongs to that page
        if not asked <= set(ids) or any(f'href="#{one}"' in others for one in ids):
            continue
        data = _DATA_IMAGE.match(text)
        digest = hashlib.sha256((data[1] if data else text).encode()).hexdigest()[:12]
        drawings[digest] = Drawing(_kept(text, digest), words)
        rest += html[at:start], f"\x02{digest}\x03"
        at = end
    return "".join([*rest, html[at:]]), drawings


def _kept(text: str, digest: str) -> str:
    tag, rest = text[:4], text[4:]
    if _ID.search(text[: text.index(">")]):
        return _named(text, digest)
    return f'{tag} id="drawn:{digest}"{_named(rest, digest)}'


def _large_drawings(html: str) -> list[tuple[int, int]]:
    """Return where drawings begin and end that are worth being kept once."""
    images = _DATA_IMAGE.finditer(html) if "<img" in html else ()
    found = [(one.start(), one.end()) for one in images]
    depth, start = 0, 0
    for tag in _SVG.finditer(html) if "<svg" in html else ():
        if not tag[1] and depth == 0:
            start = tag.start()
        depth += -1 if tag[1] else 1
        if depth == 0:
            found.append((start, html.index(">", tag.end()) + 1))
    return sorted((start, end) for start, end in found if end - start >= SMALL_DRAWING)


def _words_of(text: str) -> str | None:
    """Return what leads to a drawing; None where it has no words, as a row of a chart has none."""
    said = _TITLE.search(text) or _ALT.search(text)
    return f"The drawing: {said[1]}" if said and said[1] else None

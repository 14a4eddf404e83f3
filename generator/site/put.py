"""Puts one page into a site: its body made and read, joined with its frame, and written."""

import hashlib
from collections.abc import Callable
from pathlib import Path

from generator.book.model import Page
from generator.dataclass import dataclass
from generator.site.bodies import Body
from generator.site.frames import Framed
from generator.site.gathering import Gathered
from generator.site.links import Linked, read


@dataclass(frozen=True, slots=True)
class Put:
    """What is kept of a page that is written: its SHA-256, and where its links lead.

    `frame` is what stands around it where it was the first of its kind in the process that put it,
    `bound` says where it is gathered for the one file.
    """

    name: str
    digest: str
    linked: Linked
    kind: object
    frame: Linked | None
    bound: Gathered | None = None


def published(address: str) -> str:
    """Return the name of a page's file in its site."""
    return address.removesuffix(".md") + ".html"


def put_page(
    make: Callable[[Page], Body],
    framing: Callable[[Body], Framed],
    site: Path,
    page: Page,
    keep: Callable[[Page, Body], Gathered] | None = None,
) -> Put:
    """Make a page and write it; `keep` gathers it for the one file too."""
    body = make(page)
    framed = framing(body)
    html = framed.html.encode("utf-8", errors="xmlcharrefreplace")
    name = published(page.address)
    file = site / name
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(html)
    frame = read(framed.frame) if framed.frame is not None else None
    bound = keep(page, body) if keep is not None else None
    return Put(name, hashlib.sha256(html).hexdigest(), body.linked, framed.kind, frame, bound)

"""Writes a book as a Markdown tree that plain `mkdocs build` accepts, wherever it is moved.

mkdocs.yml   the shipped one, completed with this book's name, day, reader and navigation
docs/        the pages and the files beside them
theme/       copies of our theme files
book.json    what our own build needs besides: titles and search records; never published
"""

import json
import re
from datetime import date
from html import escape
from pathlib import Path, PurePosixPath
from typing import Any

import yaml

from generator.book.model import Book, Page
from generator.lookup import shipped
from generator.site.navigation import navigation, navigation_yaml
from generator.site.yaml_written import quoted

_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
EMERGENCY = "emergency.md"
_BARE_AMPERSAND = re.compile(r"&(?!#?\w+;)")


def stage(book: Book, folder: Path) -> Path:
    """Writes the tree of `book` into `folder`, which is made and must be empty; returns `folder`.

    Raises ValueError where an address would leave the folder, is used twice, or would not be
    published under its own name.
    """
    _check_addresses(book)
    folder.mkdir(parents=True, exist_ok=True)
    if any(folder.iterdir()):
        raise ValueError(f"{folder} is not empty.")
    _write(folder / "mkdocs.yml", _configuration(book))
    _copy_theme(folder / "theme")
    docs = folder / "docs"
    for parent in {docs / PurePosixPath(a).parent for a in (*_page_addresses(book), *book.files)}:
        parent.mkdir(parents=True, exist_ok=True)
    for page in book.pages:
        _write(
            docs / page.address,
            f"---\ntitle: {quoted(text_only(page.title))}\n---\n\n{page.markdown}",
        )
    for address, content in book.files.items():
        (docs / address).write_bytes(content)
    _write(folder / "book.json", json.dumps(_records(book), ensure_ascii=False, indent=0))
    return folder


def text_only(safe: str) -> str:
    """`safe` with whatever could still be live made text; what is an entity already stays."""
    # bare ones are made entities first, so that each & left begins one and is given back
    return escape(_BARE_AMPERSAND.sub("&amp;", safe), quote=True).replace("&amp;", "&")


def _configuration(book: Book) -> str:
    settings: dict[str, Any] = yaml.safe_load(shipped("mkdocs.yml").read_text(encoding="utf-8"))
    settings["site_name"] = text_only(book.title)
    del settings["hooks"]  # of a checkout alone: what is typed there has no staged tree yet
    settings["docs_dir"] = "docs"
    settings["theme"]["custom_dir"] = "theme"
    settings["extra"]["as_of"] = book.as_of.isoformat()
    settings["extra"]["as_of_words"] = _day_in_words(book.as_of)
    settings["extra"]["reader"] = text_only(book.reader)
    if EMERGENCY in _page_addresses(book):
        settings["extra"]["emergency"] = "emergency.html"
    text: str = yaml.safe_dump(settings, sort_keys=False, allow_unicode=True, width=1000)
    return text + navigation_yaml(navigation(book.pages))


def _records(book: Book) -> dict[str, Any]:
    return {
        "as_of": book.as_of.isoformat(),
        "pages": [
            {"address": page.address, "title": text_only(page.title), "search": _search(page)}
            for page in book.pages
        ],
    }


def _search(page: Page) -> dict[str, Any]:
    location = page.address.removesuffix(".md") + ".html"
    # Tags of the index outweigh every title: as words of the text they find, and titles come first.
    record: dict[str, Any] = {
        "location": location,
        "title": page.search.title,
        "text": " ".join(filter(None, (page.search.text, *page.search.tags))),
    }
    if page.search.boost != 1:
        record["boost"] = page.search.boost
    return record


def _day_in_words(day: date) -> str:
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def _page_addresses(book: Book) -> tuple[str, ...]:
    return tuple(page.address for page in book.pages)


def _check_addresses(book: Book) -> None:
    seen: set[str] = set()
    for address in (*_page_addresses(book), *book.files):
        parts = address.split("/")
        if any(not part or part.startswith(".") for part in parts) or "\\" in address:
            raise ValueError(f"{address!r} is not an address inside the book.")
        if parts[0] == "templates" or parts[-1].lower() == "readme.md":
            raise ValueError(f"{address!r} is an address that MkDocs keeps for itself.")
        if address.endswith(".md") and address in book.files:
            raise ValueError(f"{address!r} is a page and cannot be a file beside the pages.")
        # Some disks take capital and small letters for the same name.
        published = address.removesuffix(".md").lower() + (
            ".html" if address.endswith(".md") else ""
        )
        if published in seen:
            raise ValueError(f"{address!r} stands twice in the book.")
        seen.add(published)
    if not all(page.address.endswith(".md") for page in book.pages):
        raise ValueError("Every page's address ends in .md.")


def _write(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8", newline="\n")


def _copy_theme(folder: Path) -> None:
    theme = shipped("site_templates") / "theme"
    for path in sorted(theme.rglob("*")):
        if path.is_file():
            copy = folder / path.relative_to(theme)
            copy.parent.mkdir(parents=True, exist_ok=True)
            copy.write_bytes(path.read_bytes())

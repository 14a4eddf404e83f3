"""The settings of a book's build: the shipped ones, completed with what belongs to one book."""

import re
from datetime import date
from html import escape
from typing import Any

import yaml

from generator.book.model import Book
from generator.kept import STORE
from generator.lookup import shipped
from generator.site.navigation import NAMED_UP_TO

_YAML = f"yaml values {yaml.__version__}"
_MONTHS = (
    *("Jan", "Feb", "Mar", "Apr", "May", "Jun"),
    *("Jul", "Aug", "Sep", "Oct", "Nov", "Dec"),
)
# Pages that every page leads to.
IN_REACH = ("emergency", "safety")
_BARE_AMPERSAND = re.compile(r"&(?!#?\w+;)")


def settings_of(book: Book) -> dict[str, Any]:
    """Return the settings as MkDocs reads them, without the navigation; `docs` holds the pages."""
    text = shipped("mkdocs.yml").read_text(encoding="utf-8")
    settings: dict[str, Any] = STORE.made_of(_YAML, text, yaml.safe_load)
    settings["site_name"] = text_only(book.title)
    del settings["hooks"]  # of a checkout alone: what is typed there has no staged tree yet
    settings["docs_dir"] = "docs"
    settings["theme"]["custom_dir"] = "theme"
    settings["extra"]["as_of"] = book.as_of.isoformat()
    settings["extra"]["as_of_words"] = day_in_words(book.as_of)
    if book.old_after is not None:
        settings["extra"]["old_after"] = book.old_after.isoformat()
        settings["extra"]["old_after_words"] = day_in_words(book.old_after)
    settings["extra"]["reader"] = text_only(book.reader)
    settings["extra"]["named_up_to"] = NAMED_UP_TO
    for name in IN_REACH:
        if any(page.address == f"{name}.md" for page in book.pages):
            settings["extra"][name] = f"{name}.html"
    return settings


def text_only(safe: str) -> str:
    """`safe` with whatever could still be live made text; what is an entity already stays."""
    # bare ones are made entities first, so that each & left begins one and is given back
    return escape(_BARE_AMPERSAND.sub("&amp;", safe), quote=True).replace("&amp;", "&")


def day_in_words(day: date) -> str:
    """Return a day as pages have it.

    >>> day_in_words(date(2026, 8, 20))
    'Aug 20, 2026'
    """
    return f"{_MONTHS[day.month - 1]} {day.day}, {day.year}"

"""Writes a book as a Markdown tree that plain `mkdocs build` accepts, wherever it is moved.

mkdocs.yml   the shipped one, completed with this book's name, day, reader and navigation
docs/        the pages and the files beside them
theme/       copies of our theme files
"""

from pathlib import Path, PurePosixPath

import yaml

from generator.book.model import Book
from generator.lookup import shipped
from generator.site.addresses import check_addresses
from generator.site.navigation import navigation, navigation_yaml, titles_in
from generator.site.settings import settings_of, text_only
from generator.site.yaml_written import quoted


def stage(book: Book, folder: Path) -> Path:
    """Writes the tree of `book` into `folder`, which is made and must be empty; returns `folder`.

    Raises ValueError where an address would leave the folder, is used twice, or would not be
    published under its own name.
    """
    check_addresses(book)
    folder.mkdir(parents=True, exist_ok=True)
    if any(folder.iterdir()):
        raise ValueError(f"{folder} is not empty.")
    _write(folder / "mkdocs.yml", _configuration(book))
    _copy_theme(folder / "theme")
    docs = folder / "docs"
    for parent in {
        docs / PurePosixPath(a).parent
        for a in (*(page.address for page in book.pages), *book.files)
    }:
        parent.mkdir(parents=True, exist_ok=True)
    titles = titles_in(navigation(book.pages))
    for page in book.pages:
        _write(
            docs / page.address,
            f"---\ntitle: {quoted(text_only(titles[page.address]))}\n---\n\n{page.markdown}",
        )
    for address, content in book.files.items():
        (docs / address).write_bytes(content)
    return folder


def _configuration(book: Book) -> str:
    text: str = yaml.safe_dump(settings_of(book), sort_keys=False, allow_unicode=True, width=1000)
    return text + navigation_yaml(navigation(book.pages))


def _write(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8", newline="\n")


def _copy_theme(folder: Path) -> None:
    theme = shipped("site_templates") / "theme"
    for path in sorted(theme.rglob("*")):
        if path.is_file():
            copy = folder / path.relative_to(theme)
            copy.parent.mkdir(parents=True, exist_ok=True)
            copy.write_bytes(path.read_bytes())

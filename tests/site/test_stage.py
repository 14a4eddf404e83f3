"""The staged tree: plain MkDocs reads it, and text in it is only text."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.book.model import Book, Page, SearchRecord
from generator.site.navigation import (
    GROUP_LIMIT,
    NavigationEntry,
    navigation,
    navigation_data,
)
from generator.site.settings import text_only
from generator.site.stage import stage
from generator.site.yaml_written import quoted
from tests.site.books import book_of

HOSTILE = (
    'a: b # c\n- d: "e"\\',
    "{{ config }} {% raw %}",
    "!!python/object/apply:os.system ['true']",
    "&anchor *alias <<: no",
    "2027-01-01",
    "\u2028\u0085\x07\ufeff~",
)


@given(st.text())
def test_quoted_text_comes_back_from_yaml_unchanged(text: str) -> None:
    assert yaml.safe_load(f"- {quoted(text)}: {quoted(text)}\n") == [{text: text}]


def _page(address: str, title: str, group: str = "") -> Page:
    return Page(address, title, group, f"# {address}\n", SearchRecord(title, ""))


def _book(*pages: Page) -> Book:
    return replace(book_of(1), pages=pages, files={})


@pytest.mark.parametrize("title", HOSTILE)
def test_a_hostile_title_is_only_text_in_configuration_and_front_matter(
    tmp_path: Path, title: str
) -> None:
    book = replace(_book(_page("index.md", title, title)), title=title, reader=title)
    tree = stage(book, tmp_path / "tree")
    settings = yaml.safe_load((tree / "mkdocs.yml").read_text(encoding="utf-8"))
    shown = text_only(title)
    assert settings["nav"] == [{title: [{title: "index.md"}]}]
    assert settings["nav"] == navigation_data(navigation(book.pages))
    assert (settings["site_name"], settings["extra"]["reader"]) == (shown, shown)
    head = (tree / "docs" / "index.md").read_text(encoding="utf-8").split("\n---\n")[0]
    assert yaml.safe_load(head.removeprefix("---\n")) == {"title": shown}


@pytest.mark.parametrize(
    ("given_text", "shown"),
    [
        ("Lane &amp; Creek", "Lane &amp; Creek"),
        ("Lane & Creek", "Lane &amp; Creek"),
        ("<b>&#39;", "&lt;b&gt;&#39;"),
        ('"', "&quot;"),
    ],
)
def test_text_only_leaves_entities_and_nothing_live(given_text: str, shown: str) -> None:
    assert text_only(given_text) == shown
    assert text_only(shown) == shown


def _sections(entries: tuple[NavigationEntry, ...]) -> Iterator[tuple[NavigationEntry, ...]]:
    yield entries
    for entry in entries:
        if entry.entries:
            yield from _sections(entry.entries)


def _addresses(entries: tuple[NavigationEntry, ...]) -> list[str]:
    return [
        address
        for entry in entries
        for address in ([entry.address] if entry.address else _addresses(entry.entries))
    ]


@given(st.integers(1, 700), st.booleans())
def test_no_group_of_the_navigation_is_larger_than_the_limit(count: int, opens: bool) -> None:
    pages = [_page(f"work/{n}.md", f"Job {n}", "Work") for n in range(count)]
    if opens:
        pages.insert(0, _page("work/index.md", "Work", "Work"))
    entries = navigation([_page("index.md", "Home"), *pages])
    assert max(map(len, _sections(entries))) <= GROUP_LIMIT
    assert _addresses(entries) == ["index.md", *(page.address for page in pages)]
    if opens:
        assert entries[1].entries[0].address == "work/index.md"


def test_parts_of_a_large_group_are_named_by_their_first_and_last_page() -> None:
    pages = [_page(f"work/{n}.md", f"Job {n}", "Work") for n in range(1, 31)]
    work = navigation(pages)[0]
    assert [part.title for part in work.entries] == ["Job 1 – Job 15", "Job 16 – Job 30"]


def test_the_tree_says_nothing_of_the_folder_it_was_written_to(tmp_path: Path) -> None:
    tree = stage(book_of(2), tmp_path / "tree")
    for path in tree.rglob("*"):
        if path.is_file():
            assert str(tmp_path).encode() not in path.read_bytes()


@pytest.mark.parametrize(
    "address",
    [
        "../out.md",
        "/out.md",
        ".a.md",
        "a//b.md",
        "a\\b.md",
        "page.txt",
        "",
        "README.md",
        "templates/a.md",
    ],
)
def test_a_page_outside_the_book_is_not_written(tmp_path: Path, address: str) -> None:
    with pytest.raises(ValueError, match="address"):
        stage(_book(_page(address, "Out")), tmp_path / "tree")
    assert not (tmp_path / "tree").exists()


def test_an_address_is_used_once_whatever_the_size_of_its_letters(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="twice"):
        stage(_book(_page("a.md", "A"), _page("A.md", "B")), tmp_path / "tree")
    with pytest.raises(ValueError, match="twice"):
        stage(replace(_book(_page("a.md", "A")), files={"a.html": b""}), tmp_path / "tree")


def test_a_folder_in_use_is_not_written_into(tmp_path: Path) -> None:
    (tmp_path / "mine").write_text("kept")
    with pytest.raises(ValueError, match="not empty"):
        stage(book_of(1), tmp_path)

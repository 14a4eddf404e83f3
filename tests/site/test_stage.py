"""The staged tree: plain MkDocs reads it, and text in it is only text."""

from dataclasses import replace
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.book.model import Book, Page, SearchRecord
from generator.site.navigation import NavigationEntry, navigation, navigation_data
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


def _addresses(entries: tuple[NavigationEntry, ...]) -> list[str]:
    return [
        address
        for entry in entries
        for address in ([entry.address] if entry.address else _addresses(entry.entries))
    ]


@given(st.integers(1, 700), st.booleans())
def test_every_page_stands_in_the_navigation_and_a_list_opens_with_itself(
    count: int, is_listed: bool
) -> None:
    sheets = [
        replace(_page(f"work/{n}.md", f"Job {n}", "The year"), listed_on="work.md")
        for n in range(count)
    ]
    year, dates = _page("year.md", "The year", "The year"), _page("dates.md", "Dates", "The year")
    listing = [replace(_page("work.md", "Work", "The year"), listed_on="work.md")]
    pages = [_page("index.md", "Home"), year, *sheets, *listing * is_listed, dates]
    home, head = navigation(pages)
    assert (home.title, home.address) == ("This week", "index.md")
    assert sorted(_addresses((home, head))) == sorted(page.address for page in pages)
    if is_listed:
        assert [entry.title for entry in head.entries] == ["The year", "Work", "Dates"]
        assert _addresses(head.entries[1:2]) == ["work.md", *(sheet.address for sheet in sheets)]
    else:
        # where the list is not for this reader, what would stand on it stands under the head
        assert _addresses((head,)) == ["year.md", *(sheet.address for sheet in sheets), "dates.md"]


def test_a_list_with_nothing_on_it_is_a_page() -> None:
    entries = navigation([replace(_page("work.md", "Work", "The year"), listed_on="work.md")])
    assert entries == (NavigationEntry("The year", entries=(NavigationEntry("Work", "work.md"),)),)


def test_pages_of_one_head_stand_together_wherever_they_are_in_the_book() -> None:
    pages = [
        _page("a.md", "A", "Places"),
        _page("b.md", "B", "Records"),
        _page("c.md", "C", "Places"),
    ]
    entries = navigation(pages)
    assert [entry.title for entry in entries] == ["Places", "Records"]
    assert _addresses(entries) == ["a.md", "c.md", "b.md"]


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

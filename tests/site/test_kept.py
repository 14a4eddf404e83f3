"""What somebody put into a site's folder, or changed there, is kept: no build replaces it."""

import hashlib
import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from generator.book.model import Book
from generator.site import publish as publishing
from generator.site.mark import SITE_MARK, not_ours
from generator.site.publish import Refused, publish
from tests.full_disk import contents
from tests.site.books import tiny_book


def _book(words: str) -> Book:
    book = tiny_book(words)
    return replace(book, title="Lane &amp; Creek", pages=book.pages[:2])


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    site = tmp_path_factory.mktemp("built") / "site"
    assert publish(_book("one"), site) == ()
    return site


@pytest.fixture
def site(built: Path, tmp_path: Path) -> Path:
    """A site as it was built, for one test alone."""
    return shutil.copytree(built, tmp_path / "site")


def _a_letter(site: Path) -> str:
    (site / "letter.txt").write_text("mine")
    return "letter.txt"


def _a_page_of_notes(site: Path) -> str:
    (site / "search" / "notes.html").write_text("mine")
    return "search/notes.html"


def _a_folder(site: Path) -> str:
    (site / "photos" / "fall").mkdir(parents=True)
    (site / "photos" / "fall" / "buck.jpg").write_bytes(b"mine")
    return "photos/"


def _an_empty_folder(site: Path) -> str:
    (site / "photos").mkdir()
    return "photos/"


def _words_on_a_page(site: Path) -> str:
    with (site / "index.html").open("a") as page:
        page.write("<p>mine</p>")
    return "index.html"


def _a_link_for_a_page(site: Path) -> str:
    (site / "index.html").rename(site.parent / "index.html")
    (site / "index.html").symlink_to(site.parent / "index.html")
    return "index.html"


def _a_hidden_file(site: Path) -> str:
    (site / ".mine").write_text("mine")
    return ".mine"


@pytest.mark.parametrize(
    "put",
    [
        _a_letter,
        _a_page_of_notes,
        _a_folder,
        _an_empty_folder,
        _words_on_a_page,
        _a_link_for_a_page,
        _a_hidden_file,
    ],
)
def test_what_no_build_wrote_is_named_and_kept(site: Path, put: Callable[[Path], str]) -> None:
    name = put(site)
    before = contents(site.parent)
    with pytest.raises(Refused) as refused:
        publish(_book("other"), site)
    assert str(refused.value) == (
        f"{site} holds what no build wrote, or what was changed since: {name}; "
        "move it out of that folder and build again."
    )
    assert contents(site.parent) == before


def test_once_it_is_moved_out_the_next_build_goes_through(site: Path) -> None:
    name = _words_on_a_page(site)
    shutil.move(site / name, site.parent / "mine.html")
    _a_letter(site)
    shutil.move(site / "letter.txt", site.parent)
    assert publish(_book("other"), site) == ()
    assert "The other book." in (site / "index.html").read_text(encoding="utf-8")
    assert (site.parent / "mine.html").read_text(encoding="utf-8").endswith("<p>mine</p>")
    assert not_ours(site) == ()


def test_many_are_told_by_the_first_and_their_number(site: Path) -> None:
    for number in range(5):
        (site / f"{number}.txt").write_text("mine")
    with pytest.raises(Refused, match=r": 0\.txt, 1\.txt, 2\.txt and 2 more; move"):
        publish(_book("other"), site)


def test_what_systems_leave_in_folders_hinders_no_build(site: Path) -> None:
    for name in (".DS_Store", "Thumbs.db", "search/desktop.ini"):
        (site / name).write_bytes(b"\0")
    assert publish(_book("other"), site) == ()


def test_what_is_put_there_while_pages_are_made_is_kept(
    site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    built = publishing.built

    def meanwhile(book: Book, workshop: Path, folder: Path, one_file: Path) -> tuple[str, ...]:
        problems = built(book, workshop, folder, one_file)
        _a_letter(site)
        return problems

    monkeypatch.setattr(publishing, "built", meanwhile)
    with pytest.raises(Refused, match=r"letter\.txt"):
        publish(_book("other"), site)
    assert (site / "letter.txt").read_text() == "mine"
    assert "The one book." in (site / "index.html").read_text(encoding="utf-8")
    assert [path.name for path in site.parent.iterdir()] == ["site"]


def test_a_mark_lists_each_file_as_it_was_built_and_no_time(built: Path) -> None:
    """As sha256sum writes its lists (GNU coreutils manual): digest, two spaces, name."""
    head, listed = (built / SITE_MARK).read_text(encoding="utf-8").split(":\n")
    assert head.splitlines()[1:3] == ["As of 2026-07-12", "Of Lane & Creek"]
    files = sorted(one for one in built.rglob("*") if one.is_file() and one.name != SITE_MARK)
    names = sorted(one.relative_to(built).as_posix() for one in files)
    assert listed.splitlines() == [
        f"{hashlib.sha256((built / name).read_bytes()).hexdigest()}  {name}" for name in names
    ]


@pytest.mark.parametrize("mark", ["", "As of 2026-07-12\n", "Each file with its SHA-256:"])
def test_a_mark_without_a_list_is_replaced_by_nobody(site: Path, mark: str) -> None:
    (site / SITE_MARK).write_text(mark)
    before = contents(site.parent)
    with pytest.raises(Refused, match="of an earlier version, whose mark does not list"):
        publish(_book("other"), site)
    assert contents(site.parent) == before


def test_a_list_that_was_cut_short_keeps_what_it_misses(site: Path) -> None:
    mark = (site / SITE_MARK).read_text(encoding="utf-8")
    (site / SITE_MARK).write_text(mark[: mark.rindex("search/")], encoding="utf-8")
    with pytest.raises(Refused, match="search/"):
        publish(_book("other"), site)

"""A site is put in place whole or not at all, and only where a site of ours may be."""

import fcntl
import shutil
import sys
import time
from dataclasses import replace
from pathlib import Path

import pytest

from generator.book.model import Book
from generator.site import exchange
from generator.site.exchange import WORKSHOP_MARK
from generator.site.mark import SITE_MARK
from generator.site.one_file import file_beside
from generator.site.publish import Refused, publish
from tests.killed import killed
from tests.site.books import tiny_book

KILLS = 10
PUBLISH_FOR_EVER = """
import sys
from pathlib import Path
from generator.site.publish import publish
from tests.site.books import tiny_book
print("ready", flush=True)
while True:
    for words in ("one", "other"):
        publish(tiny_book(words), Path(sys.argv[1]))
"""


def _small_book(words: str) -> Book:
    book = tiny_book(words)
    return replace(book, pages=book.pages[:2])


def _contents(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def _names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def _shown(site: Path) -> str:
    return (site / "index.html").read_text(encoding="utf-8")


def test_a_new_site_replaces_the_old_one_whole(tmp_path: Path) -> None:
    target = tmp_path / "made" / "owner"
    of_another_year = replace(_small_book("one"), pages=tiny_book("one").pages[:3])
    assert publish(of_another_year, target) == ()
    assert (target / "page-2.html").is_file()
    assert publish(_small_book("other"), target) == ()
    assert "The other book." in _shown(target)
    assert not (target / "page-2.html").exists()
    assert _names(target.parent) == ["owner", "owner.html"]


def test_an_empty_folder_is_taken(tmp_path: Path) -> None:
    (tmp_path / "site").mkdir()
    assert publish(_small_book("one"), tmp_path / "site") == ()
    assert (tmp_path / "site" / SITE_MARK).is_file()


@pytest.mark.parametrize(
    ("markdown", "problem"),
    [
        ("[gone](gone.md)", "page-1.html: leads to gone.html, which does not exist."),
        ('<p><a href="index.html#gone">x</a></p>', "page-1.html: leads to index.html#gone, but"),
    ],
)
def test_with_a_problem_the_site_stays_as_it_was(
    tmp_path: Path, markdown: str, problem: str
) -> None:
    target = tmp_path / "site"
    publish(_small_book("one"), target)
    before = _contents(tmp_path)
    book = _small_book("other")
    pages = (book.pages[0], replace(book.pages[1], markdown=f"# Page 1\n\n{markdown}\n"))
    problems = publish(replace(book, pages=pages), target)
    assert len(problems) == 1
    assert problems[0].startswith(problem)
    assert _contents(tmp_path) == before
    assert _names(tmp_path) == ["site", "site.html"]


def test_a_lost_safety_line_keeps_the_old_site(tmp_path: Path) -> None:
    book = _small_book("one")
    pages = (book.pages[0], replace(book.pages[1], safety_keys=("wells",)))
    problems = publish(replace(book, pages=pages), tmp_path / "site")
    assert problems == ("page-1.html: the safety line wells is missing.",)
    assert _names(tmp_path) == []


def _foreign_folder(target: Path) -> None:
    target.mkdir()
    (target / "letter.txt").write_text("mine")


def _foreign_file(target: Path) -> None:
    target.write_text("mine")


def _link_elsewhere(target: Path) -> None:
    (target.parent / "elsewhere").mkdir()
    target.symlink_to("elsewhere")


def _link_to_nothing(target: Path) -> None:
    target.symlink_to("nowhere")


@pytest.mark.parametrize("put", [_foreign_folder, _foreign_file, _link_elsewhere, _link_to_nothing])
def test_what_is_not_ours_is_refused_and_left_alone(tmp_path: Path, put: object) -> None:
    assert callable(put)
    target = tmp_path / "site"
    put(target)
    before = sorted(path.name for path in tmp_path.rglob("*"))
    with pytest.raises(Refused) as refused:
        publish(_small_book("one"), target)
    assert str(refused.value).count(".") == 1
    assert str(target) in str(refused.value)
    assert sorted(path.name for path in tmp_path.rglob("*")) == before


def test_a_target_under_a_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine")
    with pytest.raises(Refused, match="cannot be written"):
        publish(_small_book("one"), tmp_path / "file" / "site")


@pytest.mark.parametrize("where", [".", "site", "deep/in/it", ".."])
def test_the_property_folder_is_never_written_to(tmp_path: Path, where: str) -> None:
    ground = tmp_path / "outer" / "ground"
    ground.mkdir(parents=True)
    (tmp_path / "link").symlink_to(ground)
    for folder in (ground, tmp_path / "link"):
        with pytest.raises(Refused, match="property folder"):
            publish(_small_book("one"), ground / where, property_folder=folder)
    assert list(ground.iterdir()) == []
    assert _names(tmp_path / "outer") == ["ground"]


def test_beside_the_property_folder_is_fine(tmp_path: Path) -> None:
    ground = tmp_path / "ground"
    ground.mkdir()
    target = tmp_path / "ground-handbook" / "owner"
    assert publish(_small_book("one"), target, property_folder=ground) == ()


def _without_exchange(_one: Path, _other: Path) -> bool:
    return False


def test_where_the_system_cannot_exchange_two_renames_do(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(exchange, "exchange_at_once", _without_exchange)
    for words in ("one", "other"):
        assert publish(_small_book(words), tmp_path / "site") == ()
    assert "The other book." in _shown(tmp_path / "site")
    assert _names(tmp_path) == ["site", "site.html"]


def test_an_exchange_that_stopped_between_two_renames_is_undone(tmp_path: Path) -> None:
    target = tmp_path / "site"
    publish(_small_book("one"), target)
    workshop = tmp_path / ".site.building-killed"
    workshop.mkdir()
    (workshop / WORKSHOP_MARK).write_text("")
    target.rename(workshop / "old")
    broken = replace(_small_book("other"), pages=tiny_book("other").pages[1:2])
    assert publish(broken, target) != ()
    assert "The one book." in _shown(target)
    assert _names(tmp_path) == ["site", "site.html"]


def test_only_marked_leftovers_that_nobody_holds_are_removed(tmp_path: Path) -> None:
    for name in ("killed", "alive", "foreign", "empty"):
        (tmp_path / f".site.building-{name}").mkdir()
    (tmp_path / ".site.building-foreign" / "letter.txt").write_text("mine")
    (tmp_path / ".site.building-killed" / WORKSHOP_MARK).write_text("")
    (tmp_path / ".site.building-killed" / "half a page.html").write_text("<p>")
    with (tmp_path / ".site.building-alive" / WORKSHOP_MARK).open("w") as held:
        fcntl.flock(held, fcntl.LOCK_EX)
        publish(_small_book("one"), tmp_path / "site")
    left = sorted(path.name for path in tmp_path.iterdir())
    assert left == [".site.building-alive", ".site.building-foreign", "site", "site.html"]


def test_the_mark_of_a_workshop_goes_last(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    removed: list[str] = []
    remove = shutil.rmtree

    def noting(path: Path, ignore_errors: bool) -> None:
        removed.append(path.name)
        assert path.name in ("build", "site", "old") or [*path.iterdir()] == [path / WORKSHOP_MARK]
        remove(path, ignore_errors)

    monkeypatch.setattr(shutil, "rmtree", noting)
    publish(_small_book("one"), tmp_path / "site")
    assert [name.partition("-")[0] for name in removed] == ["build", ".site.building"]


def test_folder_names_are_not_patterns(tmp_path: Path) -> None:
    (tmp_path / ".x.building-killed").mkdir()
    (tmp_path / ".x.building-killed" / WORKSHOP_MARK).write_text("")
    assert publish(_small_book("one"), tmp_path / "[xyz]") == ()
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        ".x.building-killed",
        "[xyz]",
        "[xyz].html",
    ]


def test_exchanging_at_once_leaves_both_folders_whole(tmp_path: Path) -> None:
    for name in ("a", "b"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "file").write_text(name)
    exchanged = exchange.exchange_at_once(tmp_path / "a", tmp_path / "b")
    assert exchanged == (sys.platform == "linux")
    assert (tmp_path / "a" / "file").read_text() == ("b" if exchanged else "a")
    assert not exchange.exchange_at_once(tmp_path / "a", tmp_path / "gone")
    assert (tmp_path / "a" / "file").exists()


def _kill_while_publishing(target: Path, kills: int, seed: int) -> None:
    sites, files, file = [], [], file_beside(target)
    for words in ("one", "other"):
        assert publish(tiny_book(words), target) == ()
        sites.append(_contents(target))
        files.append(file.read_bytes())
    for _ in killed(PUBLISH_FOR_EVER, target, kills=kills, seed=seed, within_s=1.5):
        assert _contents(target) in sites
        assert file.read_bytes() in files
    # The second process of the build killed last ends a moment after the first.
    time.sleep(0.5)
    assert publish(tiny_book("one"), target) == ()
    assert _names(target.parent) == [target.name, file.name]


def test_killed_at_any_moment_the_last_good_site_stands(tmp_path: Path) -> None:
    _kill_while_publishing(tmp_path / "site", KILLS, seed=1)


@pytest.mark.long
def test_killed_many_times_the_last_good_site_stands(tmp_path: Path) -> None:
    _kill_while_publishing(tmp_path / "site", 200, seed=2)

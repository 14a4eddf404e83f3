"""The built site: whole, the same everywhere, and the same pages plain MkDocs would make."""

import json
import os
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from generator.book.model import Book, Page, SearchRecord
from generator.in_two import TWO_FROM
from generator.site.build import built
from generator.site.links import check_links, read_file
from generator.site.stage import stage
from tests.site.books import book_of

COLD = """
import sys
from pathlib import Path
from generator.site.build import built
from generator.site.stage import stage
from tests.site.books import book_of
folder, book = Path(sys.argv[1]), book_of(int(sys.argv[2]))
stage(book, folder / "tree")
print(built(book, folder / "build", folder / "site"))
"""


def _contents(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def _built(book: Book, folder: Path) -> Path:
    assert built(book, folder / "build", folder / "site") == ()
    return folder / "site"


def _with_page(markdown: str) -> Book:
    book = book_of(1)
    extra = Page("extra.md", "Extra", "", markdown, SearchRecord("Extra", ""))
    return replace(book, pages=(*book.pages, extra))


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return _built(book_of(TWO_FROM + 3), tmp_path_factory.mktemp("built"))


def test_every_page_is_written_and_every_link_of_it_leads_somewhere(site: Path) -> None:
    book = book_of(TWO_FROM + 3)
    names = [path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()]
    whole = {
        name: read_file(name, (site / name).read_text(encoding="utf-8"))
        for name in names
        if name.endswith((".html", ".css", ".svg"))
    }
    assert {page.address.removesuffix(".md") + ".html" for page in book.pages} <= set(names)
    # read once more as it lies there, frames and all, as the build did not
    assert check_links(names, whole) == ()


def test_nothing_is_published_that_no_page_needs(site: Path) -> None:
    names = set(_contents(site))
    assert not [name for name in names if name.endswith((".map", ".gz", ".xml", ".yml", ".md"))]
    assert not [name for name in names if "lunr" in name or "book.json" in name]
    assert {"search/search_index.js", "search/search_index.json", "figures/plan.svg"} <= names


def test_search_has_one_record_a_page_from_our_own_data(site: Path) -> None:
    data = (site / "search" / "search_index.json").read_text(encoding="utf-8")
    index = json.loads(data)
    locations = [record["location"] for record in index["docs"]]
    assert len(locations) == len(set(locations)) == TWO_FROM + 5
    assert all((site / location).is_file() for location in locations)
    assert index["config"]["lang"] == ["en"]
    script = (site / "search" / "search_index.js").read_text(encoding="utf-8")
    assert script == f"var __index = {data}"


def test_the_emergency_page_is_one_tap_from_every_page(site: Path) -> None:
    for path in site.rglob("*.html"):
        up = "../" * (len(path.relative_to(site).parts) - 1)
        link = f'<a class="to-emergency" href="{up}emergency.html">'
        assert link in path.read_text(encoding="utf-8"), path


def test_without_an_emergency_page_there_is_no_link_to_one(tmp_path: Path) -> None:
    book = book_of(1)
    pages = tuple(page for page in book.pages if page.address != "emergency.md")
    site = _built(replace(book, pages=pages), tmp_path)
    assert "emergency.html" not in (site / "index.html").read_text(encoding="utf-8")


def test_one_process_and_two_write_the_same_site(
    site: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("generator.in_two.TWO_FROM", 10_000)
    one = _built(book_of(TWO_FROM + 3), tmp_path)
    assert _contents(one) == _contents(site)


@pytest.mark.parametrize(
    "elsewhere",
    [
        {"TZ": "Pacific/Auckland", "LC_ALL": "C", "PYTHONHASHSEED": "1", "PYTHONUTF8": "0"},
        {"TZ": "America/Chicago", "LC_ALL": "C.UTF-8", "PYTHONHASHSEED": "2", "PYTHONUTF8": "1"},
    ],
)
def test_the_same_book_gives_the_same_tree_and_site_elsewhere(
    site: Path, tmp_path: Path, elsewhere: dict[str, str]
) -> None:
    folder = tmp_path / "another place"
    said = subprocess.run(
        [sys.executable, "-c", COLD, str(folder), str(TWO_FROM + 3)],
        env=os.environ | elsewhere,
        check=True,
        capture_output=True,
        text=True,
    )
    assert (said.stdout.strip(), said.stderr) == ("()", "")
    assert _contents(folder / "site") == _contents(site)
    here = stage(book_of(TWO_FROM + 3), tmp_path / "tree")
    assert _contents(folder / "tree") == _contents(here)


def test_plain_mkdocs_makes_the_same_pages_from_the_tree_wherever_it_is(tmp_path: Path) -> None:
    book = book_of(3)
    site = _built(book, tmp_path)
    moved = stage(book, tmp_path / "tree").rename(tmp_path / "moved away")
    plain = tmp_path / "plain"
    subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict", "--site-dir", str(plain)],
        cwd=moved,
        env=os.environ | {"NO_MKDOCS_2_WARNING": "1", "SOURCE_DATE_EPOCH": "1783814400"},
        check=True,
    )
    for page in book.pages:
        name = page.address.removesuffix(".md") + ".html"
        assert (plain / name).read_bytes() == (site / name).read_bytes()
    records = json.loads((plain / "search" / "search_index.json").read_text(encoding="utf-8"))
    assert {"index.html", "work/job-1.html"} <= {record["location"] for record in records["docs"]}


@pytest.mark.parametrize("bad_page", ["work/job-1.md", "work/job-2.md"])
def test_a_page_that_cannot_be_made_is_told_by_either_process(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, bad_page: str
) -> None:
    monkeypatch.setattr("generator.in_two.TWO_FROM", 1)
    pages = tuple(
        replace(page, markdown=None) if page.address == bad_page else page  # type: ignore[arg-type]
        for page in book_of(4).pages
    )
    with pytest.raises(TypeError):
        built(replace(book_of(4), pages=pages), tmp_path / "build", tmp_path / "site")


def test_settings_that_cannot_be_read_are_a_problem(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    settings = {"site_name": "A", "docs_dir": "docs", "theme": {"name": "none-such"}}
    monkeypatch.setattr("generator.site.build.settings_of", lambda _: settings)
    problems = built(book_of(1), tmp_path / "build", tmp_path / "site")
    assert any("none-such" in problem for problem in problems)


def test_template_markup_in_a_page_is_only_text(tmp_path: Path) -> None:
    site = _built(_with_page("# Extra\n\n{{ 1 + 1 }} {% if %} &lt;b&gt;\n"), tmp_path)
    html = (site / "extra.html").read_text(encoding="utf-8")
    assert "{{ 1 + 1 }} {% if %} &lt;b&gt;" in html


@pytest.mark.parametrize("before", [None, "1"])
def test_the_environment_is_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, before: str | None
) -> None:
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    if before:
        monkeypatch.setenv("SOURCE_DATE_EPOCH", before)
    _built(book_of(1), tmp_path)
    assert os.environ.get("SOURCE_DATE_EPOCH") == before


def test_the_footer_tells_the_day_and_the_reader(site: Path) -> None:
    html = (site / "work" / "job-1.html").read_text(encoding="utf-8")
    foot = re.sub(r"\s+", " ", html[html.index('<footer class="foot">') :])
    assert "As of Jul 12, 2026. Made for owner. Check the product label." in foot

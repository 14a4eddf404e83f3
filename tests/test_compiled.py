"""Compiled templates that are kept: never stale, never half, never needed."""

import sys
from pathlib import Path

import pytest
from jinja2 import Environment, FileSystemLoader

from generator.compiled import Compiled
from generator.kept import Store


def rendered(pages: Path, kept: Path, text: str | None = None) -> str:
    """What the one page says to a new process, its text written first where one is given."""
    if text is not None:
        (pages / "page.jinja").write_text(text, encoding="utf-8")
    environment = Environment(
        loader=FileSystemLoader(pages),
        bytecode_cache=Compiled("test", Store(kept)),
        autoescape=True,
    )
    return environment.get_template("page.jinja").render()


@pytest.fixture
def pages(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(sys, "dont_write_bytecode", False)
    folder = tmp_path / "pages"
    folder.mkdir()
    return folder


def test_one_file_is_kept_and_read_again(pages: Path, tmp_path: Path) -> None:
    kept = tmp_path / "kept"
    assert rendered(pages, kept, "one {{ 1 + 1 }}") == "one 2"
    (file,) = kept.iterdir()
    before = file.stat().st_mtime_ns
    assert rendered(pages, kept) == "one 2"
    assert file.stat().st_mtime_ns == before


def test_a_changed_template_is_compiled_anew(pages: Path, tmp_path: Path) -> None:
    kept = tmp_path / "kept"
    rendered(pages, kept, "one")
    assert rendered(pages, kept, "two") == "two"
    assert rendered(pages, kept, "one") == "one"
    assert len(list(kept.iterdir())) == 2


def test_a_template_is_known_by_its_name_wherever_its_folder_lies(tmp_path: Path) -> None:
    kept = Compiled("one", Store(tmp_path))
    here = kept.get_cache_key("page.html", "/a/page.html")
    assert (
        here == kept.get_cache_key("page.html", "/b/page.html") == kept.get_cache_key("page.html")
    )
    assert here != kept.get_cache_key("other.html", "/a/page.html")

"""`mkdocs build` and `mkdocs serve`, typed in a checkout, show the demo property's own book."""

import os
import shutil
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path
from typing import Any

import pytest

from generator.book.content import chapters
from generator.book.make import make_book
from generator.site.publish import publish
from tests.book.sites import CHECKOUT, DEMO, plans_of
from tests.properties import small_property, write_property

PARTS = ("generator", "content", "site_templates")
UNFILLED = ("{{", "{%", "value(&quot;", 'value("')


def _checkout(folder: Path, demo: Path) -> Path:
    """A copy of the checkout, as far as MkDocs looks at it, with a demo property of the test's."""
    for name in PARTS:
        shutil.copytree(CHECKOUT / name, folder / name)
    shutil.copytree(demo, folder / "demo_property")
    for name in ("mkdocs.yml", "pyproject.toml"):
        shutil.copy2(CHECKOUT / name, folder / name)
    (folder / "temp").mkdir()
    return folder


def _environment(checkout: Path) -> dict[str, str]:
    return os.environ | {
        "PYTHONPATH": str(checkout), "TMPDIR": str(checkout / "temp"), "NO_MKDOCS_2_WARNING": "1"
    }  # fmt: skip


def _typed(checkout: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "mkdocs", *words],
        cwd=checkout, env=_environment(checkout), capture_output=True, text=True, check=False,
    )  # fmt: skip


def _pages(site: Path) -> dict[str, str]:
    found = sorted(site.rglob("*.html"))
    return {one.relative_to(site).as_posix(): one.read_text(encoding="utf-8") for one in found}


def _assert_filled(checkout: Path) -> dict[str, str]:
    """The pages that were made, none of which has text of a template, with nothing left behind."""
    pages = _pages(checkout / "site")
    for name, html in pages.items():
        assert not [one for one in UNFILLED if one in html], name
    assert list((checkout / "temp").iterdir()) == []
    return pages


@pytest.fixture
def small(tmp_path: Path) -> Path:
    return write_property(tmp_path / "small", small_property())


def test_mkdocs_build_fills_the_values_in(small: Path, tmp_path: Path) -> None:
    checkout = _checkout(tmp_path / "checkout", small)
    done = _typed(checkout, "build", "--strict")
    assert done.returncode == 0, done.stderr
    pages = _assert_filled(checkout)
    assert "Small bend" in pages["index.html"]
    assert {f"chapters/{one.name}.html" for one in chapters()} <= pages.keys()


@pytest.mark.long
def test_a_fault_of_the_demo_property_is_told_and_nothing_is_built(
    small: Path, tmp_path: Path
) -> None:
    (small / "stands.yaml").write_text("stands:\n  - {name: Oak}\n", encoding="utf-8")
    checkout = _checkout(tmp_path / "checkout", small)
    done = _typed(checkout, "build")
    assert done.returncode == 1
    assert "Error: The demo property makes no book." in done.stderr
    assert "stands.yaml:2:" in done.stderr
    assert "Traceback" not in done.stderr
    assert not (checkout / "site").exists()
    assert list((checkout / "temp").iterdir()) == []


@pytest.mark.long
def test_mkdocs_build_makes_the_pages_of_our_own_build_to_the_byte(tmp_path: Path) -> None:
    checkout = _checkout(tmp_path / "checkout", DEMO)
    done = _typed(checkout, "build", "--strict")
    assert done.returncode == 0, done.stderr
    plain = _assert_filled(checkout)
    assert publish(make_book(plans_of(DEMO)["owner"]), tmp_path / "ours") == ()
    made = _pages(tmp_path / "ours")
    assert plain.keys() - made.keys() == {"404.html"}
    assert {name: plain[name] for name in made} == made


def _page(address: str, holding: str) -> str:
    """A page as it is served, once it holds the words; waits a minute and more for it."""
    found: Any = None
    for _ in range(180):
        try:
            with urllib.request.urlopen(address, timeout=5) as answer:
                found = answer.read().decode()
        except OSError as error:
            found = error
        if isinstance(found, str) and holding in found:
            return found
        time.sleep(1)
    raise AssertionError(f"{address} holds no {holding!r}: {found}")


@pytest.mark.long
def test_mkdocs_serve_shows_the_book_and_what_is_changed_in_a_chapter(
    small: Path, tmp_path: Path
) -> None:
    checkout = _checkout(tmp_path / "checkout", small)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [sys.executable, "-m", "mkdocs", "serve", "-a", f"127.0.0.1:{port}"]
    with subprocess.Popen(
        command,
        cwd=checkout,
        env=_environment(checkout),
        stderr=subprocess.DEVNULL,
        # as a terminal starts it: whoever runs the tests in the background has told them to go on
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    ) as serving:
        try:
            assert "{{" not in _page(f"http://127.0.0.1:{port}/index.html", "Small bend")
            chapter = checkout / "content" / "chapters" / "fire.md"
            with chapter.open("a", encoding="utf-8") as text:
                text.write("\nThe owls are back.\n")
            _page(f"http://127.0.0.1:{port}/chapters/fire.html", "The owls are back.")
        finally:
            serving.send_signal(signal.SIGINT)
            serving.wait(timeout=60)
    assert list((checkout / "temp").iterdir()) == []

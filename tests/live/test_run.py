"""`handbook serve` as it is run: pages while one types, a clean end, nothing left behind."""

import os
import re
import signal
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser, expect

from generator.cli import main
from generator.live.watching import files_of
from tests.properties import small_property, write_property

PATIENCE_S = 60


@contextmanager
def serving(land: Path, work: Path, *words: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """A server of a property folder, with its address."""
    command = (sys.executable, "-m", "generator", "serve", str(land), "--no-browser", *words)
    process = subprocess.Popen(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        env=os.environ | {"TMPDIR": str(work), "PYTHONUNBUFFERED": "1"},
    )
    assert process.stdout is not None
    try:
        for line in process.stdout:
            if found := re.search(r"http://\S+", line):
                yield process, found[0]
                break
        else:
            pytest.fail("it served nothing")
    finally:
        process.kill()
        process.stdout.close()
        process.wait()


@pytest.fixture
def land(tmp_path: Path) -> Path:
    return write_property(tmp_path / "land", small_property())


def _note(land: Path, words: str) -> None:
    file = land / "screens.yaml"
    noted = rf"\1note: {words}\n\1width_ft:"
    file.write_text(re.sub(r"(?m)^( +)width_ft:", noted, file.read_text(), count=1))


@pytest.mark.parametrize("end", [signal.SIGINT, signal.SIGTERM])
def test_it_serves_until_it_is_stopped_and_leaves_nothing(
    land: Path, tmp_path: Path, end: signal.Signals
) -> None:
    work = tmp_path / "work"
    work.mkdir()
    before = files_of(land)
    with serving(land, work) as (process, address):
        html = urllib.request.urlopen(f"{address}index.html", timeout=PATIENCE_S).read().decode()
        assert "/.live.js" in html
        assert len(list(work.iterdir())) == 1
        process.send_signal(end)
        assert process.wait(PATIENCE_S) == 0
    assert list(work.iterdir()) == []
    assert files_of(land) == before


def test_a_port_that_is_taken_is_told_in_a_sentence(land: Path, tmp_path: Path) -> None:
    with serving(land, tmp_path) as (_, address):
        port = address.rstrip("/").rpartition(":")[2]
        done = subprocess.run(
            [sys.executable, "-m", "generator", "serve", str(land), "--port", port, "--no-browser"],
            capture_output=True, text=True, check=False, timeout=PATIENCE_S,
        )  # fmt: skip
    assert done.returncode == 1
    assert done.stderr.startswith("Error: The pages cannot be shown: ")
    assert "Traceback" not in done.stderr


def test_a_reader_who_is_nobody_is_refused_at_once(land: Path) -> None:
    result = CliRunner().invoke(main, ["serve", str(land), "--no-browser", "--for", "nobody"])
    assert result.exit_code == 2
    assert "There is no reader nobody." in result.stderr


@pytest.mark.parametrize("port", ["0", "65536", "eighty", "-1", "٣", "9" * 400])
def test_what_is_no_port_is_refused_in_words(land: Path, port: str) -> None:
    result = CliRunner().invoke(main, ["serve", str(land), "--no-browser", f"--port={port}"])
    assert result.exit_code == 2
    assert "is not a port from 1 to 65535." in result.stderr


def test_an_open_page_shows_itself_anew_and_what_is_wrong(
    land: Path, tmp_path: Path, browser: Browser
) -> None:
    with serving(land, tmp_path) as (_, address):
        page = browser.new_page()
        page.goto(f"{address}places/lane.html")
        _note(land, "Open on the west side")
        expect(page.locator("article")).to_contain_text("Open on the west side", timeout=20_000)
        good = (land / "screens.yaml").read_text()
        (land / "screens.yaml").write_text(good.replace("width_ft: ", "width_ft: wide "))
        expect(page.get_by_role("alert")).to_contain_text("screens.yaml:", timeout=20_000)
        expect(page.locator("article")).to_contain_text("Open on the west side")
        (land / "screens.yaml").write_text(good)
        expect(page.get_by_role("alert")).to_have_count(0, timeout=20_000)
        page.close()


def test_a_change_is_seen_by_time_size_or_file(tmp_path: Path) -> None:
    folder = tmp_path / "land"
    (folder / "log").mkdir(parents=True)
    (folder / ".git").mkdir()
    file = folder / "a.yaml"
    file.write_text("a")
    seen = files_of(folder)
    assert files_of(folder) == seen
    (folder / ".git" / "index").write_text("x")
    (folder / ".a.yaml.swp").write_text("x")
    assert files_of(folder) == seen
    file.write_text("ab")
    assert files_of(folder) != seen
    seen = files_of(folder)
    time.sleep(0.01)
    (folder / "log" / "one.yaml").write_text("x")
    assert files_of(folder) != seen
    seen = files_of(folder)
    with tempfile.NamedTemporaryFile(dir=tmp_path, delete=False) as other:
        other.write(b"ab")
    os.replace(other.name, file)  # noqa: PTH105 - as editors do
    assert files_of(folder) != seen

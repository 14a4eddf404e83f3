"""What every test may use, and the times by part at the end of a run."""

from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

from generator import run_day
from tests.book.sites import DEMO, Site, build_sites
from tests.chromium import LAUNCH_FLAGS, find_chromium
from tests.quick.seconds import note

# The property tests check answers; how long one takes depends on what else the machine does.
settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")


COLLECTED = pytest.StashKey[frozenset[Path]]()


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Keep which files hold tests that pytest found, before any are left out of the run."""
    config.stash[COLLECTED] = frozenset(item.path for item in items)


@pytest.fixture
def collected_files(pytestconfig: pytest.Config) -> frozenset[Path]:
    """The files in which pytest found tests, whether this run takes them or not."""
    return pytestconfig.stash[COLLECTED]


@pytest.fixture(autouse=True)
def _no_clock(monkeypatch: pytest.MonkeyPatch) -> None:
    """No test goes by the day it runs on: one that asks for it fails."""

    def asked() -> None:
        raise AssertionError("a test asks the clock for the day: give --as-of")

    monkeypatch.setattr(run_day, "_today", asked)


@pytest.fixture(scope="session")
def chromium() -> Path:
    """The program of the Chromium that the browser tests run."""
    try:
        return find_chromium()
    except FileNotFoundError as missing:
        pytest.fail(str(missing), pytrace=False)


@pytest.fixture(scope="session")
def browser(chromium: Path) -> Iterator[Browser]:
    """A headless Chromium with an empty profile, one for each worker."""
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(
            executable_path=chromium, headless=True, args=LAUNCH_FLAGS
        )
        yield started
        started.close()


@pytest.fixture(scope="session")
def demo_sites(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Site]:
    """The demo property's site for each of its readers, built once for each worker."""
    return build_sites(DEMO, tmp_path_factory.mktemp("demo handbook"))


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Prints the seconds spent in each folder of tests/, summed over the workers."""
    seconds: defaultdict[str, float] = defaultdict(float)
    of_files: defaultdict[str, float] = defaultdict(float)
    for reports in terminalreporter.stats.values():
        for report in reports:
            if isinstance(report, pytest.TestReport):
                seconds[_part(report.nodeid)] += report.duration
                of_files[report.nodeid.split("::")[0]] += report.duration
    if seconds:
        terminalreporter.section("times by part")
    for part in sorted(seconds):
        terminalreporter.write_line(f"{seconds[part]:8.1f} s  {part}")
    note(of_files)


def _part(nodeid: str) -> str:
    folders = PurePosixPath(nodeid.split("::")[0]).parts
    return "/".join(folders[:2])

"""The one file of each reader of the demo property: its size, and how soon it answers on a phone.

Sizes decide how the run ends; times are of Chromium slowed four times, and are told.
"""

import shutil
import time
from pathlib import Path

from playwright.sync_api import CDPSession, Page, sync_playwright

from generator.site.one_file import file_beside
from tests.chromium import LAUNCH_FLAGS, find_chromium

# Of a million bytes: what a message or a small disk counts in.
MB = 1_000_000
# What the first books of one file were held to, and what winds and drawings may add to them since.
_FIRST_MB = {"hired-sprayer": 0.6, "hired-driller": 0.6, "hunting-partner": 1.0, "owner": 5.0}
_WINDS_AND_DRAWINGS = 1.4
MOST_MB = {name: most * _WINDS_AND_DRAWINGS for name, most in _FIRST_MB.items()}
SLOWED = 4
PHONE = {"width": 390, "height": 844}
SHARE = 12
FIRST_S, TURN_MS, SEARCH_MS = 1.5, 150, 300
ASKED = ("s", "spray record", "when can i spray the lane", "grass")
# A hit, or a page turned to, counts until the frame after it is drawn. Of a page the least of three
# turns, since the machine does other work too; of all pages a share, and the ten largest.
TURNS = """async (step) => {
  const pages = JSON.parse(document.getElementById("book").textContent).pages;
  const texts = [...document.querySelectorAll("noscript")].map((text) => text.textContent.length);
  const large = [...texts].sort((one, other) => other - one)[Math.min(10, texts.length - 1)];
  const drawn = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  const turnTo = async (name) => {
    const begun = performance.now();
    const turned = new Promise((done) => addEventListener("turned", done, { once: true }));
    location.hash = "#" + name;
    await turned;
    await drawn();
    return performance.now() - begun;
  };
  const taken = [];
  const wanted = (name, number) =>
    name !== "safety" && (number % step === step - 1 || texts[number] > large);
  for (const [name] of pages.filter(([name], number) => wanted(name, number))) {
    const times = [];
    for (let turn = 0; turn < 3; turn += 1) {
      await turnTo("safety");
      times.push(await turnTo(name));
    }
    taken.push(Math.min(...times));
  }
  return taken.sort((one, other) => one - other);
}"""
SEARCHES = """async (asked) => {
  const drawn = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  document.getElementById("__search").click();
  const box = document.getElementById("find");
  const taken = [];
  for (const words of asked) {
    const begun = performance.now();
    box.value = words;
    box.dispatchEvent(new Event("input"));
    await drawn();
    taken.push(performance.now() - begun);
  }
  return Math.max(...taken);
}"""


def sizes_mb(books: Path) -> dict[str, float]:
    """The size of each reader's file among books."""
    return {name: file_beside(books / name).stat().st_size / MB for name in MOST_MB}


def on_a_phone(books: Path, name: str, empty: Path) -> str:
    """Open a file alone in an empty folder on a slowed phone, and tell its times."""
    empty.mkdir()
    alone = Path(shutil.copy(file_beside(books / name), empty))
    program = find_chromium()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=LAUNCH_FLAGS)
        context = browser.new_context(viewport=PHONE, is_mobile=True, has_touch=True)  # type: ignore[arg-type]  # a size
        page = context.new_page()
        told = _timed(page, context.new_cdp_session(page), alone.as_uri())
        browser.close()
    return f"{name}: {told}"


def _timed(page: Page, session: CDPSession, address: str) -> str:
    session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    firsts = []
    for _ in range(3):
        page.goto("about:blank")
        begun = time.perf_counter()
        page.goto(address)
        page.locator("article h1").wait_for()
        firsts.append(time.perf_counter() - begun)
    turns = page.evaluate(TURNS, SHARE)
    search = page.evaluate(SEARCHES, list(ASKED))
    return (
        f"first page {min(firsts):.2f} s (aim {FIRST_S}), a page turned to "
        f"{turns[len(turns) // 2]:.0f} ms, the slowest {turns[-1]:.0f} ms (aim {TURN_MS}), "
        f"the slowest search {search:.0f} ms (aim {SEARCH_MS})"
    )

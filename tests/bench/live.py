"""Times rounds of a preview in a process of its own: a note typed, and the page it stands on made.

Run with a property folder it prints the seconds of the quickest round to the page looked at and to
the last one, and the most memory that the process held.
"""

import gc
import json
import re
import shutil
import sys
import tempfile
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(CHECKOUT))

from generator.inventory.known import Known  # noqa: E402 - after the path above
from generator.inventory.load import Loaded, load_inventory  # noqa: E402 - after the path above
from generator.live.preview import Preview, Renewed  # noqa: E402 - after the path above
from generator.live.told import Told  # noqa: E402 - after the path above
from generator.plan.build.season_plan import make_plan  # noqa: E402 - after the path above
from generator.plan.model.plan import Plan  # noqa: E402 - after the path above
from tests.bench.planning import AS_OF  # noqa: E402 - after the path above

ROUNDS = 5
# Its first line, and all lines up to the next screen or to a note of its own.
_SCREEN = re.compile(
    r"^(?P<lead> *)- id: (?P<id>\S+)\n(?:(?!(?P=lead)- id: |(?P=lead)  note: ).*\n)*", re.MULTILINE
)
_MOST_HELD = re.compile(r"^VmHWM:\s+(\d+) kB", re.MULTILINE)


def without_a_note(text: str) -> re.Match[str]:
    """The first screen of a file that has no note."""
    for found in _SCREEN.finditer(text):
        if not text[found.end() :].startswith(f"{found['lead']}  note: "):
            return found
    raise ValueError("every screen has a note")


def rounds(folder: Path, work: Path) -> tuple[list[Renewed], str]:
    """Preview a copy of a property, and type a note again and again."""
    land, pages = work / "land", work / "pages"
    shutil.copytree(folder, land)
    pages.mkdir()
    known, told = Known(), Told()

    def read() -> Loaded:
        return load_inventory(land, known=known)

    def planned(loaded: Loaded) -> Plan:
        assert loaded.inventory is not None
        return make_plan(loaded.inventory, loaded.inventory.property.season, AS_OF)

    preview = Preview(read, planned, pages, told)
    preview.renew(lambda: False)
    file = land / "screens.yaml"
    text = file.read_text(encoding="utf-8")
    screen = without_a_note(text)
    told.look_at(f"places/{screen['id']}.html")
    at, found = screen.end("id") + 1, []
    for number in range(ROUNDS):
        gc.collect()  # as between two rounds of the command
        note = f"{screen['lead']}  note: typed {number}\n"
        file.write_text(text[:at] + note + text[at:], encoding="utf-8")
        renewed = preview.renew(lambda: False)
        assert renewed is not None, told.faults
        assert renewed.looked_at_s is not None
        found.append(renewed)
    return found, (preview.site / f"places/{screen['id']}.html").read_text(encoding="utf-8")


def taken(folder: Path) -> dict[str, float]:
    """The quickest round in seconds, and the most memory held in megabytes, 0 where not told."""
    # as in a command, which does without the collector while somebody waits
    gc.disable()
    with tempfile.TemporaryDirectory() as work:
        found, page = rounds(folder, Path(work))
    assert f"typed {ROUNDS - 1}" in page
    status = Path("/proc/self/status")
    held = _MOST_HELD.search(status.read_text()) if status.is_file() else None
    return {
        "looked_at_s": min(one.looked_at_s or 0.0 for one in found),
        "whole_s": min(one.whole_s for one in found),
        "memory_mb": int(held[1]) / 1024 if held else 0.0,
    }


if __name__ == "__main__":
    print(json.dumps(taken(Path(sys.argv[1]))))

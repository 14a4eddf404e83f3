"""What the files of tests took when they were last run, kept in build/."""

import json
from collections.abc import Mapping
from pathlib import Path

KEPT = Path(__file__).resolve().parents[2] / "build" / "seconds.json"


def known() -> dict[str, float]:
    """Return the seconds that each file of tests took last, by its path in the checkout."""
    return json.loads(KEPT.read_text(encoding="utf-8")) if KEPT.is_file() else {}


def note(seconds: Mapping[str, float]) -> None:
    """Keep what files of tests took in this run; what is known of others stays.

    A run of a few tests of a file says less than one of all of them, so the longest is kept.
    """
    if not seconds:
        return
    KEPT.parent.mkdir(exist_ok=True)
    before = known()
    rounded = {name: round(max(took, before.get(name, 0)), 2) for name, took in seconds.items()}
    fresh = KEPT.with_suffix(".tmp")
    fresh.write_text(json.dumps(before | rounded, indent=0, sort_keys=True), encoding="utf-8")
    fresh.replace(KEPT)

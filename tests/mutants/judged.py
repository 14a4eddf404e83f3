"""What survives against what the committed list says of it."""

from collections import Counter
from collections.abc import Mapping
from typing import Any

import yaml

from tests.mutants.changes import Change, Key
from tests.mutants.targets import EXPLAINED, LISTED

Became = Mapping[str, tuple[Change, Mapping[str, Any]]]


def listed() -> tuple[dict[Key, str], dict[str, int]]:
    """Return the survivors that are explained, each with its reason, and the counts of others."""
    content = yaml.safe_load(LISTED.read_text(encoding="utf-8"))
    explained = {
        Key(module, one["function"], one["before"], one["after"], one.get("nth", 1)): one["why"]
        for module, entries in content["explained"].items()
        for one in entries
    }
    return explained, content["counted"]


def told(results: Mapping[str, Became], *, whole: bool) -> int:
    """Print the survivors and what the list says otherwise; return what to end with.

    Where only some changes of the modules were tried, their survivors are printed alone.
    """
    explained, counted = listed()
    faults = []
    for module, became in results.items():
        alive = [change for change, one in became.values() if "survived" in one]
        for change in alive:
            reason = explained.get(change.key)
            word = "explained" if reason else "survives"
            if module in EXPLAINED and not reason:
                faults.append(f"not in the list: {change.key}")
            if not reason:
                print(f"generator/{module.replace('.', '/')}.py:{change.line} {word}: {change.key}")
        if module in EXPLAINED:
            gone = {one for one in explained if one.module == module} - {one.key for one in alive}
            faults += [f"in the list, and survives no more: {one}" for one in gone]
        elif len(alive) != counted.get(module, 0):
            faults.append(
                f"{module}: {len(alive)} survive, the list counts {counted.get(module, 0)}"
            )
    _count(results)
    if not whole:
        return 0
    print(*sorted(faults), sep="\n")
    return 1 if faults else 0


def _count(results: Mapping[str, Became]) -> None:
    ends = Counter("survived" in one for became in results.values() for _, one in became.values())
    print(f"{ends.total()} changes: {ends[False]} noticed, {ends[True]} survive")

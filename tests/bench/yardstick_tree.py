"""A tree of pages that stays as it is, for plain MkDocs to be timed with.

Its pages are seven of an invented property's, one of each kind, as they were when the yardstick
was made, so often that the mix is that of a large book. What the handbook's own pages become
changes nothing of it: only so does a build that grows slower show.
"""

import shutil
from collections.abc import Iterator, Sequence
from pathlib import Path

FROZEN = Path(__file__).parent / "yardstick"
# Pages of a kind in a hundred, in the order of the navigation.
MIX = {
    "lists": 2.6,
    "work": 66.5,
    "records": 14.3,
    "places": 7.7,
    "ground": 3.9,
    "products": 2.3,
    "chapters": 2.7,
}
# Lists of a large book are so many times as long as the one that is kept.
LISTS_TIMES = 4
GROUP = 25


def counts_of(pages: int) -> dict[str, int]:
    """Return how many pages of each kind stand in a tree of so many."""
    counts = {kind: int(pages * share / 100) for kind, share in MIX.items()}
    counts["work"] += pages - sum(counts.values())
    return counts


def yardstick(folder: Path, pages: int) -> Path:
    """Write the tree into a new folder, and return it."""
    shutil.copytree(FROZEN / "theme", folder / "theme")
    docs = folder / "docs"
    docs.mkdir()
    nav = ["- 'Home': index.md\n"]
    (docs / "index.md").write_text("# Home\n\nA tree to be timed with.\n", encoding="utf-8")
    for kind, count in counts_of(pages - 1).items():
        text = (FROZEN / f"{kind}.md").read_text(encoding="utf-8")
        text *= LISTS_TIMES if kind == "lists" else 1
        (docs / kind).mkdir()
        names = [f"{kind}/page-{number}.md" for number in range(count)]
        for name in names:
            (docs / name).write_text(f"---\ntitle: {name}\n---\n\n{text}", encoding="utf-8")
        nav += [f"- '{kind}':\n", *_grouped(names, "    ")]
    settings = (FROZEN / "mkdocs.yml").read_text(encoding="utf-8")
    (folder / "mkdocs.yml").write_text(f"{settings}\nnav:\n{''.join(nav)}", encoding="utf-8")
    return folder


def _grouped(names: Sequence[str], indent: str) -> Iterator[str]:
    """Yield names as a navigation, no section with more than so many."""
    if len(names) <= GROUP:
        yield from (f"{indent}- '{name}': {name}\n" for name in names)
        return
    size = GROUP
    while size * GROUP < len(names):
        size *= GROUP
    for start in range(0, len(names), size):
        part = names[start : start + size]
        yield f"{indent}- '{part[0]} to {part[-1]}':\n"
        yield from _grouped(part, indent + "    ")

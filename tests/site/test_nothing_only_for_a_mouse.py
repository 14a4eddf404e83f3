"""Nothing is shown to a pointer alone: a finger and a key have no hovering."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.lookup import shipped

RULE = re.compile(r"([^{}]+)\{([^{}]*)\}")
SHOWS = re.compile(r"\b(display|visibility|opacity|content|clip-path|transform|height|width)\s*:")


def _only_by_hovering(css: str) -> Iterator[str]:
    for selector, body in RULE.findall(re.sub(r"/\*.*?\*/", "", css, flags=re.DOTALL)):
        if ":hover" in selector and SHOWS.search(body):
            yield selector.strip()


STYLES = sorted((shipped("site_templates") / "theme" / "assets").glob("*.css"))


@pytest.mark.parametrize("sheet", STYLES, ids=lambda path: path.name)
def test_no_style_shows_anything_by_hovering(sheet: Path) -> None:
    assert list(_only_by_hovering(sheet.read_text(encoding="utf-8"))) == []


def test_what_is_shown_by_hovering_is_seen() -> None:
    css = "a:hover { color: red } @media print { li:hover .tip { display: block } }"
    assert list(_only_by_hovering(css)) == ["li:hover .tip"]

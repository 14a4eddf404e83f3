"""What the README shows and names is there."""

import re

import pytest

from tests.readme_pictures import INTO, PICTURES
from tests.structure.modules import CHECKOUT

README = (CHECKOUT / "README.md").read_text(encoding="utf-8")
PICTURE = re.compile(r"!\[([^\]]+)\]\(([^)\s]+)\)")
TARGET = re.compile(r"\bmake ([a-z-]+)")
PNG = b"\x89PNG\r\n\x1a\n"


@pytest.mark.parametrize(("words", "address"), PICTURE.findall(README))
def test_a_picture_is_there_and_is_said_in_words(words: str, address: str) -> None:
    assert (CHECKOUT / address).read_bytes().startswith(PNG)
    assert len(words.split()) > 2


def test_the_script_takes_every_picture_shown_and_no_other() -> None:
    shown = {(CHECKOUT / address).resolve() for _, address in PICTURE.findall(README)}
    taken = {(INTO / f"{name}.png").resolve() for name, *_ in PICTURES}
    assert shown == taken == {path.resolve() for path in INTO.iterdir()}


def test_every_make_target_named_is_in_the_makefile() -> None:
    makefile = (CHECKOUT / "Makefile").read_text(encoding="utf-8")
    targets = set(re.findall(r"^([a-z-]+):", makefile, re.MULTILINE))
    named = set(TARGET.findall(README))
    assert "pictures" in named
    assert named <= targets

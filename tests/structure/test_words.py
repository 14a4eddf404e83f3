"""The glossary: each word once, in a sentence of plain words, and the trade's words all in it."""

import re

import pytest
import yaml

from generator.reference.library import words
from tests.structure.modules import CHECKOUT

ENTRIES = yaml.safe_load(
    (CHECKOUT / "generator" / "reference" / "data" / "words.yaml").read_text(encoding="utf-8")
)
PROSE = " ".join(
    path.read_text(encoding="utf-8")
    for folder in ("content", "site_templates/pages", "generator/reference/data/steps")
    for path in sorted((CHECKOUT / folder).rglob("*"))
    if path.suffix in (".md", ".jinja", ".yaml")
)
# Words of the trade that a landowner may never have met, by how they are written on pages, and
# the word of the glossary that tells what they mean. Picked by hand from the pages.
TRADE = {
    "acid equivalent": "acid equivalent (ae)",
    "active ingredient": "active ingredient (ai)",
    "backing fire": "backing fire",
    "bare root": "bare root",
    "broad-leaved": "broad-leaved plant",
    "catch test": "catch test",
    "collar": "collar",
    "cool-season": "cool-season grass",
    "cost-share": "cost-share",
    "crown": "crown",
    "dormant": "dormant seed",
    "drift": "drift",
    "ecotype": "ecotype",
    "frost seed": "frost seeding",
    "green-up": "green-up",
    "hard seed": "hard seed",
    "hopper": "hopper",
    "inoculant": "inoculant",
    "legume": "legume",
    "lifeline": "lifeline",
    "ligule": "ligule",
    "noxious": "noxious weed",
    "phosphate": "grade",
    "plant_back": "plant-back",
    "premix": "premix",
    "pure live seed": "pure live seed (PLS)",
    "rainfast": "rainfast",
    "reentry": "re-entry",
    "residual": "residual",
    "restricted use": "restricted use",
    "rhizome": "rhizome",
    "setback": "setback",
    "sheath": "sheath",
    "signal word": "signal word",
    "swath": "swath",
    "tether": "tether",
    "thatch": "thatch",
    "tile": "tile",
    "tiller": "tiller",
    "warm-season": "warm-season grass",
}
AMOUNT = re.compile(r"\d[\d.,]* ?(?:ft|in|lb|ac|oz|gal|pt|qt|hours?|days?|weeks?|%|percent)\b")


def test_no_word_has_two_meanings() -> None:
    names = [entry["word"].lower() for entry in ENTRIES]
    assert len(names) == len(set(names)) == len(words())


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: entry["word"])
def test_a_meaning_is_words_without_an_amount_and_explains_by_other_words(
    entry: dict[str, str],
) -> None:
    meaning = entry["meaning"]
    assert meaning.strip() == meaning
    assert len(meaning.split()) >= 3
    assert not meaning.endswith(".")
    assert not AMOUNT.search(meaning)
    assert not re.match(rf"(?:an? |the )?{re.escape(entry['word'].lower())}\b", meaning.lower())


@pytest.mark.parametrize("written", TRADE)
def test_a_word_of_the_trade_on_the_pages_stands_in_the_glossary(written: str) -> None:
    assert TRADE[written] in words()


def test_words_picked_do_stand_on_pages() -> None:
    """A word that left the pages need not be kept here: two thirds are still met."""
    met = [written for written in TRADE if written in PROSE.lower()]
    assert len(met) > len(TRADE) * 2 / 3, set(TRADE) - set(met)


def test_an_amount_in_a_meaning_is_seen() -> None:
    assert AMOUNT.search("sown 8 lb to an acre")
    assert not AMOUNT.search("the line to call, 811, before you dig")

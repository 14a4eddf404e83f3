"""All that a card leaves out is told at once, before any job asks for it."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from generator.cli import main
from generator.inventory.fields import rules_of
from generator.inventory.label import LabelCard, Use
from generator.plan.labels.clearance import card_gaps
from tests.plan.planned import inventory_of, planned
from tests.properties import full_card, full_use, small_property, write_property


def test_a_full_card_has_no_note() -> None:
    data = small_property()
    assert card_gaps(inventory_of(data).products) == []
    assert "N425" not in {one.code for one in planned(data).findings}


def test_head_and_every_use_are_told_in_one_note() -> None:
    first, second = full_use(site_words="First site"), full_use(site_words="Second site")
    del first["droplet"], first["covers"]["land"], second["timing"]
    card = full_card(first, second)
    del card["signal_word"], card["reentry"]["elsewhere"]
    (note,) = card_gaps(inventory_of(small_property(card)).products)
    assert (note.code, note.severity, note.subject) == ("N425", "note", "brew")
    assert (
        'Left out: signal_word, reentry.elsewhere; of the use "First site" droplet, '
        'covers.land; of the use "Second site" timing.'
    ) in note.to_type


def test_of_no_card_at_all_every_entry_is_named() -> None:
    data = small_property()
    del data["products"]["products"][0]["label"]
    (note,) = card_gaps(inventory_of(data).products)
    for name in (*rules_of(LabelCard), *rules_of(Use)):
        assert name in note.to_type


@pytest.mark.parametrize("typed", ["", "null"])
def test_check_tells_empty_lines_as_notes_and_ends_with_0(typed: str, tmp_path: object) -> None:
    folder = write_property(tmp_path / "land", small_property())  # type: ignore[operator]
    path = folder / "products.yaml"
    text = path.read_text(encoding="utf-8")
    assert "rainfast_hours: 6\n" in text
    path.write_text(
        text.replace("rainfast_hours: 6\n", f"rainfast_hours: {typed}\n").replace(
            "weed_height_in: 12\n", f"weed_height_in: {typed}\n"
        ),
        encoding="utf-8",
    )
    result = CliRunner().invoke(main, ["check", str(folder)])
    assert result.exit_code == 0
    head, *below, done = result.output.splitlines()
    assert head.startswith("products.yaml:")
    assert head.endswith(" note N425 brew")
    note = " ".join(below)
    assert "rainfast_hours" in note
    assert "weed_height_in" in note
    assert done == "No faults."

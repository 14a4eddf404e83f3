"""Distances on label cards: words as printed, the kind of thing, and where they count from."""

import pytest

from generator.inventory.label import COUNTED_FROM, KEPT_FROM
from generator.plan.findings.about_labels import LabelNote
from generator.plan.model.plan import Plan
from generator.plan.spraying.setbacks import kept_spraying
from tests.plan.planned import KILL, job_of, planned
from tests.plan.test_actives_together import free_use, tank_of
from tests.properties import full_card, full_use, small_property

NOTE = LabelNote.DISTANCE_WITHOUT_KIND.value.code
WHOLE = {"kind": "open_water", "counts_from": "bank"}


def with_distances(*kept: dict[str, object]) -> Plan:
    use = full_use(setbacks_ft=list(kept) or "not_on_label")
    return planned(small_property(full_card(use, mixing_setbacks_ft="not_on_label")))


def told(plan: Plan) -> list[str]:
    return [f"{one.words} {one.to_type}" for one in plan.findings_on("brew") if one.code == NOTE]


def test_a_distance_with_its_kind_and_edge_is_printed_with_the_edge() -> None:
    plan = with_distances({"keep_from": "open water", "distance_ft": 30} | WHOLE)
    assert told(plan) == []
    lines = {line.label: line.text for line in job_of(plan, KILL).safety}
    assert lines["Keep the spray from"] == "open water, counted from the bank"


def test_as_printed_adds_nothing_to_the_words() -> None:
    plan = with_distances(
        {"keep_from": "hives", "distance_ft": 90, "kind": "bees", "counts_from": "as_printed"}
    )
    assert told(plan) == []
    lines = {line.label: line.text for line in job_of(plan, KILL).safety}
    assert lines["Keep the spray from"] == "hives"


@pytest.mark.parametrize(
    ("keep_from", "kind"),
    [("ponds", "open_water"), ("Wells", "well"), ("tile inlets", "tile_inlet"),
     ("dwellings", "dwelling"), ("houses", "dwelling"),
     ("vineyards", "neighbors_crop"), ("beehives", "bees"),
     ("a school", "other")],
)  # fmt: skip
def test_without_a_kind_the_words_stand_and_the_line_to_add_is_told(
    keep_from: str, kind: str
) -> None:
    plan = with_distances({"keep_from": keep_from, "distance_ft": 30})
    (note,) = told(plan)
    line = f"{{keep_from: {keep_from}, distance_ft: 30, kind: {kind}, counts_from: as_printed}}"
    assert line in note
    assert all(word in note for word in (*KEPT_FROM, *COUNTED_FROM))
    # the line is typed in and read again
    again = with_distances(
        {"keep_from": keep_from, "distance_ft": 30, "kind": kind, "counts_from": "as_printed"}
    )
    assert told(again) == []


def test_a_card_is_told_of_once_however_many_of_its_distances_lack_a_kind() -> None:
    plan = with_distances(
        {"keep_from": "ponds", "distance_ft": 30, "kind": "open_water"},
        {"keep_from": "wells", "distance_ft": 50, "counts_from": "wall"},
    )
    (note,) = told(plan)
    assert "ponds; wells" in note
    assert "{keep_from: ponds, distance_ft: 30, kind: open_water, counts_from: as_printed}" in note


def test_of_two_labels_in_one_tank_the_longer_distance_from_a_thing_is_kept() -> None:
    def kept(first_ft: float, other_ft: float) -> list[tuple[str, float]]:
        uses = [
            free_use(
                setbacks_ft=[
                    {"keep_from": "open water", "distance_ft": distance} | WHOLE,
                    {"keep_from": f"thing {distance}", "distance_ft": 10} | WHOLE,
                ]
            )
            for distance in (first_ft, other_ft)
        ]
        mix = job_of(planned(tank_of((uses[0], uses[1]), (16, 16))), KILL).mix
        assert mix is not None
        return [(setback.words, setback.distance_ft.value) for setback in kept_spraying(mix)]

    both = [("open water", 50), ("thing 30", 10), ("thing 50", 10)]
    whole = [(f"{words}, counted from the bank", distance) for words, distance in both]
    assert sorted(kept(30, 50)) == sorted(kept(50, 30)) == whole

"""What labels leave of a place: typed distances, drawn things, and all that follows the acres.

The first case is worked by hand: a strip of 400 by 30 ft is 12,000 sq ft, 0.2755 ac. A runoff line
50 ft from its near edge and a label of 66 ft leave out 16 ft of the width; 14 ft by 400 ft are
5,600 sq ft, 0.1286 ac, and at 64 fl oz to an acre they take 8.23 fl oz.
"""

from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from generator.geometry.plane import middle_of_plane, off_plane
from generator.plan.build.season_plan import make_plan
from generator.plan.findings.about_spraying import SprayCaution, SprayStop
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.unanswered import Question
from generator.units import SQ_FT_PER_AC
from tests.plan.planned import AS_OF, KILL, inventory_of, job_of, planned, stops_of
from tests.plan.test_unanswered import listed
from tests.properties import SEASON, Data, full_card, full_use, small_property

MIDDLE = middle_of_plane((41.03, -93.02))
NOT_SET_BACK = SprayCaution.NOTHING_SET_BACK.value.code
LEFT_OUT = SprayCaution.LEFT_OUT.value.code
LEFT_OF_STRIP_AC = 14 * 400 / SQ_FT_PER_AC
RUNOFF = {"keep_from": "points where runoff enters streams", "distance_ft": 66,
          "kind": "runoff_point", "counts_from": "as_printed"}  # fmt: skip
WATER = {"keep_from": "streams", "distance_ft": 66, "kind": "open_water", "counts_from": "bank"}
HARDLY = 0.001  # ft that points may be off, where that is not what is asked


def strip(
    *near: Data, kept: tuple[Data, ...] = (RUNOFF,), swath_ft: float = 15, **work: Any
) -> Data:
    """A strip of 400 by 30 ft, sprayed in two passes, with what is typed to lie near it."""
    use = full_use(setbacks_ft=list(kept))
    data = small_property(full_card(use), **work)
    screen = data["screens"]["screens"][0]
    screen |= {"length_ft": 400, "width_ft": 30}
    if near:
        screen["near"] = {"distances": list(near)}
    sprayer = data["equipment"]["sprayers"][0]
    del sprayer["nozzle_spacing_in"]
    sprayer |= {"kind": "boomless", "swath_ft": swath_ft}
    sprayer["catch_tests"][0] |= {"caught_fl_oz": [180, 180]}
    return data


ONE_PASS: Any = {"swath_ft": 14, "rate_product_fl_oz_per_ac": 64}


def points(*spots: tuple[float, float]) -> list[list[float]]:
    """Spots of the plane, in feet east and north of its middle, as they are typed."""
    return [list(point) for point in off_plane(spots, MIDDLE)]


def drawn(*things: Data, all_drawn: tuple[str, ...] = (), **how: Any) -> Data:
    """The strip along a drawn line from west to east, among drawn things."""
    data = strip(**how)
    screen = data["screens"]["screens"][0]
    screen |= {"line_lat_lon": points((0, 0), (400, 0)), "outline_error_ft": HARDLY}
    lies = [{"id": f"thing-{number}", "name": f"Thing {number}", "off_ft": HARDLY} | thing
            for number, thing in enumerate(things, 1)]  # fmt: skip
    data["property"]["all_drawn"] = list(all_drawn)
    return data | {"land": {"land": lies}}


def runoff_line(north_ft: float, **more: Any) -> Data:
    """A runoff line that runs by the whole strip, so far north of its middle."""
    line = points((-200, north_ft), (600, north_ft))
    return {"kind": "runoff_point", "line_lat_lon": line} | more


def well(east_ft: float, north_ft: float, **more: Any) -> Data:
    return {"kind": "well", "at_lat_lon": points((east_ft, north_ft))[0]} | more


def kept_from(kind: str, distance_ft: float, **more: Any) -> Data:
    return {"keep_from": f"{kind} as printed", "distance_ft": distance_ft, "kind": kind,
            "counts_from": "as_printed"} | more  # fmt: skip


def acres(data: Data) -> float:
    """The ground that the kill treats."""
    job = job_of(planned(data))
    return job.numbers["treated_ac"].value if "treated_ac" in job.numbers else 400 * 30 / 43_560


def codes(plan: Plan, job: str = KILL) -> set[str]:
    return {one.code for one in plan.findings_on(job)}


NEAR_50 = {"kind": "runoff_point", "distance_ft": 50}


def product_fl_oz(job: Job) -> float:
    assert job.mix is not None
    return job.mix.parts[0].in_all.value


@pytest.mark.parametrize(
    "data",
    [strip(NEAR_50, **ONE_PASS), drawn(runoff_line(65), all_drawn=("runoff_point",), **ONE_PASS)],
    ids=["typed", "drawn"],
)
def test_a_runoff_line_along_a_strip_leaves_what_it_leaves_by_hand(data: Data) -> None:
    plan = planned(data)
    job = job_of(plan)
    assert stops_of(plan) == set()
    assert job.numbers["treated_ac"].value == pytest.approx(LEFT_OF_STRIP_AC, rel=1e-3)
    assert job.numbers["left_width_ft"].value == pytest.approx(14, abs=0.03)
    # the passes lie on what is left: one of 14 ft, along its middle
    assert job.numbers["lanes_count"].value == 1
    assert job.numbers["first_pass_ft"].value == pytest.approx(7, abs=0.02)
    assert product_fl_oz(job) == pytest.approx(8.2277, rel=2e-3)
    (kept,) = job.kept_off
    assert kept.lost.value == pytest.approx(16 * 400 / SQ_FT_PER_AC, rel=1e-3)
    assert codes(plan) & {LEFT_OUT, NOT_SET_BACK} == {LEFT_OUT}


def test_loads_and_what_is_bought_follow_and_seed_does_not() -> None:
    near = NEAR_50 | {"distance_ft": 51}
    whole, part = planned(strip(near | {"distance_ft": 66})), planned(strip(near))

    def needed(plan: Plan, item: str) -> float:
        return next(one.needed.value for one in plan.buying.purchases if one.item.id == item)

    for number in ("spray_gal", "product_fl_oz"):
        # 15 of 30 ft are left: one pass in the place of two
        took = job_of(part).numbers[number].value
        assert took == pytest.approx(job_of(whole).numbers[number].value / 2, rel=1e-9)
    assert needed(part, "brew") == product_fl_oz(job_of(part))
    assert needed(part, "sg") == needed(whole, "sg")
    assert LEFT_OUT not in codes(whole)


def test_what_lies_far_enough_leaves_all_and_what_nobody_tells_is_asked() -> None:
    far = planned(strip(NEAR_50 | {"distance_ft": 66}))
    assert job_of(far).kept_off == ()
    assert codes(far) & {LEFT_OUT, NOT_SET_BACK} == set()
    assert Question.SET_BACK not in listed(far)
    silent = planned(strip())
    assert codes(silent) & {LEFT_OUT, NOT_SET_BACK} == {NOT_SET_BACK}
    assert Question.SET_BACK in listed(silent)
    # one kind told, and the other not
    both = planned(strip(NEAR_50, kept=(RUNOFF, WATER)))
    (told,) = [one for one in both.findings_on(KILL) if one.code == NOT_SET_BACK]
    assert "streams, counted from the bank" in told.words
    assert "runoff" not in told.words
    assert Question.SET_BACK in listed(both)
    # the line the caution gives is typed in
    assert "distances:" in told.to_type
    water = {"kind": "open_water", "distance_ft": 300, "counts_from": "bank"}
    assert NOT_SET_BACK not in codes(planned(strip(NEAR_50, water, kept=(RUNOFF, WATER))))


def test_water_of_which_nobody_typed_where_it_lies_tells_nothing_of_open_water() -> None:
    line = points((-200, 500), (600, 500))
    creek: Data = {"kind": "creek", "line_lat_lon": line, "counts_from": "bank"}
    hole = {"id": "hole", "name": "Dug hole", "shape": "round", "top_ft": 20, "bottom_ft": 4,
            "depth_ft": 3}  # fmt: skip
    data = drawn(creek, kept=(WATER,), all_drawn=("open_water",))
    assert NOT_SET_BACK not in codes(planned(data))
    assert NOT_SET_BACK in codes(planned(data | {"ground": {"water_holes": [hole]}}))


def test_one_thing_that_is_drawn_tells_of_no_second_until_the_owner_says_that_all_are() -> None:
    line = points((-200, 500), (600, 500))
    creek: Data = {"kind": "creek", "line_lat_lon": line, "counts_from": "bank"}
    one_drawn = planned(drawn(creek, kept=(WATER,)))
    (told,) = [one for one in one_drawn.findings_on(KILL) if one.code == NOT_SET_BACK]
    assert "all_drawn: in property.yaml" in told.to_type
    assert Question.SET_BACK in listed(one_drawn)
    # the line the caution gives is typed in
    all_drawn = planned(drawn(creek, kept=(WATER,), all_drawn=("open_water",)))
    assert NOT_SET_BACK not in codes(all_drawn)
    assert Question.SET_BACK not in listed(all_drawn)
    # of another kind it says nothing, and of a place without points neither
    wells = drawn(creek, kept=(WATER,), all_drawn=("well",))
    assert NOT_SET_BACK in codes(planned(wells))
    unlaid = drawn(creek, kept=(WATER,), all_drawn=("open_water",))
    del unlaid["screens"]["screens"][0]["line_lat_lon"]
    assert NOT_SET_BACK in codes(planned(unlaid))
    # none there is: the owner knows of no water
    assert NOT_SET_BACK not in codes(planned(drawn(kept=(WATER,), all_drawn=("open_water",))))
    # what is drawn is left out all the same
    near = runoff_line(65)
    assert job_of(planned(drawn(near))).kept_off != ()
    assert codes(planned(drawn(near))) & {LEFT_OUT, NOT_SET_BACK} == {LEFT_OUT, NOT_SET_BACK}


@pytest.mark.parametrize(
    "data",
    [strip(NEAR_50 | {"distance_ft": 36}), strip(NEAR_50 | {"distance_ft": 0}),
     drawn(runoff_line(10))],
)  # fmt: skip
def test_a_strip_taken_whole_is_a_stop(data: Data) -> None:
    plan = planned(data)
    assert stops_of(plan) == {SprayStop.NOTHING_LEFT.value.code}
    assert job_of(plan).kept_off == ()
    contractor = seen_by(plan, inventory_of(data).readers[0])
    assert all("Thing" not in one.words_for_others for one in contractor.findings)


def test_a_foot_that_is_left_is_no_stop() -> None:
    plan = planned(strip(NEAR_50 | {"distance_ft": 37}))
    assert stops_of(plan) == set()
    assert job_of(plan).numbers["left_width_ft"].value == 1


def test_a_width_nobody_taped_stops_what_a_typed_distance_takes_some_of() -> None:
    data = strip(NEAR_50)
    screen = data["screens"]["screens"][0]
    for key in ("length_ft", "width_ft"):
        del screen[key]
    screen["area_ac"] = 0.3
    assert stops_of(planned(data)) == {SprayStop.NO_WIDTH_TO_LEAVE_OUT.value.code}
    screen["near"]["distances"][0]["distance_ft"] = 66
    assert stops_of(planned(data)) == set()
    screen["near"]["distances"][0]["distance_ft"] = 50
    screen["width_ft"] = 30
    plan = planned(data)
    assert stops_of(plan) == set()
    assert job_of(plan).numbers["treated_ac"].value == pytest.approx(0.3 * 14 / 30)


@pytest.mark.parametrize(
    ("counted", "measured", "is_stopped"),
    [("bank", "waters_edge", True), ("bank", None, True), ("waters_edge", None, True),
     ("waters_edge", "bank", False), ("bank", "bank", False), ("bank", "as_printed", False),
     ("as_printed", None, False), ("as_printed", "waters_edge", False)],
)  # fmt: skip
def test_an_edge_that_may_lie_nearer_than_the_one_measured_is_a_stop(
    counted: str, measured: str | None, is_stopped: bool
) -> None:
    kept = WATER | {"counts_from": counted}
    near = {"kind": "open_water", "distance_ft": 100}
    creek = {"kind": "creek", "line_lat_lon": points((-200, 115), (600, 115))}
    if measured is not None:
        near["counts_from"] = creek["counts_from"] = measured
    code = SprayStop.EDGE_IN_DOUBT.value.code
    for data in (strip(near, kept=(kept,)), drawn(creek, kept=(kept,))):
        assert stops_of(planned(data)) == ({code} if is_stopped else set())
        for one in planned(data).findings_on(KILL):
            if one.code == code:
                # the cure is typed in, word for word
                assert f"counts_from: {counted}" in one.to_type
    # twice the distance away no edge is as near as the distance that is kept
    near["distance_ft"] = 2 * 66
    creek["line_lat_lon"] = points((-200, 300), (600, 300))
    for data in (strip(near, kept=(kept,)), drawn(creek, kept=(kept,))):
        assert stops_of(planned(data)) == set()


def test_a_tile_inlet_has_one_edge_alone() -> None:
    kept = kept_from("tile_inlet", 66, counts_from="inlet")
    inlet = {"kind": "tile_inlet", "at_lat_lon": points((200, 200))[0]}
    assert stops_of(planned(drawn(inlet, kept=(kept,)))) == set()


def test_ground_of_your_own_measuring_may_not_be_more_than_is_left() -> None:
    # 5,600 sq ft are left
    over, under = strip(NEAR_50, treated_sq_ft=5700), strip(NEAR_50, treated_sq_ft=5500)
    assert stops_of(planned(over)) == {SprayStop.MORE_THAN_IS_LEFT.value.code}
    plan = planned(under)
    assert stops_of(plan) == set()
    assert job_of(plan).numbers["treated_ac"].value == pytest.approx(5500 / SQ_FT_PER_AC)
    assert product_fl_oz(job_of(plan)) == pytest.approx(5500 / SQ_FT_PER_AC * 32)


def test_of_two_things_on_one_side_the_nearer_counts_and_of_two_sides_both() -> None:
    kept = (RUNOFF, kept_from("well", 60))

    def left_ft(runoff_side: str | None, well_side: str | None) -> float:
        near = [
            NEAR_50 | {"side": runoff_side},
            {"kind": "well", "distance_ft": 56, "side": well_side},
        ]
        typed = [{key: value for key, value in one.items() if value} for one in near]
        return job_of(planned(strip(*typed, kept=kept))).numbers["left_width_ft"].value

    # 16 ft and 4 ft of 30
    assert left_ft("north", "north") == 14
    assert left_ft("north", "south") == 10
    # where it lies is not typed, so it counts as another side
    assert left_ft("north", None) == left_ft(None, None) == 10


def test_where_a_thing_is_typed_and_drawn_what_takes_more_counts() -> None:
    for north_ft, expected_ft in ((65, 14), (60, 9), (75, 14)):
        data = drawn(runoff_line(north_ft))
        data["screens"]["screens"][0]["near"] = {"distances": [NEAR_50]}
        job = job_of(planned(data))
        assert job.numbers["left_width_ft"].value == pytest.approx(expected_ft, abs=0.03)
        assert len(job.kept_off) == 1


def test_a_typed_thing_and_a_drawn_one_of_another_kind_both_count() -> None:
    data = drawn(runoff_line(65), kept=(RUNOFF, kept_from("well", 60)))
    data["screens"]["screens"][0]["near"] = {"distances": [{"kind": "well", "distance_ft": 56}]}
    job = job_of(planned(data))
    assert job.numbers["left_width_ft"].value == pytest.approx(10, abs=0.03)
    assert job.numbers["treated_ac"].value == pytest.approx(10 * 400 / SQ_FT_PER_AC, rel=3e-3)
    assert {one.name for one in job.kept_off} == {"Thing 1", "Well"}


def test_what_points_may_be_off_widens_what_is_left_out() -> None:
    def left_ft(place: Data, thing: Data) -> float:
        data = drawn(runoff_line(85))
        for typed, key, said in (
            (data["screens"]["screens"][0], "outline_error_ft", place),
            (data["land"]["land"][0], "off_ft", thing),
        ):
            del typed[key]
            typed |= said
        lost_ac = sum(one.lost.value for one in job_of(planned(data)).kept_off)
        return 30 - lost_ac * SQ_FT_PER_AC / 400

    # the near edge lies 70 ft away: 4 ft more than the label asks for
    assert left_ft({"got": "surveyed"}, {"got": "surveyed"}) == 30
    # surveyed within a foot, and a phone in the open within 16 ft: 66 + 17 - 70 ft are left out
    assert left_ft({"got": "surveyed"}, {"got": "phone"}) == pytest.approx(17, abs=0.03)
    assert left_ft({"outline_error_ft": 3}, {"off_ft": 6}) == pytest.approx(25, abs=0.03)


def test_a_part_is_told_in_feet_from_the_first_end_and_the_rest_stays_as_wide() -> None:
    plan = planned(drawn(well(300, 40), kept=(kept_from("well", 50),)))
    job = job_of(plan)
    assert stops_of(plan) == set()
    (kept,) = job.kept_off
    (part,) = kept.stretches
    # the chord of a circle of 50 ft, 25 ft below its middle, reaches 43.3 ft to either side
    assert (part.first.value, part.last.value) == (256, 344)
    assert part.wide.value == 25
    assert (part.start_deg, part.side_deg) == (270, 0)
    assert "left_width_ft" not in job.numbers
    # two passes of 15 ft over 30 ft, along what is left of the length
    assert job.numbers["lanes_count"].value == 2
    assert "laid_ac" not in job.numbers


def test_typed_from_the_other_end_the_same_feet_are_told_from_there() -> None:
    data = drawn(well(300, 40), kept=(kept_from("well", 50),))
    data["screens"]["screens"][0]["line_lat_lon"].reverse()
    ((part,),) = [one.stretches for one in job_of(planned(data)).kept_off]
    assert (part.first.value, part.last.value) == (56, 144)
    assert (part.start_deg, part.side_deg) == (90, 0)


def test_of_an_outline_feet_are_told_where_it_is_long() -> None:
    def parts(*corners: tuple[float, float]) -> int:
        data = drawn(well(200, 40), kept=(kept_from("well", 50),))
        screen = data["screens"]["screens"][0]
        for key in ("line_lat_lon", "length_ft", "width_ft"):
            del screen[key]
        screen["area_lat_lon"] = points(*corners)
        (kept,) = job_of(planned(data)).kept_off
        return len(kept.stretches)

    assert parts((0, -15), (400, -15), (400, 15), (0, 15)) == 1
    assert parts((100, -70), (300, -70), (300, 15), (100, 15)) == 1
    assert parts((150, -90), (250, -90), (250, 15), (150, 15)) == 0


def test_dug_water_counts_as_open_water_and_alone_tells_of_no_creek() -> None:
    kept = (WATER | {"counts_from": "waters_edge"},)
    hole = {"id": "hole", "name": "Dug hole", "shape": "round", "top_ft": 20, "bottom_ft": 4,
            "depth_ft": 3, "at_lat_lon": points((200, 50))[0]}  # fmt: skip
    data = drawn(kept=kept) | {"ground": {"water_holes": [hole]}}
    plan = planned(data)
    (told,) = job_of(plan).kept_off
    assert (told.name, told.known_as) == ("Dug hole", "Open water")
    assert codes(plan) & {LEFT_OUT, NOT_SET_BACK} == {LEFT_OUT, NOT_SET_BACK}


def test_a_distance_without_its_kind_counts_by_its_words() -> None:
    data = drawn(well(300, 40), kept=({"keep_from": "wells", "distance_ft": 50},))
    assert len(job_of(planned(data)).kept_off) == 1


def test_of_two_cards_in_a_tank_the_longer_distance_counts() -> None:
    data = drawn(well(300, 40), kept=(kept_from("well", 50), kept_from("well", 30)))
    (kept,) = job_of(planned(data)).kept_off
    assert kept.setback.distance_ft.value == 50


def test_others_are_told_what_is_left_out_by_names_that_they_may_see() -> None:
    kept = (kept_from("well", 50), RUNOFF)
    data = drawn(well(300, 40), runoff_line(65, known_as="The ditch"), kept=kept)
    plan, contractor = planned(data), inventory_of(data).readers[0]
    theirs = seen_by(plan, contractor)
    (job,) = [one for one in theirs.jobs if one.step.id == "autumn_kill"]
    assert [one.name for one in job.kept_off] == ["Well", "The ditch"]
    lines = {line.key: line.text for line in job.safety}
    assert [lines["left_out_1"], lines["left_out_2"]] == ["Well", "The ditch"]
    assert job.numbers["treated_ac"].value == job_of(plan).numbers["treated_ac"].value
    assert job.kept_off[0].setback.where.file == ""


def test_what_is_logged_stays_as_it_was_logged() -> None:
    """Not a pound of what an acre got moves where a well is found to lie nearer."""
    used = {"item": "brew", "amount_fl_oz": 17}
    job = {"planting": "lane-27", "step": "autumn_kill", "finished": True, "area_ac": 0.27}
    entry = {"id": "e-1", "done_on": "2026-08-19", "job": job, "used": [used]}
    data = drawn(well(300, 400), kept=(kept_from("well", 50),)) | {"log": {"entries": [entry]}}
    before = planned(data)
    data["land"]["land"][0]["at_lat_lon"] = points((300, 40))[0]
    after = planned(data)
    assert before.actives[0].total.value == after.actives[0].total.value
    assert before.records == after.records != ()


@settings(
    max_examples=25,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),
    suppress_health_check=[HealthCheck.too_slow],
)
@given(
    st.lists(st.tuples(st.floats(-150, 550), st.floats(-150, 150)), min_size=1, max_size=3),
    st.floats(1, 120),
)
def test_never_more_is_treated_than_is_planted_and_never_less_than_nothing(
    spots: list[tuple[float, float]], distance_ft: float
) -> None:
    data = drawn(*(well(*spot) for spot in spots), kept=(kept_from("well", distance_ft),))
    inventory = inventory_of(data)
    job = job_of(make_plan(inventory, SEASON, AS_OF))
    whole = 400 * 30 / SQ_FT_PER_AC
    if job.mix is None:
        # of next to nothing no mark pours what it takes
        assert stops_of(planned(data)) <= {SprayStop.NOTHING_LEFT.value.code, "S121"}
        return
    treated = job.numbers["treated_ac"].value if job.kept_off else whole
    assert 0 < treated <= whole
    assert sum(one.lost.value for one in job.kept_off) >= whole - treated - 1e-9

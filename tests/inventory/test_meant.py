"""What an unknown word was meant for: only what fits there, by meaning before letters."""

from __future__ import annotations

import pytest

from generator.inventory.load import load_inventory
from generator.inventory.meant import keys_meant, meant, nearest, stem_meant
from generator.inventory.problems import Problem
from tests.inventories.overlaid import HERE

BASE = HERE / "base"
SCREENS = (BASE / "screens.yaml").read_text()
UPKEEP = SCREENS.replace(
    "steps: frost_seeded_native_grass",
    "steps: frost_seeded_native_grass\n        upkeep: established_screen_upkeep",
)


def fault_of(**files: str) -> Problem:
    """The one fault of the base property with files typed anew."""
    beside = {f"{name}.yaml": text.encode() for name, text in files.items()}
    (fault,) = load_inventory(BASE, beside).problems
    return fault


@pytest.mark.parametrize(
    ("step", "cure"),
    [
        # another plan has upkeep_residual, and no step of this planting is called so
        ("residual", "did you mean spring_residual or second_spring_residual?"),
        ("autum_kill", "did you mean autumn_kill?"),
        ("kill", "did you mean autumn_kill or second_kill?"),
        ("upkeep_residual", "did you mean spring_residual or second_spring_residual?"),
    ],
)
def test_a_step_offered_is_one_of_the_plan_of_its_planting(step: str, cure: str) -> None:
    work = SCREENS.replace("step: autumn_kill", f"step: {step}")
    fault = fault_of(screens=work)
    assert fault.code == "F304"
    if step == "upkeep_residual":
        assert "spring_residual" in fault.accepted
        assert "upkeep_residual" not in fault.accepted
    else:
        assert fault.accepted == cure
    handed = (BASE / "readers.yaml").read_text().replace("[autumn_kill]", f"[{step}]")
    fault = fault_of(readers=handed)
    assert (fault.code, fault.line) == ("F310", 5)
    assert handed.split("\n")[4][fault.column - 1 :].startswith(step)
    assert "upkeep_residual" not in fault.accepted
    logged = (
        f"entries:\n  - {{id: a, done_on: 2026-08-01, job: {{planting: lane-27, step: {step}}}}}\n"
    )
    fault = fault_of(log=logged)
    assert fault.code == "F350"
    assert logged.split("\n")[1][fault.column - 1 :].startswith(step)
    assert "upkeep_residual" not in fault.accepted


def test_a_step_of_the_upkeep_is_offered_where_the_planting_has_one() -> None:
    fault = fault_of(screens=UPKEEP.replace("step: autumn_kill", "step: residual"))
    assert fault.accepted == (
        "did you mean spring_residual, second_spring_residual or upkeep_residual?"
    )


def test_two_names_that_share_a_part_are_not_taken_for_one_another() -> None:
    fault = fault_of(screens=SCREENS.replace("step: autumn_kill", "step: spring_kill"))
    assert "did you mean" not in fault.accepted
    assert fault.accepted.startswith("autumn_kill, second_kill, spring_residual")


@pytest.mark.parametrize(
    ("typed", "code", "cure"),
    [
        ("rate_lb_per_ac: 8", "F201", "did you mean rate_pls_lb_per_ac?"),
        ("pls_lb_per_ac: 8", "F201", "did you mean rate_pls_lb_per_ac?"),
        ("rate_pls_lbs_per_ac: 8", "F205", "rate_pls_lb_per_ac, "),
        ("rate_pls: 8", "F205", "rate_pls_lb_per_ac, "),
        # by meaning before letters: a rate is in pounds or in seeds
        ("rate: 8", "F205", "rate_pls_lb_per_ac or rate_seeds_per_sq_ft"),
        ("rate_lbs: 8", "F205", "rate_pls_lb_per_ac or rate_seeds_per_sq_ft"),
        ("rate_lb: 8", "F205", "rate_pls_lb_per_ac, "),
        ("rate_seeds: 8", "F205", "rate_seeds_per_sq_ft or rate_seeds_per_ac"),
        ("seeds_per_sq_ft: 40", "F201", "did you mean rate_seeds_per_sq_ft?"),
    ],
)
def test_a_key_offered_is_one_in_the_unit_that_was_typed(typed: str, code: str, cure: str) -> None:
    fault = fault_of(screens=SCREENS.replace("rate_pls_lb_per_ac: 8", typed))
    assert fault.code == code
    assert fault.accepted.startswith(cure)


@pytest.mark.parametrize(
    ("typed", "code", "cure"),
    [
        ("wind_from: 270", "F205", "wind_from_deg"),
        ("from_deg: 270", "F201", "did you mean wind_from_deg?"),
        ("wind_speed_mph: 6", "F201", "did you mean wind_mph?"),
        ("humidity: 60", "F205", "humidity_fraction or humidity_pct"),
        ("wind: 6", "F205", "wind_mph or wind_from_deg"),
    ],
)
def test_a_key_of_a_spraying_is_offered_by_what_it_means(typed: str, code: str, cure: str) -> None:
    log = f"entries:\n  - id: one\n    done_on: 2026-08-01\n    sprayed: {{{typed}}}\n"
    fault = fault_of(log=log)
    assert (fault.code, fault.line, fault.column) == (code, 4, 15)
    assert fault.accepted == cure


@pytest.mark.parametrize(
    ("old", "new", "cure"),
    [
        ("lot: sg", "lot: sgg", "did you mean sg?"),
        # bb is near in letters, and a lot of another species
        ("lot: sg", "lot: bbb", "sg"),
        (
            "steps: frost_seeded_native_grass",
            "steps: native_grass",
            "did you mean drilled_native_grass or frost_seeded_native_grass?",
        ),
        (
            "steps: frost_seeded_native_grass",
            "steps: frost_seeded_native_grass\n        upkeep: upkeep",
            "did you mean established_screen_upkeep?",
        ),
    ],
)
def test_a_lot_or_a_plan_offered_fits_where_it_would_stand(old: str, new: str, cure: str) -> None:
    fault = fault_of(screens=SCREENS.replace(old, new))
    assert (fault.code, fault.accepted) == ("F208", cure)


def test_a_plan_offered_for_a_stand_is_one_for_stands() -> None:
    fault = fault_of(stands="stands:\n  - {id: oak, name: Oak ladder, upkeep: upkeep}\n")
    assert fault.accepted == "stand_inspection"


def test_no_key_is_offered_that_stands_there_already() -> None:
    typed = "rate_pls_lb_per_ac: 8, rate_lb_per_ac: 8"
    fault = fault_of(screens=SCREENS.replace("rate_pls_lb_per_ac: 8", typed))
    assert "did you mean rate_pls_lb_per_ac" not in fault.accepted


def test_rates_of_several_kinds_in_one_unit_are_all_offered() -> None:
    typed = SCREENS.replace("rate_product_pt_per_ac: 2", "rate_lb_per_ac: 2")
    assert fault_of(screens=typed).accepted == (
        "did you mean rate_product_lb_per_ac, rate_ai_lb_per_ac or rate_ae_lb_per_ac?"
    )


@pytest.mark.parametrize(
    ("zone", "meant_zone"),
    [
        ("CDT", "America/Chicago"),
        ("EST", "America/New_York"),  # kept by the zone database, and without summer time
        ("MST", "America/Denver"),
        ("Eastern", "America/New_York"),
        ("America/Chicgo", "America/Chicago"),
    ],
)
def test_a_time_zone_is_offered_by_what_clocks_call_it(zone: str, meant_zone: str) -> None:
    told = f"format: 1\nname: Small bend\nseason: 2027\ntime_zone: {zone}\n"
    assert fault_of(property=told).accepted == f"did you mean {meant_zone}?"


def test_of_lots_that_are_equally_near_all_are_offered() -> None:
    seed = (BASE / "seed.yaml").read_text()
    lots = [seed.split("  - id: bb")[0].replace("id: sg", f"id: sg-26{one}") for one in "abc"]
    every = "".join([lots[0], *(one.removeprefix("lots:\n") for one in lots[1:])])
    typed = SCREENS.replace("lot: sg", "lot: sg-26")
    assert fault_of(screens=typed, seed=every).accepted == (
        "did you mean sg-26a, sg-26b or sg-26c?"
    )
    two = every.replace("id: sg-26c", "id: bb-1")
    assert fault_of(screens=typed, seed=two).accepted == "did you mean sg-26a or sg-26b?"


def test_where_too_many_are_equally_near_none_is_singled_out() -> None:
    many = [f"sg-26{one}" for one in "abcd"]
    assert nearest("sg-26", many) == meant("sg-26", many) == ()
    assert nearest("sg-26", many[:3]) == tuple(many[:3])
    assert nearest("sg-26", [*many, "sg-26"]) == ("sg-26",)
    assert meant("lane", [f"lane-{one}" for one in "abcd"]) == ()


def test_words_that_share_parts_come_before_words_of_like_letters() -> None:
    assert meant("lane", ["lane-27", "lance"]) == ("lane-27",)
    assert meant("", ["a"]) == ()
    assert meant("x" * 1000, ["a"]) == ()
    assert keys_meant("", {"a": ["a"]}) == ()
    assert stem_meant("widths", ["width"]) is None

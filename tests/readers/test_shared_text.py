"""Text that others read and that names what they are not handed is a caution to the owner."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.book.make import make_book
from generator.plan.build.season_plan import make_plan
from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from generator.plan.readers.kept_names import KeptName, KeptNames, in_plain_words
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import AS_OF, inventory_of
from tests.properties import SEASON, Data, the_work
from tests.readers.test_every_number_told import demo
from tests.readers.test_partner import JOBS, shared, told

CODE = "C380"


def property_of_names() -> Data:
    """The partner's property with a place that nobody is handed and a contractor of one job."""
    data = shared()
    data["readers"]["readers"][0]["jobs"] = JOBS
    data["screens"]["screens"].append(
        {"id": "far-corner", "name": "Thicket", "known_as": "Strip 9", "length_ft": 90,
         "width_ft": 9, "near": {"lines": "runs by the Gulch way"}}
    )  # fmt: skip
    data["stands"]["stands"].append({"id": "cedar", "name": "Swale hang-on", "known_as": "Perch"})
    data["ground"] = {"water_holes": [{"id": "dug", "name": "Otter hole", "shape": "rectangle",
        "length_ft": 20, "width_ft": 10, "depth_ft": 4, "side_ft_per_ft": 1,
        "wet_ground_asked_on": "2026-05-01"}]}  # fmt: skip
    return data


def plan_of(data: Data) -> Plan:
    return make_plan(inventory_of(data), SEASON, AS_OF)


def cautions(data: Data) -> list[Finding]:
    return [one for one in plan_of(data).findings if one.code == CODE]


def lane(data: Data) -> Data:
    screen: Data = data["screens"]["screens"][0]
    return screen


def _near(data: Data, words: str) -> None:
    lane(data)["near"] = {"others": words}


def _emergency(data: Data, words: str) -> None:
    data["property"]["emergency"]["gate_words"] = words


def _part(data: Data, words: str) -> None:
    the_work(data)[0]["part"] = words


def _known_as(data: Data, words: str) -> None:
    lane(data)["known_as"] = words


def _stand_known_as(data: Data, words: str) -> None:
    data["stands"]["stands"][0]["known_as"] = words


def _card(data: Data, words: str) -> None:
    data["products"]["products"][0]["label"]["uses"][0]["soil_limits"] = words


def _equipment(data: Data, words: str) -> None:
    data["products"]["products"][0]["label"]["protective_equipment"] = ["boots", words]


def _product(data: Data, words: str) -> None:
    data["products"]["products"][0]["name"] = words


def _sprayer(data: Data, words: str) -> None:
    data["equipment"]["sprayers"][0]["name"] = words


def _step(data: Data, words: str) -> None:
    own = {"step": "autumn_kill", "name": "Kill", "operation": "spray", "timing": "before_sowing",
           "why": "It fails else.", "opens": [{"date": "09-10"}], "closes": [{"date": "09-27"}],
           "if_missed": "Wait.", "ticks": [words]}  # fmt: skip
    data["steps"] = {"step_plans": [
        {"id": "mine", "name": "Mine", "based_on": "frost_seeded_native_grass", "steps": [own]}
    ]}  # fmt: skip
    lane(data)["plantings"][0]["steps"] = "mine"


SHARED = {
    "near.others of lane": _near,
    "emergency.gate_words of property": _emergency,
    "plantings.work.part of lane": _part,
    "known_as of lane": _known_as,
    "known_as of oak": _stand_known_as,
    "label.uses.soil_limits of brew": _card,
    "label.protective_equipment of brew": _equipment,
    "name of brew": _product,
    "name of boom": _sprayer,
    "steps.ticks of mine": _step,
}


@pytest.mark.parametrize("where", SHARED)
def test_a_shared_text_that_names_a_kept_stand_is_a_caution_until_it_is_changed(where: str) -> None:
    data = property_of_names()
    SHARED[where](data, "reach it past the swale hang-on, low")
    (found,) = cautions(data)
    assert found.severity == "caution"
    assert found.words.startswith("A text that ")
    assert 'holds "Swale hang-on", the name of a stand that is not shared' in found.words
    assert found.to_type.startswith(f"Change {where} in ")
    assert found.place
    SHARED[where](data, "reach it past the swale, low")
    assert cautions(data) == []


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("past the ELM BEHIND the gulch", "Elm behind the gulch"),
        ("up the Gulch way", "Gulch way"),
        ("beside the Thicket", "Thicket"),
        ("beside strip 9", "Strip 9"),
        ("seen from the perch", "Perch"),
        ("at the far corner", "far-corner"),
        ("at far_corner", "far-corner"),
        ("below the cedar stand", "cedar"),
        ("mind the otter hole", "Otter hole"),
        ("the Lane screen itself", "Lane screen"),
    ],
)
def test_names_names_for_others_and_ids_count_in_small_and_capital_letters(
    words: str, name: str
) -> None:
    data = property_of_names()
    _near(data, words)
    assert [f'holds "{name}"' in one.words for one in cautions(data)] == [True]


@pytest.mark.parametrize(
    "words",
    [
        "a row of cedar and elm",  # an id of one word is a word of the language
        "thickets",
        "Oak ladder and Lane walk",  # handed over to one who reads it, the partner
        "strip 91",
        "the gulch",
    ],
)
def test_other_words_are_no_caution(words: str) -> None:
    data = property_of_names()
    data["readers"]["readers"] = data["readers"]["readers"][1:]
    _near(data, words)
    assert cautions(data) == []


@pytest.mark.parametrize("words", ["at 41.0313, -93.0217", "41.031 N and 93.022 W"])
def test_coordinates_of_a_stand_count_until_they_are_said_to_be_handed_over(words: str) -> None:
    data = property_of_names()
    data["readers"]["readers"].pop(0)
    _near(data, words)
    (found,) = cautions(data)
    assert 'holds "41.0313, -93.0217", the coordinates of the stand oak' in found.words
    data["stands"]["stands"][0]["coordinates"] = "yes"
    assert cautions(data) == []
    del data["stands"]["stands"][0]["coordinates"]
    _near(data, "41.0 N and 93.0 W, 41.5313 and 93.0217")
    assert cautions(data) == []


def test_a_contractor_is_handed_no_stand_so_its_name_counts_for_him_alone() -> None:
    data = property_of_names()
    _near(data, "behind the Oak ladder")
    (found,) = cautions(data)
    assert "that goes to hired holds" in found.words
    data["readers"]["readers"].pop(0)
    assert cautions(data) == []


def _note(data: Data) -> None:
    lane(data)["note"] = "Swale hang-on"


def _stranger(data: Data) -> None:
    data["screens"]["screens"][-1]["near"] = {"others": "Swale hang-on"}


def _work_of_another(data: Data) -> None:
    the_work(data).append({"step": "spring_burn_down", "part": "by the Swale hang-on"})


@pytest.mark.parametrize("private", [_note, _stranger, _work_of_another])
def test_text_that_nobody_is_handed_is_no_caution(private: Callable[[Data], None]) -> None:
    data = property_of_names()
    private(data)
    assert cautions(data) == []


def test_the_owner_alone_meets_it_and_on_the_page_of_readers() -> None:
    data = property_of_names()
    _near(data, "behind the Swale hang-on")
    plan = plan_of(data)
    pages = told(make_book(plan))
    assert 'holds "Swale hang-on"' in pages["readers.md"]
    assert "What each reader sees" in pages["findings.md"]
    for reader in inventory_of(data).readers:
        assert CODE not in {one.code for one in seen_by(plan, reader).findings}


def test_a_job_of_no_reader_asks_nothing() -> None:
    data = property_of_names()
    _near(data, "behind the Swale hang-on")
    data["readers"]["readers"] = []
    assert cautions(data) == []


def test_nothing_in_the_demo_names_what_is_kept() -> None:
    plan = make_plan(demo(), 2027, AS_OF)
    assert [one for one in plan.findings if one.code == CODE] == []


def test_words_are_compared_whole_whatever_stands_between_them() -> None:
    assert in_plain_words("The Oak-ladder's foot") == in_plain_words("the OAK   ladder s foot")


NAMES = st.sampled_from(["oak", "oak ladder", "ladder", "ash oak", "ash"])


@given(
    st.lists(st.sampled_from(["oak", "Ladder", "ASH", "41.0312, -93.0211", "by"])).map(" ".join),
    st.lists(NAMES, max_size=6),
    st.lists(NAMES, max_size=2),
)
def test_names_are_found_as_each_by_itself_is_found(
    text: str, names: list[str], shown: list[str]
) -> None:
    words = tuple(
        KeptName(name, "a name", str(number % 3), (in_plain_words(name),))
        for number, name in enumerate(names)
    )
    point = KeptName("41.0312, -93.0211", "coordinates", "stand", (), (41.0312, -93.0211))
    kept = (*words, point)
    each = [name for name in kept if name.stands_in(text, shown)]
    first = {name.thing: name for name in reversed(each)}
    found = KeptNames(kept, tuple(shown)).names_in(text)
    assert found == tuple(sorted(first.values(), key=kept.index))

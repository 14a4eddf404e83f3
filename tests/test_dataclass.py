"""Our dataclass is the standard library's in all that can be seen of it."""

import builtins
import copy
import dataclasses
import inspect
import pickle
from typing import Any

import pytest

import generator.dataclass as ours

MAKERS = {"ours": getattr(ours, "dataclass"), "theirs": dataclasses.dataclass}  # noqa: B009 - to type checkers both are one


def classes_by(maker: Any) -> dict[str, Any]:
    """Records of every make-up that the program has."""

    @maker(frozen=True, slots=True)
    class Plain:
        a: int
        b: str = "b"
        c: list[int] = dataclasses.field(default_factory=list, compare=False)
        d: int = dataclasses.field(default=4, repr=False)
        e: dict[str, int] = dataclasses.field(init=False, compare=False, default_factory=dict)

    @maker(frozen=True, slots=True)
    class Below(Plain):
        f: float = 1.5

        def doubled(self) -> float:
            return self.f * 2

    @maker(frozen=True, slots=True, kw_only=True)
    class Named:
        a: int = 1
        b: int

    @maker(frozen=True, slots=True)
    class Empty:
        pass

    @maker(frozen=True, slots=True)
    class Own:
        a: int

        def __eq__(self, other: object) -> bool:
            return isinstance(other, Own) and abs(self.a) == abs(other.a)

        def __hash__(self) -> int:
            return hash(abs(self.a))

    @maker(frozen=True, slots=True, eq=False)
    class Itself:
        a: int

    @maker(frozen=True, slots=True)
    class After:
        a: int
        b: int = 0

        def __post_init__(self) -> None:
            object.__setattr__(self, "b", self.a + 1)

    @maker(slots=True)
    class Open:
        a: int

    found = dict(locals())
    del found["maker"]
    return found


@pytest.fixture(params=MAKERS, ids=list(MAKERS))
def made(request: pytest.FixtureRequest) -> dict[str, Any]:
    return classes_by(MAKERS[request.param])


def test_fields_are_taken_in_their_order_and_with_their_defaults(made: dict[str, Any]) -> None:
    one = made["Plain"](1, c=[2])
    assert (one.a, one.b, one.c, one.d, one.e) == (1, "b", [2], 4, {})
    assert made["Plain"](1).c is not made["Plain"](1).c
    assert made["Below"](1, "x", [], 5, 2.5).doubled() == 5.0
    assert (made["Named"](b=2).a, made["Named"](b=2).b) == (1, 2)
    for name, given in {"Plain": (), "Below": (1, 2, 3, 4, 5, 6), "Named": (1,)}.items():
        with pytest.raises(TypeError):
            made[name](*given)
    with pytest.raises(TypeError):
        made["Plain"](1, e={})
    assert made["After"](1).b == 2
    assert list(inspect.signature(made["Plain"]).parameters) == ["a", "b", "c", "d"]


def test_they_compare_hash_and_print(made: dict[str, Any]) -> None:
    plain, below = made["Plain"], made["Below"]
    assert plain(1, c=[1]) == plain(1, c=[2])
    assert plain(1) != plain(2)
    assert plain(1) != below(1)
    assert plain(1).__eq__(1) is NotImplemented
    assert len({plain(1), plain(1), plain(2)}) == 2
    assert repr(plain(1)).endswith("Plain(a=1, b='b', c=[], e={})")
    assert made["Empty"]() == made["Empty"]()
    assert len({made["Empty"](), made["Empty"]()}) == 1
    assert len({made["Own"](1), made["Own"](-1)}) == 1
    assert made["Itself"](1) != made["Itself"](1)


def test_nothing_of_them_changes(made: dict[str, Any]) -> None:
    one = made["Plain"](1)
    with pytest.raises(dataclasses.FrozenInstanceError, match="'a'"):
        one.a = 2
    with pytest.raises(dataclasses.FrozenInstanceError, match="'a'"):
        del one.a
    with pytest.raises((dataclasses.FrozenInstanceError, AttributeError, TypeError)):
        one.other = 2
    open_one = made["Open"](1)
    open_one.a = 2
    assert open_one.a == 2


def test_they_are_copied_and_taken_apart(made: dict[str, Any]) -> None:
    one = made["Below"](1, f=2.0)
    assert copy.deepcopy(one) == copy.copy(one) == one
    assert dataclasses.replace(one, a=3) == made["Below"](3, f=2.0)
    assert [field.name for field in dataclasses.fields(one)] == ["a", "b", "c", "d", "e", "f"]
    assert dataclasses.asdict(made["Named"](b=2)) == {"a": 1, "b": 2}
    match one:
        case made_of_its_fields if type(one).__match_args__ == ("a", "b", "c", "d", "f"):
            assert made_of_its_fields is one
        case _:
            pytest.fail(str(type(one).__match_args__))


@ours.dataclass(frozen=True, slots=True)
class Kept:
    """Found by its name, as what goes through a pipe has to be."""

    a: int
    b: tuple[int, ...] = ()


def test_they_go_through_a_pipe() -> None:
    assert pickle.loads(pickle.dumps(Kept(1, (2,)))) == Kept(1, (2,))


def test_hardly_any_function_is_compiled_for_them(monkeypatch: pytest.MonkeyPatch) -> None:
    """What makes them cheap: one text a shape, where the standard library compiles six a class."""
    run, count = builtins.exec, dict.fromkeys(MAKERS, 0)
    for name, maker in MAKERS.items():

        def counted(text: str, *given: Any, name: str = name) -> None:
            count[name] += 1
            run(text, *given)

        monkeypatch.setattr(builtins, "exec", counted)
        classes_by(maker)
    assert 0 < count["ours"] < count["theirs"] / 3

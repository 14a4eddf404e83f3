"""Reading a file: values, places, encodings, and that no bytes end the program."""

from __future__ import annotations

import random

import pytest
import yaml
from hypothesis import example, given, settings
from hypothesis import strategies as st

from generator.inventory import yaml_positions
from generator.inventory.yaml_parser import PlainParser, fast_parser
from generator.inventory.yaml_positions import Document, FilePosition, read_document

GOOD = """\
# The screens of the place.
screens:
  - id: lane
    name: Lane screen
    shape: {file: walk.gpx, name: "Lane: screen"}
    width_ft: 24
    hides: [walk-in, road]
    cover_now:
      kind: perennial_sod
      seen_on: 2026-07-12
      note: |
        brome #2 and
        aster
    plantings:
      - id: lane-27
        seed: [{species: switchgrass, rate_pls_lb_per_ac: 8.5}]
        method: 'frost_seed'
"""


STAYS_TEXT = """
no NO yes Yes on off y True FALSE Null NULL 012 08 00 +5 .5 1. 1e3 3e2 0x1F 0o17 1_000 1,200
5:30 1:30:00 2026-04-15 2026-04-15T10:00:00 .inf .nan NaN 1/4 $12.50 98% 8-10 5-13-4
1234567890123456789 ２４ = 30'
"""


def read(text: str) -> Document:
    document, problems = read_document(text.encode(), "f.yaml")
    assert problems == ()
    assert document is not None
    return document


def test_values_and_places_of_a_good_file() -> None:
    document = read(GOOD)
    assert document.data == {
        "screens": [
            {
                "id": "lane",
                "name": "Lane screen",
                "shape": {"file": "walk.gpx", "name": "Lane: screen"},
                "width_ft": 24,
                "hides": ["walk-in", "road"],
                "cover_now": {
                    "kind": "perennial_sod",
                    "seen_on": "2026-07-12",
                    "note": "brome #2 and\naster\n",
                },
                "plantings": [
                    {
                        "id": "lane-27",
                        "seed": [{"species": "switchgrass", "rate_pls_lb_per_ac": 8.5}],
                        "method": "frost_seed",
                    }
                ],
            }
        ]
    }
    assert document.mark(("screens", 0, "width_ft")) == FilePosition(6, 15)
    assert document.key_mark(("screens", 0, "width_ft")) == FilePosition(6, 5)
    assert document.mark(("screens", 0, "shape", "name")) == FilePosition(5, 35)
    assert document.mark(("screens", 0, "hides", 1)) == FilePosition(7, 22)
    assert document.mark(("screens", 0, "cover_now", "note")) == FilePosition(11, 13)
    assert document.mark(("screens", 0)) == FilePosition(3, 5)


def test_a_missing_value_is_placed_at_what_it_should_stand_in() -> None:
    document = read(GOOD)
    assert document.mark(("screens", 0, "contract")) == FilePosition(3, 5)
    assert document.mark(("screens", 0, "shape", "line", 3)) == FilePosition(5, 12)
    assert document.mark(("screens", 7, "id")) == FilePosition(3, 3)
    assert document.key_mark(("strips",)) == FilePosition(2, 1)
    assert Document("f.yaml", None, {}, {}).mark(("a", 0)) == FilePosition(1, 1)


def test_columns_count_characters() -> None:
    document = read("name: Öster🌾land\nshape: {ä🌾: x}\n")
    assert document.mark(("shape", "ä🌾")) == FilePosition(2, 13)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("24", 24),
        ("0", 0),
        ("-3", -3),
        ("0.5", 0.5),
        ("-3.2", -3.2),
        ("1.10", 1.1),
        ("true", True),
        ("false", False),
        ("null", None),
        ("~", None),
        ("", None),
        ("'24'", "24"),
        ('"true"', "true"),
        ("''", ""),
    ]
    + [(text, text) for text in STAYS_TEXT.split()],
)
def test_meaning_of_plain_text(text: str, value: object) -> None:
    data = read(f"key: {text}\n").data
    assert data == {"key": value}
    assert isinstance(data, dict)
    assert type(data["key"]) is type(value)


@pytest.mark.parametrize("text", ["", "\n\n", "# only a remark\n", "---\n", "\ufeff"])
def test_an_empty_file_is_a_document_without_data(text: str) -> None:
    document = read(text)
    assert document.data is None
    assert document.mark(()).line == 1


@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be"])
def test_line_ends_and_encodings_change_nothing(line_end: str, encoding: str) -> None:
    raw = GOOD.replace("\n", line_end).encode(encoding)
    document, problems = read_document(raw, "f.yaml")
    assert problems == ()
    assert document == read(GOOD)


def test_marked_utf16_of_both_orders() -> None:
    for mark, codec in ((b"\xff\xfe", "utf-16-le"), (b"\xfe\xff", "utf-16-be")):
        document, problems = read_document(mark + "näme: ñ\n".encode(codec), "f.yaml")
        assert problems == ()
        assert document is not None
        assert document.data == {"näme": "ñ"}


@pytest.mark.parametrize(
    ("raw", "line", "column", "code", "fragment"),
    [
        (b"id: x\nname: Bob\x92s lane\n", 2, 10, "F003", "in which it is ’"),
        (b"\xef\xbb\xbfname: caf\xe9\n", 1, 10, "F003", "0xE9"),
        (b"a: 1\r\nname: \xc3\xa9\xe9\r\n", 2, 8, "F003", "0xE9"),
        ("name: x\n".encode("utf-32"), 1, 1, "F004", "UTF-32"),
        ("name: x\n".encode("utf-32-le"), 1, 1, "F004", "UTF-32"),
        (b"\xff\xfea\x00:\x00\x00\xdc \x00", 1, 3, "F005", "UTF-16"),
        (b"\xff\xfea\x00:", 1, 2, "F005", "UTF-16"),
        (b"PK\x03\x04\x14\x00", 1, 1, "F002", "spreadsheet"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", 1, 1, "F002", "spreadsheet"),
        (b"{\\rtf1\\ansi id: x}", 1, 1, "F002", "word-processor"),
        (b"\n<!DOCTYPE html>\n<html>", 1, 1, "F002", "web page"),
        (b"%PDF-1.7", 1, 1, "F002", "PDF"),
        (bytes(range(32)), 1, 1, "F002", "not text"),
        (b"name: Lane screen\x00 by the road\n", 1, 18, "F006", "U+0000"),
        (b"a" * 5_000_001, 1, 1, "F001", "5.0 MB"),
    ],
)
def test_other_encodings_and_files_are_named(
    raw: bytes, line: int, column: int, code: str, fragment: str
) -> None:
    _, problems = read_document(raw, "f.yaml")
    assert len(problems) == 1
    assert (problems[0].line, problems[0].column, problems[0].code) == (line, column, code)
    assert fragment in str(problems[0])


def test_of_many_unseen_characters_the_first_are_shown_and_the_rest_counted() -> None:
    _, problems = read_document(b"note: some words of text \x07\n" * 50, "f.yaml")
    unseen = [problem for problem in problems if problem.code == "F006"]
    assert len(unseen) == 21
    assert "30 more" in unseen[-1].what


def test_a_document_stays_beside_faults_that_leave_it_readable() -> None:
    document, problems = read_document(b"a: 1\na: 2\nb: lot #2\n", "f.yaml")
    assert [problem.code for problem in problems] == ["F114", "F119"]
    assert document is not None
    assert document.data == {"a": 1, "b": "lot"}


@pytest.mark.parametrize("text", ["a: 1\n---\nb: 2\n", "%YAML 1.2\n---\na: 1\n", "[" * 30])
def test_no_document_where_it_cannot_be_told_what_is_left(text: str) -> None:
    document, problems = read_document(text.encode(), "f.yaml")
    assert document is None
    assert problems


@pytest.mark.parametrize("wrong", ["a: *b", "<<: x", "a: [1", "a 1", "a: {b: c", "a: 'b", "\ta: 1"])
def test_what_stands_around_a_line_that_cannot_be_read_is_read(wrong: str) -> None:
    text = f"one:\n  - b: 1\n  - c: 2\n    {wrong}\n    d: 3\ntwo:\n  - lot #2\n"
    document, problems = read_document(text.encode(), "f.yaml")
    assert [(one.line, one.code) for one in problems][1:] == [(7, "F119")]
    assert problems[0].line == 4
    assert document is not None
    assert document.data == {"one": [{"b": 1}, {"c": 2, "d": 3}], "two": ["lot"]}
    assert ("one", 1) in document.doubtful
    assert ("one", 0) not in document.doubtful
    assert ("two", 0) not in document.doubtful


@pytest.mark.parametrize("text", ["[" * 100_000, "- " * 100_000, "{a: " * 100_000, "? " * 100_000])
def test_deep_nesting_is_refused_at_once(text: str) -> None:
    _, problems = read_document(text.encode(), "f.yaml")
    assert "F118" in [problem.code for problem in problems]


def test_twenty_levels_are_read() -> None:
    assert read("[" * 20 + "]" * 20).data is not None


def in_file(mark: FilePosition, text: str) -> bool:
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return 1 <= mark.line <= len(lines) and 1 <= mark.column <= len(lines[mark.line - 1]) + 1


def check_anything(raw: bytes) -> None:
    document, problems = read_document(raw, "f.yaml")
    assert document is not None or problems
    for problem in problems:
        assert problem.line >= 1
        assert problem.column >= 1
        assert "\n" not in str(problem)


@given(st.binary(max_size=200))
@example(b"\xff\xfe\x00")
@example(b'a: "\\UFFFFFFFF"')
@example(b'a: "\\ud800"')
@example(b"%YAML " + b"9" * 5000 + b".1\n")
def test_random_bytes_never_raise(raw: bytes) -> None:
    check_anything(raw)


PIECES = st.sampled_from(
    [
        *("a", "b: ", "- ", "-x", " ", "  ", "\n", "\n  ", "\n\t", "\t", "#", " #c", "'", '"'),
        *("[", "]", "{", "}", ",", "?", "? ", ":", "|", ">", "|\n ", "&a ", "*a", "!t ", "..."),
        *("---", "%", "\\", "<<: ", "@", "|2\n", "é", "“", "=", "2", "\xa0", "\ufeff", "\x85"),
        *("\r", "\x00"),
    ]
)


@given(st.lists(PIECES, max_size=14))
@example(["a", "b: ", "{"])
@example(["|", "\t"])
@example(["[", "? ", "]"])
def test_both_parsers_agree_and_every_place_is_in_the_file(pieces: list[str]) -> None:
    text = "".join(pieces)
    raw = text.encode()
    fast = read_document(raw, "f.yaml")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(yaml_positions, "fast_parser", lambda: PlainParser)
        assert read_document(raw, "f.yaml") == fast
    document, problems = fast
    assert document is not None or problems
    seen = text.removeprefix("\ufeff")
    assert all(in_file(FilePosition(problem.line, problem.column), seen) for problem in problems)
    if document is not None:
        marks = [*document.value_marks.values(), *document.key_marks.values()]
        assert all(in_file(mark, seen) for mark in marks)


@given(st.randoms(use_true_random=False), st.integers(1, 6))
def test_a_good_file_with_slips_never_raises(slips: random.Random, count: int) -> None:
    raw = bytearray(GOOD.encode())
    for _ in range(count):
        at = slips.randrange(len(raw))
        kind = slips.randrange(3)
        if kind == 0:
            del raw[at : at + slips.randrange(1, 4)]
        elif kind == 1:
            raw[at:at] = slips.choice(
                [b"'", b'"', b": ", b"#", b"\t", b" ", b"\n", b"[", b"-", b"\x92"]
            )
        else:
            raw[at] = slips.randrange(256)
    check_anything(bytes(raw))


# PyYAML writes what lies beyond as a backslash, which is a fault of its own in an owner's file.
SAFE_TEXT = st.text(
    st.characters(max_codepoint=0xFFFD, categories=["L", "N", "P", "S"], include_characters=" "),
    max_size=20,
)
DATA = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(10**9), 10**9)
    | st.decimals(-1000, 1000, places=3).map(lambda value: float(value) + 0.0)
    | SAFE_TEXT,
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(SAFE_TEXT.filter(lambda key: key != ""), inner, max_size=4)
    ),
    max_leaves=12,
)


def as_written(data: object) -> str:
    """The data with every text in double quotes, as a writer that takes no chances does."""

    class Quoting(yaml.SafeDumper):
        def ignore_aliases(self, data: object) -> bool:  # noqa: ARG002 - pyyaml calls it so
            return True

    Quoting.add_representer(
        str, lambda dumper, text: dumper.represent_scalar("tag:yaml.org,2002:str", text, style='"')
    )
    return yaml.dump(data, Dumper=Quoting, allow_unicode=True, width=10**6)


@given(DATA)
@settings(max_examples=200)
def test_data_written_out_reads_back_equal_with_places_in_the_file(data: object) -> None:
    text = as_written(data)
    document = read(text)
    assert document.data == data
    marks = [*document.value_marks.values(), *document.key_marks.values()]
    assert all(in_file(mark, text) for mark in marks)


def test_the_fast_parser_is_the_one_built_on_libyaml_where_there_is_one() -> None:
    assert (fast_parser() is PlainParser) is not yaml.__with_libyaml__

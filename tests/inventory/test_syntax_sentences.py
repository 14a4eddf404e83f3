"""What a landowner may type, and the sentence that must come of it: place, code, cure.

The expected lines are written by hand from what was meant, never copied from the program.
"""

from __future__ import annotations

import pytest
import yaml

from generator.inventory import yaml_positions
from generator.inventory.yaml_parser import PlainParser
from generator.inventory.yaml_positions import read_document

SCREEN = "screens:\n  - id: lane\n"

# text, line, column, code, fragment of the sentence
FAULTS = [
    # Quotes
    ("name: 'Bob's corner'", 1, 7, "F102", """write: name: "Bob's corner\""""),
    ('name: "24" strip"', 1, 7, "F102", """write: name: '24" strip'"""),
    ("name: 'tis land\n", 1, 7, "F102", """write: name: "'tis land\""""),
    ("name: 'tis land\nnote: Bob's\n", 1, 7, "F102", "closes only in line 2"),
    ('name: "Lane screen\nwidth_ft: 24\n', 1, 7, "F102", 'write: name: "Lane screen"'),
    ("- {name: 'Bob's corner', id: x}", 1, 10, "F102", '''"Bob's corner"'''),
    ("name: “Lane screen”", 1, 7, "F111", 'write: name: "Lane screen"'),
    ("name: ‘Lane screen’", 1, 7, "F111", 'write: name: "Lane screen"'),
    ("name: “Lane screen\"", 1, 7, "F111", 'write: name: "Lane screen"'),
    ("“name”: Lane screen", 1, 1, "F111", "write: name:"),
    ('file: "C:\\land"', 1, 7, "F113", "write: file: 'C:\\land'"),
    ('file: "C:\\new"', 1, 7, "F113", "write: file: 'C:\\new'"),
    ('note: "a \\x07 bell"', 1, 7, "F122", "cannot be seen"),
    ('note: "a \\UFFFFFFFF"', 1, 10, "F122", "cannot be seen"),
    # Colons
    ("note: bring: gloves", 1, 7, "F103", 'write: note: "bring: gloves"'),
    ("  - note: bring: gloves", 1, 11, "F103", '"bring: gloves"'),
    ("a: {note: bring: gloves}", 1, 16, "F103", "second colon"),
    ("width_ft:24", 1, 1, "F105", "write: width_ft: 24"),
    (SCREEN + "    width_ft:24\n    name: x\n", 3, 5, "F105", "write: width_ft: 24"),
    (SCREEN + "    width_ft:24\n", 3, 5, "F105", "write: width_ft: 24"),
    ("name: Lane\n width_ft:24\n", 2, 2, "F105", "write: width_ft: 24"),
    ("shape: {length_ft:24}", 1, 9, "F105", "write: length_ft: 24"),
    ("name\nid: x\n", 1, 1, "F108", "no key with a colon"),
    (SCREEN + "    name Lane\n    width_ft: 24\n", 3, 5, "F108", '"name Lane"'),
    ("width_ft = 24", 1, 1, "F112", "write: width_ft: 24"),
    (SCREEN + "    width_ft = 24\n    name: x\n", 3, 5, "F112", "write: width_ft: 24"),
    ("id: x\nwidth_ft： 24\n", 2, 1, "F112", "write: width_ft: 24"),
    ("id: x\n: y\n", 2, 1, "F117", "without a key"),
    # A mark that begins a value
    ("note: @home", 1, 7, "F104", 'write: note: "@home"'),
    ("note: `x`", 1, 7, "F104", 'write: note: "`x`"'),
    ("note: % of acres", 1, 7, "F104", 'write: note: "% of acres"'),
    ("note: * as told", 1, 7, "F104", 'write: note: "* as told"'),
    ("note: *as told", 1, 7, "F115", 'write: note: "*as told"'),
    ("note: & more", 1, 7, "F104", 'write: note: "& more"'),
    ("note: &more", 1, 7, "F115", 'write: note: "&more"'),
    ("note: !wet", 1, 7, "F115", 'write: note: "!wet"'),
    ("note: ! wet here", 1, 7, "F115", 'write: note: "! wet here"'),
    ("note: [old] lane", 1, 7, "F104", 'write: note: "[old] lane"'),
    ("note: - none", 1, 7, "F104", 'write: note: "- none"'),
    ("note: ? who knows", 1, 7, "F104", 'write: note: "? who knows"'),
    ("note: | left side", 1, 7, "F104", 'write: note: "| left side"'),
    ("note: > 5 ft", 1, 7, "F104", 'write: note: "> 5 ft"'),
    ("note: >#5", 1, 7, "F104", 'write: note: ">#5"'),
    ("note: {wet} ground", 1, 7, "F104", 'write: note: "{wet} ground"'),
    ("note: ] x", 1, 7, "F104", 'write: note: "] x"'),
    ("note: , x", 1, 7, "F104", 'write: note: ", x"'),
    ("%YAML 1.1\n---\nid: x\n", 1, 1, "F104", "cannot begin with %"),
    # Indentation
    ("ground:\n\twells: none\n", 2, 1, "F101", "a tab"),
    ("name: x\n\tid: y\n", 2, 1, "F101", "a tab"),
    ("ground:\n\u00a0 wells: none\n", 2, 1, "F101", "U+00A0"),
    ("width_ft:\u00a024", 1, 1, "F101", "U+00A0"),
    ("width_ft: \u00a024", 1, 11, "F101", "U+00A0"),
    (SCREEN + "     name: x\n", 3, 6, "F107", 'begin it in column 5, under "id"'),
    (SCREEN + "   name: x\n", 3, 4, "F107", 'begin it in column 5, under "id"'),
    ("a:\n  b: 1\n c: 2\n", 3, 2, "F107", 'begin it in column 3, under "b"'),
    (SCREEN + "    name: x\n - id: far\n", 4, 2, "F107", 'column 3, under "- id: lane"'),
    (SCREEN + "    name: x\n   - id: far\n", 4, 4, "F107", 'column 3, under "- id: lane"'),
    # Dashes and lists
    ("screens:\n  -id: lane\n   name: x\n", 2, 3, "F106", "write: - id: lane"),
    (SCREEN + "  -id: far\n", 3, 3, "F106", "write: - id: far"),
    ("hides:\n  - walk-in\n  -road\n", 3, 3, "F106", "write: - road"),
    ("hides: walk-in\n  - road\n", 2, 3, "F121", "has a value already"),
    ("name: x\n- id: y\n", 2, 1, "F121", "among keys"),
    ("- id: y\nname: x\n", 2, 1, "F121", "among list entries"),
    # Brackets and braces
    ("hides: [a, b\nname: x\n", 1, 8, "F109", "a ] at its end"),
    ("hides: [a, b", 1, 8, "F109", "a ] at its end"),
    ("hides: [", 1, 8, "F109", "a ] at its end"),
    ("shape: {file: walk.gpx\nname: x\n", 1, 8, "F109", "a } at its end"),
    ("shape: {file: walk.gpx]", 1, 23, "F109", "} in its place"),
    ('hides: ["a" "b"]', 1, 13, "F109", "a comma is missing"),
    ("{name: Smith, the elder, x: 1}", 1, 15, "F110", '"the elder"'),
    ("{rate_qt: 1,5, x: 1}", 1, 13, "F110", "write 1.5"),
    ("{length_ft: 1,240}", 1, 15, "F110", "1240; or with a point: 1.240"),
    ("{page: 4, 5: x}", 1, 11, "F117", '"5":'),
    ("note: {{ when }}", 1, 8, "F117", "where a key should"),
    # Text lost behind a #
    ("nozzle: nozzle #2", 1, 16, "F119", '"#2" would be left out'),
    ("note: see lot #4 first\nname: x\n", 1, 15, "F119", '"#4 first"'),
    ("note: see lot #4 first\n  and more\n", 1, 15, "F119", '"#4 first"'),
    ("nozzle: #2", 1, 9, "F119", '"#2"'),
    ("- lot\t#2", 1, 7, "F119", '"#2"'),
    ("lots: [lot #2, lot #3]", 1, 12, "F119", '"#2, lot #3]"'),
    ("lots: [lot 1, #2\n  lot 3]", 1, 15, "F119", '"#2"'),
    ("lot #2: x", 1, 5, "F119", '"#2: x"'),
    # What YAML offers and no file here needs
    ("name: x\nid: y\nname: z\n", 3, 1, "F114", "first in line 1"),
    ("a: 1\nb:\n  <<: c\n", 3, 3, "F115", "<<"),
    ("a: 1\n---\nb: 2\n", 2, 1, "F116", "--- ends"),
    ("---\na: 1\n---\n", 3, 1, "F116", "--- ends"),
    ("a: 1\n...\nb: 2\n", 2, 1, "F116", "... ends"),
    ("2027: x\n", 1, 1, "F117", '"2027":'),
    ("true: x\n", 1, 1, "F117", '"true":'),
    ("[a, b]: x\n", 1, 1, "F117", "where a key should"),
    ('"": x\n', 1, 1, "F117", "without a key"),
    ("? name\n: x\n", 1, 3, "F117", "write: name:"),
    ("[" * 30, 1, 21, "F118", "20 levels"),
    # Characters that cannot be seen
    ("name: La\x07ne\nid: x\nnote: some words of ground\n", 1, 9, "F006", "U+0007"),
    ("name: Lane\u2028screen\n", 1, 11, "F006", "U+2028"),
    ("name: Lane\ufeffscreen\n", 1, 11, "F006", "U+FEFF"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "line", "column", "code", "fragment"), FAULTS)
def test_sentence(text: str, line: int, column: int, code: str, fragment: str) -> None:
    _, problems = read_document(text.encode(), "screens.yaml")
    assert problems, "read without a word"
    first = problems[0]
    assert (first.line, first.column, first.code) == (line, column, code), str(first)
    assert fragment in str(first)


@pytest.mark.parametrize("text", [row[0] for row in FAULTS])
def test_one_slip_gives_one_fault(text: str) -> None:
    _, problems = read_document(text.encode(), "f.yaml")
    assert len(problems) == 1, [str(one) for one in problems]


@pytest.mark.parametrize("text", [row[0] for row in FAULTS])
def test_both_parsers_give_the_same_sentences(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    fast = read_document(text.encode(), "f.yaml")
    monkeypatch.setattr(yaml_positions, "fast_parser", lambda: PlainParser)
    assert read_document(text.encode(), "f.yaml") == fast


@pytest.mark.parametrize("text", [row[0] for row in FAULTS])
def test_the_parsers_own_words_never_show(text: str) -> None:
    try:
        list(yaml.parse(text, Loader=yaml.SafeLoader))
    except yaml.YAMLError as fault:
        words = [getattr(fault, "problem", ""), getattr(fault, "context", "")]
    except (ValueError, OverflowError):
        words = []
    else:
        words = []
    shown = " ".join(str(problem) for problem in read_document(text.encode(), "f.yaml")[1])
    assert shown
    assert not [word for word in words if word and word in shown]


CURED = [
    ('name: "Bob\'s corner"', {"name": "Bob's corner"}),
    ("name: '24\" strip'", {"name": '24" strip'}),
    ("file: 'C:\\land'", {"file": "C:\\land"}),
    ('note: "bring: gloves"', {"note": "bring: gloves"}),
    ('note: "\'tis land"', {"note": "'tis land"}),
    ('note: "@home"', {"note": "@home"}),
]


@pytest.mark.parametrize(("text", "data"), CURED)
def test_the_cures_read_as_meant(text: str, data: object) -> None:
    document, problems = read_document(text.encode(), "f.yaml")
    assert problems == ()
    assert document is not None
    assert document.data == data


FINE = [
    ("width_ft: 24 # measured\n", {"width_ft": 24}),
    ("#no space\nwidth_ft: 24\n  #nor here\n", {"width_ft": 24}),
    ('nozzle: "nozzle #2"\n', {"nozzle": "nozzle #2"}),
    ("nozzle: 'x' #remark\n", {"nozzle": "x"}),
    ("note: |\n  see lot #4\n  @ * ! and: more\n", {"note": "see lot #4\n@ * ! and: more\n"}),
    ("note: a#2 and b#3\n", {"note": "a#2 and b#3"}),
    ("width_ft: 24 ### measured\n", {"width_ft": 24}),
    ("screens: #all of them\n  - a\n", {"screens": ["a"]}),
    ("width_ft:\t24\n", {"width_ft": 24}),
    ("note: a\tb\n", {"note": "a\tb"}),
    ("note: one line\n  and its end\n", {"note": "one line and its end"}),
    ("note: see https://example.org/a\n", {"note": "see https://example.org/a"}),
    ("note: [why?, a: b]\n", {"note": ["why?", {"a": "b"}]}),
    ("name: the hunters’ “old” lane\n", {"name": "the hunters’ “old” lane"}),
    ("name: “Old” lane\n", {"name": "“Old” lane"}),
    ("---\nname: x\n", {"name": "x"}),
    ("name: x\n...\n", {"name": "x"}),
    ("- -5\n- - a\n", [-5, ["a"]]),
    ("rate: 1/4\nprice: $12.50\npurity: 98%\nsize: 30'\n",
     {"rate": "1/4", "price": "$12.50", "purity": "98%", "size": "30'"}),
    ("a: {b: , c: 1}\n", {"a": {"b": None, "c": 1}}),
]  # fmt: skip


@pytest.mark.parametrize(("text", "data"), FINE)
def test_what_is_well_written_reads_without_a_word(text: str, data: object) -> None:
    document, problems = read_document(text.encode(), "f.yaml")
    assert [str(problem) for problem in problems] == []
    assert document is not None
    assert document.data == data


def test_every_fault_of_a_document_in_one_go() -> None:
    text = "a: 1\na: 2\nb: &x 1\nc: *x\n<<: 3\nd: !!str 5\ne: see #4\n7: x\nf: “g”\nh = 3\ni: 1\n"
    _, problems = read_document(text.encode(), "f.yaml")
    found = [(problem.line, problem.code) for problem in problems]
    assert found == [
        (2, "F114"), (3, "F115"), (4, "F115"), (5, "F115"), (6, "F115"), (7, "F119"),
        (8, "F117"), (9, "F111"), (10, "F112"),
    ]  # fmt: skip

"""Sentences for the way a file is written: quotes, colons, dashes, brackets, indentation.

Each shows the text as it stands and, where it can be known, the line as it should be written.
"""

from __future__ import annotations

import re

from generator.inventory.problems import Sentence, shown_text, shown_value

# A sentence with its place: line and column, both 0-based.
Found = tuple[int, int, Sentence]

_NOT_YAML = {
    "@": "a value cannot begin with @",
    "`": "a value cannot begin with `",
    "%": "a value cannot begin with %",
    "*": "* at the beginning of a value is read as a link to another value",
    "&": "& at the beginning of a value is read as a label for other values",
    "!": "! at the beginning of a value is read as a kind of value",
    "|": "| at the beginning of a value means that its text begins on the next line",
    ">": "> at the beginning of a value means that its text begins on the next line",
    "[": "[ at the beginning of a value opens a list",
    "{": "{ at the beginning of a value opens a group of keys",
    "]": "] closes a list, but none is open",
    "}": "} closes a group of keys, but none is open",
    ",": "a value cannot begin with a comma",
    "-": "a dash with a space begins a list entry, which cannot follow a key on its line",
    "?": "? with a space cannot begin a value",
}


_CURLY = "“”„‟‘’‚‛«»"


def in_quotes(text: str) -> str:
    """Text in the quotes that need the least change in it: double, single, single doubled."""
    if '"' not in text and "\\" not in text:
        return f'"{text}"'
    return "'" + text.replace("'", "''") + "'"


def quoted_value(before: str, value: str) -> str:
    """The cure `write: key: "value"`, from what stands before a value and the value.

    Inside brackets it is of the one part that the value stands in.
    """
    part = re.split(r"[\[{,]", before)[-1] if value_is_in_flow(before) else before
    line = f"{part.strip()} {in_quotes(value.strip())}".strip()
    return f"write: {shown_text(line)}"


def value_is_in_flow(before: str) -> bool:
    """Whether a value stands inside brackets that are open in its line, by what is before it."""
    return any(before.count(one) > before.count(other) for one, other in ("[]", "{}"))


def quote_left_open(before: str, text: str) -> Sentence:
    """A quote that opens at the value's beginning and is closed nowhere."""
    mark = text[:1]
    what = f"the quote {mark} before {shown_value(text[1:].strip())} is never closed"
    if mark == "'":  # most often an apostrophe that begins a word
        return Sentence("F102", what, f"close it, or {quoted_value(before, text)}")
    return Sentence("F102", what, quoted_value(before, text[1:]))


def text_after_quote(before: str, text: str, after: str) -> Sentence:
    """Text behind a closing quote: `'Bob's corner'`, `"24" strip"`."""
    what = f"the quote closes before {shown_value(after.strip())}"
    mark, whole = text[:1], text.strip()
    inner = whole[1:-1] if whole.endswith(mark) else whole
    return Sentence("F102", what, quoted_value(before, inner))


def quote_closes_later(text: str, line: int) -> Sentence:
    """A quote that opens here and is closed only by a stray one some lines further down."""
    what = f"the quote before {shown_value(text[1:].strip())} closes only in line {line}"
    return Sentence("F102", what, "close it in its line, or put the other kind of quotes round it")


def colon_in_value(before: str, value: str) -> Sentence:
    what = f"a colon with a space stands inside the value {shown_value(value.strip())}"
    return Sentence("F103", what, quoted_value(before, value))


def colon_in_braces(text: str) -> Sentence:
    what = f"a second colon stands in {shown_value(text.strip())}"
    return Sentence("F103", what, 'quotes round the value, as in {name: "north: upper end"}')


def leading_mark(before: str, value: str) -> Sentence:
    """A value whose first character means something else to the reader."""
    what = _NOT_YAML.get(value[:1], f"a value cannot begin with {shown_text(value[:1])}")
    return Sentence("F104", what, quoted_value(before, value))


def no_dash(text: str, column: int) -> Sentence:
    """A second entry of a list whose dash is missing; `column` is that of its first key, from 0."""
    what = f"{shown_value(text.strip())} begins another entry, and no dash stands before it"
    dash = max(column - len("- ") + 1, 1)
    return Sentence("F470", what, f"write: - {shown_text(text.strip())}, its dash in column {dash}")


def percent_line(text: str) -> Sentence:
    what = f"a line cannot begin with %, as {shown_value(text.strip())} does"
    return Sentence("F104", what, "a key and a colon first, or a # before a remark")


def text_after_bracket(before: str, value: str) -> Sentence:
    what = f"text follows the closing bracket in {shown_value(value.strip())}"
    return Sentence("F104", what, quoted_value(before, value))


def no_space_after_colon(key: str, value: str) -> Sentence:
    what = f"no space stands after the colon in {shown_value(f'{key}:{value}')}"
    return Sentence("F105", what, f"write: {shown_text(f'{key}: {value.strip()}')}")


def no_space_after_dash(text: str) -> Sentence:
    what = f"no space stands after the dash in {shown_value(text.strip())}"
    rest = text.strip().lstrip("-").strip()
    return Sentence("F106", what, f"write: - {shown_text(rest)}")


def misplaced(text: str, column: int, under: str) -> Sentence:
    """A line whose beginning fits under no line above; `column` (1-based) is the nearest that does.

    An empty `under` says that no line above helps.
    """
    what = f"{shown_value(text.strip())} does not line up with the lines above"
    if not under:
        return Sentence("F107", what, "as many spaces as the line it belongs beside")
    return Sentence("F107", what, f"begin it in column {column}, under {shown_value(under)}")


def no_colon(text: str) -> Sentence:
    what = f"the line {shown_value(text.strip())} has no key with a colon"
    cure = "write key: value; if it goes on from the line above, begin it further in"
    return Sentence("F108", what, cure)


def bracket_left_open(bracket: str, text: str) -> Sentence:
    close = {"[": "]", "{": "}"}[bracket]
    before = f" before {shown_value(text.strip())}" if text.strip() else ""
    what = f"the {bracket}{before} is never closed"
    return Sentence(
        "F109", what, f"a {close} at its end, or quotes round a text that holds a {bracket}"
    )


def wrong_bracket(bracket: str, found: str) -> Sentence:
    close = {"[": "]", "{": "}"}[bracket]
    return Sentence("F109", f"{found} closes what {bracket} opened", f"{close} in its place")


def no_comma(bracket: str) -> Sentence:
    what = f"a comma is missing inside {bracket} before this"
    return Sentence("F109", what, "commas between the parts; quotes round a text with marks in it")


def comma_in_braces(text: str) -> Sentence:
    what = f"{shown_value(text)} stands in braces without a colon; a comma there parts keys"
    return Sentence("F110", what, 'quotes round a text with commas or braces: {name: "one, two"}')


def curly_quotes(before: str, value: str) -> Sentence:
    """Typographic quotes round a value, which would stay part of its text."""
    what = f"the curly quotes in {shown_value(value)} would stay part of the text"
    return Sentence("F111", what, quoted_value(before, value.strip(_CURLY + "\"'")))


def comma_in_number(before: str, after: str) -> Sentence:
    """A number with a comma in it, inside braces, where a comma parts keys."""
    what = f"{before},{after} stands in braces, where a comma parts keys"
    if len(after) == 3:
        cure = f"without the comma: {before}{after}; or with a point: {before}.{after}"
        return Sentence("F110", what, cure)
    return Sentence("F110", what, f"with a point: write {before}.{after}")


def curly_quotes_round_key(key: str) -> Sentence:
    what = f"the curly quotes in {shown_value(key)} would stay part of the key"
    return Sentence("F111", what, f"write: {shown_text(key.strip(_CURLY))}:")


def not_a_colon(key: str, mark: str, value: str) -> Sentence:
    """`=` or a full-width colon in place of a colon."""
    what = f"{mark} stands in place of a colon after {shown_value(key)}"
    return Sentence("F112", what, f"write: {shown_text(f'{key}: {value.strip()}')}")


def backslash(before: str, text: str) -> Sentence:
    """A backslash between double quotes, where it changes the letter behind it."""
    inner = text.strip().removeprefix('"').removesuffix('"')
    what = f"a backslash between double quotes changes the text {shown_value(inner)}"
    return Sentence("F113", what, quoted_value(before, inner))


def hidden_escape() -> Sentence:
    what = "a backslash here stands for a character that cannot be seen"
    return Sentence("F122", what, "the words only, without it")


def repeated_key(key: str, first_line: int) -> Sentence:
    what = f"the key {shown_value(key)} is given twice, first in line {first_line}"
    return Sentence("F114", what, "one of them only")


def refused_mark(before: str, value: str) -> Sentence:
    """A value that begins with `&`, `*` or `!`, and would read as something else than text."""
    what = _NOT_YAML[value[:1]]
    return Sentence("F115", f"{what}, which is not used here", quoted_value(before, value))


def merge_key() -> Sentence:
    return Sentence(
        "F115", "<< takes keys from elsewhere, which is not used here", "the keys in full"
    )


def second_document(mark: str) -> Sentence:
    what = f"{mark} ends the file's contents here, and what follows would be left out"
    return Sentence("F116", what, "take the line out; a file may have one --- as its first line")


def key_not_text(key: str) -> Sentence:
    """A key without quotes that reads as a number, true, false or nothing."""
    return Sentence("F117", f"the key {key} is not a word", f'a word, or quotes: "{key}":')


def group_as_key() -> Sentence:
    what = "a list or a group stands where a key should"
    return Sentence("F117", what, "a word as the key; one pair of braces or brackets, not two")


def key_without_name() -> Sentence:
    return Sentence("F117", "a colon stands without a key before it", "write key: value")


def question_mark_key(key: str) -> Sentence:
    what = f"? stands before the key {shown_value(key)}"
    return Sentence("F117", what, f"write: {shown_text(key)}:")


def too_deep(levels: int) -> Sentence:
    return Sentence("F118", f"more than {levels} levels stand inside one another", "fewer levels")


def text_lost_after_hash(lost: str) -> Sentence:
    what = f"{shown_value(lost.strip())} would be left out, since # after a space begins a remark"
    cure = 'quotes round the value, as in "nozzle #2"; a space after # if it is a remark'
    return Sentence("F119", what, cure)


def unreadable(text: str) -> Sentence:
    what = f"{shown_value(text.strip())} cannot be read as it stands"
    return Sentence("F120", what, "lines of key: value, with quotes round a text that holds marks")


def list_among_keys(text: str) -> Sentence:
    what = f"the list entry {shown_value(text.strip())} stands among keys"
    return Sentence("F121", what, "a key of its own on the line above the list, or no dash")


def list_under_value(text: str) -> Sentence:
    what = f"the list entry {shown_value(text.strip())} stands under a key that has a value already"
    return Sentence("F121", what, "a key with nothing behind its colon above the list")


def key_among_list(text: str) -> Sentence:
    what = f"the key {shown_value(text.strip())} stands among list entries"
    cure = "two spaces further in if it belongs to the entry above, or a dash before it"
    return Sentence("F121", what, cure)


def tab_indentation() -> Sentence:
    return Sentence("F101", "a tab stands where spaces should", "spaces only before a line's text")


def unusual_space(code_point: int) -> Sentence:
    what = f"a space that is not the usual one (U+{code_point:04X}) stands here"
    return Sentence("F101", what, "the space of the space bar")

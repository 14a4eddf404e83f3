"""What a page says in some cases and not in others stands in the content, not in a template."""

import re
from collections.abc import Iterator
from pathlib import Path

from generator.book.content import sentences
from tests.structure.modules import CHECKOUT

PAGES = CHECKOUT / "site_templates" / "pages"
MOST_WORDS = 6
TOKEN = re.compile(r"({#.*?#}|{%.*?%}|{{.*?}}|<(?:[^<>{]|{{.*?}}|{%.*?%})*>|\n)", re.DOTALL)
INLINE = re.compile(r"</?(a|strong|em|code|b|i|time|abbr)\b")
SAID = re.compile(r'\bsay\("([\w.]+)"')


def chosen(text: str) -> Iterator[str]:
    """Runs of text that a template may leave out, what is printed in them not counted.

    They stand inside an `if`, or behind the `else` of a loop, which is said where it finds nothing.
    """
    inside: list[str] = []
    run = ""
    for token in TOKEN.split(text):
        is_block = token.startswith(("{%", "{#")) or token == "\n"
        if is_block or (token.startswith("<") and not INLINE.match(token)):
            if "if" in inside or "nothing" in inside:
                yield run
            run = ""
            if token.startswith("{%"):
                _step(re.sub(r"^{%-?\s*", "", token).split()[0], inside)
        elif token.startswith("<"):
            continue
        else:
            run += " x " if token.startswith("{{") else token
    yield run if inside else ""


def _step(word: str, inside: list[str]) -> None:
    if word in ("if", "for"):
        inside.append(word)
    elif word in ("endif", "endfor"):
        inside.pop()
    elif word == "else" and inside[-1] == "for":
        inside[-1] = "nothing"


def long_sentences(text: str) -> list[str]:
    """Sentences of more words than a template may choose by itself."""
    return [
        sentence.strip()
        for run in chosen(text)
        for sentence in re.split(r"(?<=[.!?:;])\s", run)
        if len(re.findall(r"[^\W\d_]{2,}", sentence)) > MOST_WORDS
    ]


def templates() -> list[Path]:
    return sorted(PAGES.glob("*.jinja"))


def test_no_template_chooses_a_sentence_of_its_own() -> None:
    assert len(templates()) > 50
    found = {path.name: long_sentences(path.read_text(encoding="utf-8")) for path in templates()}
    assert {name: told for name, told in found.items() if told} == {}


def test_a_sentence_inside_an_if_is_seen_and_one_outside_is_not() -> None:
    told = "The grass must not be mown before the frost comes."
    assert long_sentences(f"{{% if late %}}<p>{told}</p>{{% endif %}}") == [told]
    assert long_sentences(f"{{% if a %}}no{{% else %}}\n{told}\n{{% endif %}}") == [told]
    nothing = f"{{% for a in b %}}{{% if a %}}x{{% endif %}}{{% else %}}\n{told}\n{{% endfor %}}"
    assert long_sentences(nothing) == [told]
    assert long_sentences(f"<p>{told}</p>{{% if late %}}Not yet.{{% endif %}}") == []
    assert long_sentences(f"{{% for a in b %}}<p>{told}</p>{{% endfor %}}") == []


def test_every_sentence_is_asked_for_and_every_one_that_is_asked_for_is_there() -> None:
    asked = {
        name for path in templates() for name in SAID.findall(path.read_text(encoding="utf-8"))
    }
    assert asked == sentences().keys()


def test_a_sentence_stands_under_the_template_that_says_it() -> None:
    for path in templates():
        for name in SAID.findall(path.read_text(encoding="utf-8")):
            assert name.partition(".")[0] == path.name.partition(".")[0]

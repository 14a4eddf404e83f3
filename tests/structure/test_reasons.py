"""Stops, cautions and notes: a code each, raised somewhere, held to by a test."""

import re
from collections import Counter

import pytest

from generator.plan.findings.words import Reason, severity_of
from tests.reasons import every
from tests.structure.modules import CHECKOUT, PACKAGE

FINDINGS = PACKAGE / "plan" / "findings"


def texts(*paths: str) -> str:
    """All Python of these folders, the modules of words left out."""
    return "\n".join(
        path.read_text(encoding="utf-8")
        for folder in paths
        for path in (CHECKOUT / folder).rglob("*.py")
        if path.parent != FINDINGS
    )


def called(reason: Reason) -> str:
    """Its name as the program writes it."""
    return f"{type(reason).__name__}.{reason.name}"


def test_every_code_is_of_one_reason_and_says_how_grave_it_is() -> None:
    codes = Counter(reason.value.code for reason in every())
    assert [code for code, count in codes.items() if count > 1] == []
    for reason in every():
        letter = severity_of(reason)[0].upper()
        assert re.fullmatch(rf"{letter}\d{{3}}", reason.value.code), called(reason)


@pytest.mark.parametrize("where", ["generator", "tests"])
def test_every_reason_is_raised_and_held_to_by_a_test(where: str) -> None:
    text = texts(where)
    # a name stands after its kind; a code, in quotes or in a list of codes, in tests alone
    named = set(re.findall(r"\b\w+\.[A-Z_]+\b", text))
    named |= set(re.findall(r"\b[SCN]\d{3}\b", text)) if where == "tests" else set()
    idle = [called(reason) for reason in every() if not {called(reason), reason.value.code} & named]
    assert idle == []

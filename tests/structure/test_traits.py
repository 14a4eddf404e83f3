"""What is asked of a job goes by the traits of its kind of work, nowhere by the name of it."""

import re

from generator.reference.operations import operations
from tests.structure.modules import CHECKOUT, PACKAGE

# `operation` told apart by name, in Python or in a template.
TOLD_APART = re.compile(r"\.operation\s*(==|!=|in\b|not in\b)")


def faults(text: str) -> list[str]:
    """Lines that go by the name of a kind of work."""
    return [line.strip() for line in text.splitlines() if TOLD_APART.search(line)]


def test_nothing_goes_by_the_name_of_a_kind_of_work() -> None:
    files = [*PACKAGE.rglob("*.py"), *(CHECKOUT / "site_templates").rglob("*.jinja")]
    assert len(files) > 300
    assert {
        path.relative_to(CHECKOUT).as_posix(): found
        for path in files
        if (found := faults(path.read_text(encoding="utf-8")))
    } == {}


def test_what_goes_by_a_name_is_seen() -> None:
    assert faults('if step.operation == "spray":\n    pass') != []
    assert faults('{% if job.step.operation in ("plant", "replant") %}') != []
    assert faults("if job.step.does.sprays:") == []


def test_every_section_of_a_sheet_is_of_a_kind_of_work() -> None:
    pages = CHECKOUT / "site_templates" / "pages"
    sections = {path.name.removesuffix(".md.jinja") for path in pages.glob("job_*.md.jinja")}
    assert sections - {f"job_{name}" for name in operations()} == {"job_spray_more"}

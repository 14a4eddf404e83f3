"""Nothing of a book is left over: templates, pages and cautions that nobody would ever see."""

import ast
import re

from generator.reference.operations import operations
from tests.structure.modules import CHECKOUT, PACKAGE, modules

PAGES = CHECKOUT / "site_templates" / "pages"
# In a template, one names another; in the book a page names its own, without the ending.
NAMED = re.compile(r'["\']([a-z_]+)(?:\.md\.jinja)?["\']')


def test_every_template_is_rendered_or_is_part_of_one_that_is() -> None:
    texts = [path.read_text(encoding="utf-8") for path in (PACKAGE / "book").rglob("*.py")]
    texts += [path.read_text(encoding="utf-8") for path in PAGES.glob("*.jinja")]
    named = {name for text in texts for name in NAMED.findall(text)}
    # the section of a kind of work is asked for by its id
    named |= {f"job_{kind}" for kind in operations()}
    assert {path.name.partition(".")[0] for path in PAGES.glob("*.jinja")} - named == set()


def test_every_page_that_can_be_made_is_in_the_book() -> None:
    made = (PACKAGE / "book" / "make.py").read_text(encoding="utf-8")
    pages = {
        node.name
        for module in modules("book")
        for node in module.tree.body
        if isinstance(node, ast.FunctionDef) and node.name.endswith(("_page", "_pages"))
    }
    assert len(pages) > 30
    assert {name for name in pages if not re.search(rf"\b{name}\b", made)} == set()


def test_every_caution_is_of_a_kind_of_work() -> None:
    used = {kind.cautions for kind in operations().values()} | {"general"}
    files = {path.stem for path in (CHECKOUT / "content" / "callouts").glob("*.md")}
    assert files == used

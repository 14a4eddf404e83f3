"""Text that an owner types is text in every output, whatever it looks like."""

import csv
import html
import io
import json
import re
import zipfile
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import markdown
import pytest
import yaml
from click.testing import CliRunner, Result
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar
from lxml import etree
from openpyxl import load_workbook
from playwright.sync_api import Browser

from generator.book.exports import BUDGET_CSV, BUDGET_XLSX, BUY_CSV, RECORDS_CSV
from generator.book.model import Book
from generator.book.pages import written
from generator.book.pages.written import (
    CALENDAR,
    CALENDAR_SPANS,
    GROUND_GEOJSON,
    GROUND_GPX,
    GROUND_KML,
)
from generator.book.text import clean, inert, searchable
from generator.cli import main
from generator.site.markdown_blocks import HandbookBlocks
from generator.site.one_file import file_beside
from generator.site.stage import stage
from generator.site.standing import search_record
from tests.book.hostile import (
    NUMBER,
    Filled,
    harmless,
    hostile,
    on_one_line_each,
    text_fields,
    write,
)
from tests.book.reading import Element, read
from tests.book.sites import CHECKOUT, DEMO, Site, build_sites
from tests.browser.kinds import Looked, every_page, one_of_each
from tests.browser.visits import DESKTOP, PHONE, SIDEWAYS, listening_page

# Other attacks begin the fields of the second property.
SECOND_FIRST_NUMBER = 120
OF_THE_GROUND = (GROUND_GEOJSON, GROUND_GPX, GROUND_KML)


@dataclass(frozen=True)
class Twins:
    """The same property twice, once with hostile texts and once with harmless ones."""

    folder: Path
    filled: Filled
    hostile: dict[str, Site]
    harmless: dict[str, Site]


@pytest.fixture(
    scope="module",
    params=[
        pytest.param(0, id="cleared"),
        pytest.param(SECOND_FIRST_NUMBER, id="stopped", marks=pytest.mark.long),
    ],
)
def twins(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Twins:
    # a title that is cut short holds half a text, which has no harmless twin
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(written, "TITLE_LETTERS", 10_000)
        return _twins(request, tmp_path_factory)


def _twins(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Twins:
    folder = tmp_path_factory.mktemp("twins")
    filled = write(folder / "hostile", DEMO, hostile, request.param)
    write(folder / "harmless", DEMO, harmless, request.param)
    return Twins(
        folder / "hostile",
        filled,
        build_sites(folder / "hostile", folder / "hostile-handbook"),
        build_sites(folder / "harmless", folder / "harmless-handbook"),
    )


def test_every_text_field_is_put_to_the_test(tmp_path: Path) -> None:
    filled = write(tmp_path / "first", DEMO, hostile).fields
    filled |= write(tmp_path / "second", DEMO, hostile, SECOND_FIRST_NUMBER).fields
    assert filled == text_fields()


# Where a name stands in a drawing of the ground goes by its letters, so no twin is alike. It holds
# elements and attributes of a drawing and none else, whatever the names are.
OF_THE_GROUND_DRAWN = re.compile(r'<figure class="lies.*?</figure>', re.DOTALL)
DRAWN_TAGS = frozenset(
    ["figure", "figcaption", "svg", "g", "path", "circle", "text", "defs", "pattern", "rect",
     "clippath", "title", "desc", "ol", "li", "strong", "span", "bdi"]
)  # fmt: skip


def _without_drawings(page: str) -> str:
    """A page with a word in the place of each drawing of the ground, looked at by itself."""
    for drawing in OF_THE_GROUND_DRAWN.findall(page):
        inside = [one for one in read(drawing).walk() if one.tag != "document"]
        # the one file holds a drawing once, and leads to it
        led = [one for one in inside if one.tag == "a" and one.has("drawn")]
        assert all(one.attributes["href"].startswith("#drawn:") for one in led)
        inside = [one for one in inside if one not in led]
        assert {one.tag for one in inside} <= DRAWN_TAGS
        names = {name for one in inside for name in one.attributes}
        assert not {name for name in names if name.startswith(("on", "href", "src", "xlink"))}
    return OF_THE_GROUND_DRAWN.sub("a drawing", page)


def _parts(element: Element) -> Iterator[object]:
    """The elements of a page with their attributes, and its texts, in the order they stand in."""
    attributes = dict(element.attributes)
    if element.has("md-logo"):
        # The theme escapes the site's name here once more than a name that is safe needs.
        attributes["title"] = html.unescape(attributes["title"])
    yield element.tag, attributes
    for one in element.inside:
        if isinstance(one, Element):
            yield from _parts(one)
        else:
            yield one
    yield f"end of {element.tag}"


def _disarmed(part: object, filled: Filled) -> object:
    """The same with harmless texts in place of the hostile ones."""
    if isinstance(part, str):
        return filled.disarmed(part)
    if isinstance(part, dict):
        return {_disarmed(key, filled): _disarmed(value, filled) for key, value in part.items()}
    if isinstance(part, list | tuple):
        return [_disarmed(one, filled) for one in part]
    return part


def _assert_alike(attacked: Any, plain: Any, filled: Filled) -> None:
    found, expected = json.dumps(_disarmed(attacked, filled)), json.dumps(plain)
    if found != expected:
        pairs = enumerate(zip(found, expected, strict=False))
        shorter = min(len(found), len(expected))
        alike = next((n for n, (one, other) in pairs if one != other), shorter)
        begin = max(0, alike - 200)
        pytest.fail(f"{found[begin : alike + 300]}\n\n{expected[begin : alike + 300]}")


def test_pages_have_the_same_elements_and_show_the_text(twins: Twins) -> None:
    shown = 0
    for reader, site in twins.hostile.items():
        plain = twins.harmless[reader].pages()
        assert list(site.pages()) == list(plain)
        for address, page in site.pages().items():
            ours, theirs = (read(_without_drawings(one)) for one in (page, plain[address]))
            _assert_alike([*_parts(ours)], [*_parts(theirs)], twins.filled)
            shown += twins.filled.count(read(page).text())
    assert shown > 100


def test_the_one_file_has_the_same_elements_and_shows_the_text(twins: Twins) -> None:
    shown = 0
    for reader, site in twins.hostile.items():
        files = (file_beside(one.folder) for one in (site, twins.harmless[reader]))
        attacked, plain = (_in_one_file(one.read_text(encoding="utf-8")) for one in files)
        assert len(attacked) == len(plain) == len(site.book.pages) + 2
        # pages are those of the folder word for word: a share of them stands for all
        for found, expected in zip(attacked[::SHARE], plain[::SHARE], strict=True):
            ours, theirs = (read(_without_drawings(one)) for one in (found, expected))
            _assert_alike([*_parts(ours)], [*_parts(theirs)], twins.filled)
            shown += twins.filled.count(read(found).text())
    assert shown > 20


SHARE = 25
DIGEST = re.compile(r"(?<=drawn:)[0-9a-f]{12}|(?<=[#\" ])[0-9a-f]{12}(?=:)|[0-9a-f]{64}")


def _in_one_file(html_of_it: str) -> list[str]:
    """The pages in a file, before them what stands around them, without scripts and digests."""
    told = DIGEST.sub("digest", html_of_it)
    data = re.findall(r'<script type="application/json"[^>]*>(.*?)</script>', told, re.DOTALL)
    assert len(data) == 1
    assert "<" not in data[0]
    frame = re.sub(r"<script.*?</script>|<style.*?</style>", "", told, flags=re.DOTALL)
    before, *pages = frame.split("<noscript>")
    last, after = pages[-1].split("</noscript>")
    return [before, after, *(page.replace("</noscript>", "") for page in (*pages[:-1], last))]


def test_a_live_text_would_be_seen() -> None:
    filled = Filled(texts={1: ("<b>q1q</b>", "plain")})
    plain = [*_parts(read("<p>plain</p>"))]
    _assert_alike([*_parts(read("<p>&lt;b&gt;q1q&lt;/b&gt;</p>"))], plain, filled)
    with pytest.raises(pytest.fail.Exception):
        _assert_alike([*_parts(read("<p><b>q1q</b></p>"))], plain, filled)


def test_files_for_a_spreadsheet_hold_text_and_numbers_alone(twins: Twins) -> None:
    site, plain = twins.hostile["owner"], twins.harmless["owner"]
    assert (
        {BUDGET_CSV, BUY_CSV, BUDGET_XLSX, RECORDS_CSV, CALENDAR, CALENDAR_SPANS, *OF_THE_GROUND}
        == set(site.book.files)
        == set(plain.book.files)
    )
    shown = 0
    for name in (BUDGET_CSV, BUY_CSV, RECORDS_CSV):
        attacked = _csv_cells(site, name)
        for cell in attacked:
            assert _is_number(cell) or not cell.startswith(("=", "+", "-", "@", "\t", "\r"))
        without_marks = [_unmarked(cell, twins.filled) for cell in attacked]
        plain_cells = [cell.removeprefix("'") for cell in _csv_cells(plain, name)]
        _assert_alike(without_marks, plain_cells, twins.filled)
        shown += twins.filled.count("\n".join(without_marks))
    attacked_sheets, plain_sheets = _sheet_cells(site), _sheet_cells(plain)
    _assert_alike(attacked_sheets, plain_sheets, twins.filled)
    assert {kind for _, kind in attacked_sheets} <= {"s", "inlineStr", "n", "d"}
    shown += twins.filled.count("\n".join(str(value) for value, _ in attacked_sheets))
    assert shown > 3
    with zipfile.ZipFile(site.folder / BUDGET_XLSX) as archive:
        parts = {name: archive.read(name).decode("utf-8") for name in archive.namelist()}
    for part in parts.values():
        assert "<f>" not in part
        assert "hyperlink" not in part


@pytest.mark.parametrize("name", OF_THE_GROUND)
def test_a_file_of_the_ground_has_the_same_parts_and_holds_the_text(
    twins: Twins, name: str
) -> None:
    for reader, site in twins.hostile.items():
        folders = (site.folder, twins.harmless[reader].folder)
        attacked, plain = (_of_the_ground(folder / name) for folder in folders)
        # they stand in the order of their names, which no twin's share
        found = sorted(json.dumps(_disarmed(part, twins.filled)) for part in attacked)
        assert found == sorted(map(json.dumps, plain))
    shown = json.dumps(_of_the_ground(twins.hostile["owner"].folder / name), ensure_ascii=False)
    assert len(shown) > 1000


def _of_the_ground(path: Path) -> list[Any]:
    """What a file of the ground holds: tags with their attributes and texts, or its features."""
    if path.suffix == ".geojson":
        features: list[Any] = json.loads(path.read_text(encoding="utf-8"))["features"]
        return features
    root = etree.fromstring(path.read_bytes())
    return [[one.tag, dict(one.attrib), (one.text or "").strip()] for one in root.iter()]


@pytest.mark.parametrize("name", [CALENDAR, CALENDAR_SPANS])
def test_a_calendar_holds_text_alone(twins: Twins, name: str) -> None:
    for reader, site in twins.hostile.items():
        attacked, plain = _of_calendar(site, name), _of_calendar(twins.harmless[reader], name)
        assert [names for names, _ in attacked] == [names for names, _ in plain]
    attacked, plain = (_of_calendar(one["owner"], name) for one in (twins.hostile, twins.harmless))
    for (_, texts), (_, harmless_texts) in zip(attacked, plain, strict=True):
        _assert_alike(texts, harmless_texts, twins.filled)
    shown = "\n".join(text for _, texts in attacked for text in texts)
    assert twins.filled.count(shown) > 3


def _of_calendar(site: Site, name: str) -> list[tuple[list[str], list[str]]]:
    """Of every component the names of its properties, and its texts."""
    found = Calendar.from_ical((site.folder / name).read_bytes())
    return [
        (
            sorted(map(str, one)),
            [str(one[name]) for name in ("SUMMARY", "DESCRIPTION", "LOCATION") if name in one],
        )
        for one in found.walk()
    ]


def _unmarked(cell: str, filled: Filled) -> str:
    """A cell without the mark that makes it text; an apostrophe of the owner's own stays."""
    own = any(
        cell.startswith(f"'{text[1:]}") for text, _ in filled.texts.values() if text[:1] == "'"
    )
    return cell if own else cell.removeprefix("'")


def _csv_cells(site: Site, name: str) -> list[str]:
    text = (site.folder / name).read_bytes().decode("utf-8-sig")
    return [cell for row in csv.reader(io.StringIO(text, newline="")) for cell in row]


def _sheet_cells(site: Site) -> list[tuple[object, str]]:
    book = load_workbook(site.folder / BUDGET_XLSX)
    return [
        (str(cell.value) if cell.is_date else cell.value, cell.data_type)
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
    ]


def _is_number(cell: str) -> bool:
    try:
        float(cell)
    except ValueError:
        return False
    return True


def test_search_records_hold_no_element(twins: Twins) -> None:
    for reader, site in twins.hostile.items():
        found = _search_texts(site)
        plain = _search_texts(twins.harmless[reader])
        for text in found:
            assert {one.tag for one in read(text).walk()} == {"document"}
        _assert_alike([*map(html.unescape, found)], [*map(html.unescape, plain)], twins.filled)


def _search_texts(site: Site) -> list[str]:
    index = json.loads((site.folder / "search" / "search_index.json").read_text(encoding="utf-8"))
    return [
        text for doc in index["docs"] for text in (doc["title"], doc["text"], *doc.get("tags", ()))
    ]


def test_the_staged_tree_is_data_and_prose(twins: Twins, tmp_path: Path) -> None:
    for reader, site in twins.hostile.items():
        attacked = _staged(site.book, tmp_path / f"{reader}-hostile")
        plain = _staged(twins.harmless[reader].book, tmp_path / f"{reader}-harmless")
        _assert_alike(attacked, plain, twins.filled)


def _staged(book: Book, folder: Path) -> Any:
    """Settings and records as their readers take them, front matter and Markdown of each page."""
    tree, pages = stage(book, folder), {}
    for path in sorted((tree / "docs").rglob("*.md")):
        _, front, body = path.read_text(encoding="utf-8").split("---\n", 2)
        title = yaml.safe_load(front)["title"]
        pages[path.relative_to(tree).as_posix()] = [title, _without_drawings(body)]
    settings = yaml.safe_load((tree / "mkdocs.yml").read_text(encoding="utf-8"))
    records = [search_record(page) for page in book.pages]
    for record in records:
        # typed words in small letters, without the marks between them: no twin of theirs is alike
        words = record.pop("words", "")
        assert {one.tag for one in read(words).walk()} == {"document"}
    return _unescaped([settings, records, pages])


def _unescaped(part: Any) -> Any:
    if isinstance(part, str):
        return html.unescape(part)
    if isinstance(part, dict):
        return {_unescaped(key): _unescaped(value) for key, value in part.items()}
    return [_unescaped(one) for one in part] if isinstance(part, list) else part


def _converter(*extra: Any) -> markdown.Markdown:
    settings = yaml.safe_load((CHECKOUT / "mkdocs.yml").read_text(encoding="utf-8"))
    return markdown.Markdown(extensions=[*settings["markdown_extensions"], *extra])


def test_stock_markdown_finds_nothing_in_it_either(twins: Twins) -> None:
    stock = _converter()
    for reader, site in twins.hostile.items():
        for attacked, plain in zip(site.book.pages, twins.harmless[reader].book.pages, strict=True):
            made, expected = (
                read(_without_drawings(stock.reset().convert(one.markdown)))
                for one in (attacked, plain)
            )
            _assert_alike([*_parts(made)], [*_parts(expected)], twins.filled)


def _run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(main, [str(one) for one in arguments])


def _assert_plain(output: str) -> None:
    hidden = {one for one in output if not one.isprintable()} - {"\n"}
    assert hidden == set(), output


def test_a_terminal_is_shown_text_only(twins: Twins) -> None:
    numbers = _run("explain", twins.folder).stdout.split()
    assert len(numbers) > 15
    runs = [_run("check", twins.folder), _run("check", "--strict", twins.folder)]
    runs += [_run("build", twins.folder)]
    runs += [_run("explain", twins.folder, number) for number in (numbers[0], numbers[-1])]
    for run in runs:
        assert run.exit_code in (0, 1)
        assert len(run.output) > 10
        _assert_plain(run.output)


def test_faults_are_told_in_text_only(tmp_path: Path) -> None:
    number = 0
    for path in sorted(DEMO.glob("*.yaml")):
        data, number = _spoiled(yaml.safe_load(path.read_text(encoding="utf-8")), number)
        (tmp_path / path.name).write_text(on_one_line_each(data), encoding="utf-8")
    run = _run("check", tmp_path)
    assert run.exit_code == 1
    assert len(run.output.splitlines()) > 100
    _assert_plain(run.output)


def _spoiled(value: Any, number: int) -> tuple[Any, int]:
    """The same groups and lists, with a hostile text for every value and as one key more."""
    if isinstance(value, dict):
        group: dict[str, Any] = {}
        for key, one in value.items():
            group[key], number = _spoiled(one, number)
        return group | {hostile(number, ""): 1}, number + 1
    if isinstance(value, list):
        items = []
        for one in value:
            spoiled, number = _spoiled(one, number)
            items.append(spoiled)
        return items, number
    return hostile(number, ""), number + 1


CONTROLS = ("\x1b[31mred", "\x07", "a\x00b", "\x9b2J", "\x02klzzwxh:0\x03")


@pytest.mark.parametrize("text", CONTROLS)
def test_characters_that_move_a_cursor_are_a_fault(tmp_path: Path, text: str) -> None:
    write(tmp_path / "land", DEMO, lambda _number, name: text if name == "note" else "plain")
    run = _run("check", tmp_path / "land")
    assert run.exit_code == 1
    assert "cannot be seen" in run.output
    _assert_plain(run.output)


def test_a_folder_with_a_hostile_name_is_told_as_text(tmp_path: Path) -> None:
    folder = tmp_path / "\x1b[31mred \u202e name"
    made = _run("new", folder)
    runs = [
        made,
        _run("check", folder),
        _run("build", folder, "--as-of", "2026-08-20"),
        _run("new", folder),
    ]
    assert [run.exit_code for run in runs] == [0, 0, 0, 2]
    for run in runs:
        _assert_plain(run.output)


@pytest.mark.parametrize("twins", [0], indirect=True)
@pytest.mark.parametrize("pages", [one_of_each, pytest.param(every_page, marks=pytest.mark.long)])
def test_a_browser_runs_and_asks_for_nothing(
    browser: Browser, twins: Twins, pages: Callable[[Mapping[str, Site]], list[Looked]]
) -> None:
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        page.on("dialog", lambda dialog: (faults.append(dialog.message), dialog.dismiss()))
        for one in pages(twins.hostile):
            page.goto(one.uri)
            if page.evaluate(SIDEWAYS) > 0:
                faults.append(f"{one.name} scrolls sideways")
    assert faults == []


@pytest.mark.parametrize("twins", [0], indirect=True)
def test_hits_of_a_search_are_text(browser: Browser, twins: Twins) -> None:
    faults: list[str] = []
    site = twins.hostile["owner"]
    (number,) = NUMBER.findall(site.plan.places[0].name)
    with listening_page(browser, DESKTOP, faults) as page:
        page.on("dialog", lambda dialog: (faults.append(dialog.message), dialog.dismiss()))
        page.goto((site.folder / "index.html").as_uri())
        page.keyboard.press("s")
        page.locator(".md-search__input").press_sequentially(f"q{number}q")
        page.locator(".md-search-result__link").first.wait_for(state="visible")
        tags = page.evaluate(
            "[...document.querySelectorAll('.md-search-result__list *')].map(e => e.tagName)"
        )
    assert faults == []
    assert set(tags) <= {
        *("LI", "A", "ARTICLE", "DIV", "H1", "H2", "P", "MARK", "NAV", "SPAN"),
        *("DETAILS", "SUMMARY"),
    }


CONVERTER = _converter(HandbookBlocks())
PLACES = {
    "a paragraph": ("{}", ["p"]),
    "a sentence": ("Before {} after.", ["p"]),
    "a list": ("- {}", ["ul", "li"]),
    "a cell": ("| a |\n|---|\n| {} |", ["table", "thead", "tr", "th", "tbody", "tr", "td"]),
    "a heading": ("## {} {{: #here }}", ["h2"]),
    "a block": ("<p>\n{}\n</p>", ["p"]),
    "an attribute": ('<p title="{}">x</p>', ["p"]),
}
TEXTS = st.text(min_size=1).filter(clean) | st.lists(
    st.sampled_from("*_`~#[](){}<>!&|:=+-.\\\"'^$%@;/ \t\n10aA\u00e4\u2028\x02\x03\ufeff")
).map("".join).filter(clean)


@pytest.mark.parametrize("place", PLACES)
@given(text=TEXTS)
def test_inert_text_is_itself_wherever_it_stands(place: str, text: str) -> None:
    around, tags = PLACES[place]
    page = read(CONVERTER.reset().convert(around.format(inert(text))))
    elements = [*page.walk()][1:]
    assert [one.tag for one in elements] == tags
    before, after = around.split("{}")[0], around.split("{}")[1]
    if place == "an attribute":
        assert elements[-1].attributes == {"title": clean(text)}
    elif place == "a sentence":
        assert page.text() == before + clean(text) + after
    else:
        assert elements[-1].text().strip() == clean(text)


@given(text=TEXTS)
def test_searchable_text_is_itself_as_html(text: str) -> None:
    page = read(f"<p>{searchable(text)}</p>")
    assert [one.tag for one in page.walk()] == ["document", "p"]
    assert page.text() == clean(text)


@given(text=st.text())
def test_clean_text_is_one_line_of_what_can_be_seen(text: str) -> None:
    once = clean(text)
    assert once.isprintable()
    assert once == once.strip() == clean(once)

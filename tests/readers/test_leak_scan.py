"""The leak scan: what is kept is found in every container; nobody's book fails without a leak."""

import base64
import gzip
import io
import json
import struct
import zipfile
import zlib
from collections.abc import Callable
from dataclasses import replace
from html import escape, unescape
from pathlib import Path
from typing import Any
from urllib.parse import quote

import pytest
from click.testing import CliRunner
from hypothesis import example, given
from hypothesis import strategies as st
from xlsxwriter import Workbook

from generator.book.make import make_book
from generator.book.pages.written import GROUND_GPX, Written
from generator.cli import main
from generator.inventory.schema import Inventory, Reader
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.kept_values import kept_from, typed_values
from generator.plan.readers.seen_by import seen_by
from generator.scanning import LeakScan, Scan
from generator.site import build as site_build
from generator.site.mark import SITE_MARK
from generator.site.one_file import file_beside
from generator.site.publish import publish
from tests.plan.planned import AS_OF, inventory_of
from tests.plan.test_near_things import LAT, LON, east, with_things
from tests.properties import SEASON, Data, write_property
from tests.readers.partnered import PARTNER
from tests.readers.test_non_interference import made

NAME = "Widow's oak & thorn"
NOTE = "Reach it from the quarry side, never past the heron pool; the dog at Brandl's farm barks."
POINT = (41.02894, -93.02163)
PHONE = "555-0199"
NEVER_SHOWN = "An unremarkable line of words about the weather of a week in May."


def with_kept() -> Data:
    """A property with a stand that nobody is handed: name, note, point, a phone in a note."""
    data = made(0)
    stand = {"id": "old-quarry", "name": NAME, "at_lat_lon": list(POINT), "note": NOTE}
    data["stands"]["stands"].append(stand)
    data["people"]["applicators"][0] |= {"licence_class": "private", "licence_number": "7720461"}
    data["routes"]["routes"][0]["note"] = f"Ask at the mill first, {PHONE}."
    return data


def readers_of(inventory: Inventory) -> dict[str, tuple[Reader, Plan]]:
    """Every other reader with the plan of their book."""
    plan = make_plan(inventory, SEASON, AS_OF)
    return {reader.id: (reader, seen_by(plan, reader)) for reader in inventory.readers}


@pytest.fixture(scope="module")
def scan() -> Scan:
    """The scan for somebody hired, of a property with much that they may not see."""
    inventory = inventory_of(with_kept())
    reader, view = next(iter(readers_of(inventory).values()))
    return LeakScan(inventory).of(reader, view)


def _chunk(kind: bytes, content: bytes) -> bytes:
    crc = struct.pack(">I", zlib.crc32(kind + content))
    return struct.pack(">I", len(content)) + kind + content + crc


def _png(*chunks: bytes) -> bytes:
    return b"".join([b"\x89PNG\r\n\x1a\n", *chunks, _chunk(b"IEND", b"")])


def _zipped(name: str, content: bytes) -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(name, content)
    return packed.getvalue()


def _bare(content: bytes) -> bytes:
    packer = zlib.compressobj(wbits=-zlib.MAX_WBITS)
    return packer.compress(content) + packer.flush()


def _workbook(text: str) -> bytes:
    packed = io.BytesIO()
    with Workbook(packed, {"in_memory": True}) as book:
        book.add_worksheet("costs").write_string(0, 0, text)
    return packed.getvalue()


def _titled_workbook(text: str) -> bytes:
    packed = io.BytesIO()
    with Workbook(packed, {"in_memory": True}) as book:
        book.add_worksheet("costs")
        book.set_properties({"subject": text})
    return packed.getvalue()


def _escaped(text: str) -> str:
    return "".join(f"&#{ord(one)};" if one in "'&<>\"" else one for one in text)


def _folded(text: str) -> bytes:
    line = f"DESCRIPTION:{text}".encode()
    return b"\r\n ".join(line[at : at + 7] for at in range(0, len(line), 7))


def _in_calendar(text: str) -> str:
    return text.replace(",", "\\,").replace(";", "\\;")


def _as_json(text: str) -> bytes:
    letters = "".join(rf"\u{ord(one):04x}" if one in "'&ohk" else one for one in text)
    return f'{{"docs":["first\\n{letters}\\nlast"]}}'.encode()


def _kml(text: str) -> bytes:
    return (
        f"<kml><Placemark>\n<description>{_escaped(text)}</description></Placemark></kml>".encode()
    )


def _often(text: str) -> bytes:
    return f"{text}\n".encode() * 9


def _in_a_script(content: bytes) -> bytes:
    return b'<script>atob("' + base64.b64encode(content) + b'")</script>'


# File name and what a reader would get; the text stands in each as that kind of file has it.
CONTAINERS: dict[str, Callable[[str], tuple[str, bytes]]] = {
    "html": lambda text: ("a.html", f"<p>{_escaped(text)}</p>".encode()),
    "html, wrapped": lambda text: (
        "a.html",
        f"<p>{_escaped(text)}</p>".replace(" ", "\n").encode(),
    ),
    "html in html": lambda text: ("a.html", escape(f"<p>{_escaped(text)}</p>").encode()),
    "html, hidden": lambda text: ("a.html", f'<i title="{_escaped(text)}" hidden></i>'.encode()),
    "html, hard spaces": lambda text: ("a.html", _escaped(text).replace(" ", "&nbsp;").encode()),
    "search index": lambda text: ("s/i.json", json.dumps({"docs": [{"text": text}]}).encode()),
    "script": lambda text: ("i.js", b"var __index = " + _as_json(text)),
    "drawing": lambda text: ("a.svg", f"<svg><desc>{_escaped(text)}</desc></svg>".encode()),
    "calendar": lambda text: ("a.ics", _folded(f"first\\n{_in_calendar(text)}\\nlast")),
    "geojson": lambda text: (
        "a.geojson",
        json.dumps({"type": "Feature", "properties": {"name": text}}).encode(),
    ),
    "gpx": lambda text: ("a.gpx", f"<gpx><wpt><name>{escape(text)}</name></wpt></gpx>".encode()),
    "kml": lambda text: ("a.kml", _kml(text)),
    "kml, zipped": lambda text: ("a.kmz", _zipped("doc.kml", _kml(text))),
    "table": lambda text: ("a.csv", f'1,"{text}",2\r\n'.encode()),
    "workbook": lambda text: ("a.xlsx", _workbook(text)),
    "workbook, its properties": lambda text: ("a.xlsx", _titled_workbook(text)),
    "gz": lambda text: ("a.json.gz", gzip.compress(text.encode())),
    "archive": lambda text: ("a.zip", _zipped("in/b.html", text.encode())),
    "archive, a name in it": lambda text: ("a.zip", _zipped(f"{quote(text, safe='')}.html", b"x")),
    "archive in an archive": lambda text: ("a.zip", _zipped("b.zip", _zipped("c", text.encode()))),
    "picture": lambda text: ("a.png", _png(_chunk(b"tEXt", b"Comment\0" + text.encode()))),
    "picture, packed": lambda text: (
        "a.png",
        _png(_chunk(b"zTXt", b"Comment\0\0" + zlib.compress(text.encode()))),
    ),
    "base64": lambda text: (
        "a.html",
        b'<img src="data:image/svg+xml;base64,' + base64.b64encode(text.encode()) + b'">',
    ),
    "base64, packed": lambda text: ("a.html", _in_a_script(gzip.compress(_often(text)))),
    "base64, packed without a head": lambda text: ("a.html", _in_a_script(_bare(_often(text)))),
    "address": lambda text: ("a.css", f"url(data:text/plain,{quote(text)})".encode()),
    "file name": lambda text: (f"{quote(text, safe='')[:200]}.html", b"<p>"),
}
READERS = ("hired", PARTNER)
KEPT = {
    "name": NAME,
    "note": NOTE,
    "part of a note": "past the heron pool; the dog at Brandl's farm",
    "phone": f"call {PHONE} or",
    "point": f"{POINT[0]:.5f}, {POINT[1]:.5f}",
    "longitude": f"at {-POINT[1]:.4f} west",
    "id": "stands/old-quarry",
    "license": "license No. 7720461",
}


@pytest.mark.parametrize("container", CONTAINERS)
def test_what_is_kept_is_found_in_every_container(
    scan: Scan, container: str, tmp_path: Path
) -> None:
    for number, text in enumerate(KEPT.values()):
        name, content = CONTAINERS[container](text)
        file = tmp_path / str(number) / name
        file.parent.mkdir(parents=True)
        file.write_bytes(content)
        for place in (tmp_path / str(number), file):
            told = scan(place)
            assert "may not see" in told, text
            assert ".yaml line " in told
            assert name.rpartition("/")[2][:20] in told


@pytest.mark.parametrize("container", CONTAINERS)
def test_what_nobody_keeps_fails_nothing(scan: Scan, container: str, tmp_path: Path) -> None:
    name, content = CONTAINERS[container](NEVER_SHOWN)
    (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
    (tmp_path / name).write_bytes(content)
    assert scan(tmp_path) == ""


@pytest.mark.parametrize("before", [0, 19_990, 20_000, 20_010, 40_020])
def test_it_is_found_where_a_long_text_is_parted(scan: Scan, before: int, tmp_path: Path) -> None:
    filling = "".join(f"<p>{number}</p>\n" for number in range(9000))
    at = filling.index("\n", before) + 1
    note = NOTE.replace(" ", "\n", 3)
    (tmp_path / "a.html").write_text(f"{filling[:at]}{note}\n{filling[at:]}")
    assert "note of old-quarry" in scan(tmp_path)


def test_a_whole_book_as_an_archive_is_looked_through(scan: Scan, tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "book.zip", "w") as archive:
        archive.writestr("book/index.html", "<p>nothing</p>")
        archive.writestr("book/work/one.html", f"<p>{NOTE}</p>")
    told = scan(tmp_path / "book.zip")
    assert "book.zip, book/work/one.html holds" in told
    assert "note of old-quarry, stands.yaml line " in told


def test_what_cannot_be_looked_into_fails_the_book(scan: Scan, tmp_path: Path) -> None:
    (tmp_path / "a.zip").write_bytes(_zipped("b", b"x" * 99)[:-30])
    assert "a.zip cannot be looked into" in scan(tmp_path)


@given(
    st.lists(st.sampled_from(["<p>frame</p>", "<p>other</p>", "x"]), max_size=9), st.integers(0, 9)
)
@example(["<p>frame</p>"], 1)
def test_a_line_is_found_wherever_it_stands_between_lines_that_were_read(
    scan: Scan, tmp_path_factory: pytest.TempPathFactory, frame: list[str], at: int
) -> None:
    folder = tmp_path_factory.mktemp("lines")
    (folder / "a.html").write_text("\n".join(frame))
    words = NAME.split()
    lines = [*frame[:at], " ".join(words[:2]), " ".join(words[2:]), *frame[at:]]
    (folder / "b.html").write_text("\n".join(lines))
    assert "b.html holds" in scan(folder)


# Any page may hold these: words of the program's own, figures, a sentence of its own chapters.
BY_THEMSELVES = (
    "Oak", "3", "north", "Corner", "Strip 3", "lane-27", "the stand", "keep out",
    "straps are good", "May 2026",
)  # fmt: skip


@pytest.mark.parametrize("text", BY_THEMSELVES)
def test_what_may_stand_on_any_page_is_not_searched_for(text: str, tmp_path: Path) -> None:
    data = with_kept()
    data["stands"]["stands"][-1] |= {"name": text, "note": text}
    inventory = inventory_of(data)
    reader, view = next(iter(readers_of(inventory).values()))
    (tmp_path / "a.html").write_text(f"<p>{text}</p>")
    assert LeakScan(inventory).of(reader, view)(tmp_path) == ""


def test_words_of_a_name_that_only_stand_side_by_side_are_none(tmp_path: Path) -> None:
    data = with_kept()
    data["stands"]["stands"][-1]["name"] = "Thistle ladder"
    inventory = inventory_of(data)
    reader, view = next(iter(readers_of(inventory).values()))
    look = LeakScan(inventory).of(reader, view)
    for apart in ("the thistle. Ladder", '["thistle","ladder"]', "<td>thistle</td><td>ladder</td>"):
        (tmp_path / "a.html").write_text(apart)
        assert look(tmp_path) == ""
    for together in ("the thistle ladder", "thistle-ladder.html", "THISTLE&nbsp;LADDER"):
        (tmp_path / "a.html").write_text(together)
        assert "name of old-quarry" in look(tmp_path)


def check_no_false_alarm(seed: int, work: Path) -> None:
    """Fails with what the scan says of a reader's book of a generated property, if anything."""
    inventory = inventory_of(made(seed))
    scan = LeakScan(inventory)
    for name, (reader, view) in readers_of(inventory).items():
        assert publish(make_book(view), work / name, scan=scan.of(reader, view)) == ()


@pytest.mark.parametrize("seed", range(4))
def test_no_book_fails_without_a_leak(seed: int, tmp_path: Path) -> None:
    check_no_false_alarm(seed, tmp_path)


@pytest.mark.long
@pytest.mark.parametrize("seed", range(4, 44))
def test_no_book_of_many_fails_without_a_leak(seed: int, tmp_path: Path) -> None:
    check_no_false_alarm(seed, tmp_path)


def test_what_may_be_seen_is_not_kept_and_all_else_is() -> None:
    data = with_kept()
    inventory = inventory_of(data)
    typed = typed_values(inventory)
    for name, (reader, view) in readers_of(inventory).items():
        kept = {value.text for value in kept_from(typed, inventory, reader, view).values}
        assert {NAME, "old-quarry", "41.0289", "93.0216", PHONE} <= kept
        handed = {stand.known_as or stand.name for stand in view.land.stands}
        assert not handed & kept
        assert bool(handed) == (name == PARTNER)
        # the emergency card is for everybody
        assert data["property"]["emergency"]["address_911"] not in kept


def test_points_of_the_land_are_kept_but_of_their_work_and_what_goes_along() -> None:
    """A well beside the work is drawn, and its degrees are kept; a shed is handed out whole."""
    data = with_things(
        east("well", 50),
        east("building", 900, coordinates_for=["hired"]),
        east("bedding", 400),
    )
    inventory = inventory_of(data)
    ((reader, view),) = readers_of(inventory).values()
    kept = {
        value.text for value in kept_from(typed_values(inventory), inventory, reader, view).values
    }
    well, shed, bed = (
        [f"{abs(part):.4f}" for part in one["at_lat_lon"]] for one in data["land"]["land"]
    )
    assert view.land.things[-1].at_lat_lon == tuple(data["land"]["land"][0]["at_lat_lon"])
    assert {well[1], bed[1]} <= kept
    assert shed[1] not in kept
    # along the strip, where a place of theirs lies
    assert not {f"{abs(part):.4f}" for part in (LAT, LON)} & kept


def test_a_plan_that_holds_a_note_too_many_is_found_out(tmp_path: Path) -> None:
    """A class that lets notes pass by mistake: they stand in the plan, and are still kept."""
    data = with_kept()
    data["stands"]["stands"][-1]["note"] = NOTE
    partner = next(one for one in data["readers"]["readers"] if one["id"] == PARTNER)
    partner["stands"] = ["old-quarry"]
    data["sits"]["sits"] = [sit for sit in data["sits"]["sits"] if "reader" not in sit]
    inventory = inventory_of(data)
    reader, view = readers_of(inventory)[PARTNER]
    (handed,) = view.land.stands
    leaking = replace(view, land=replace(view.land, stands=(replace(handed, note=NOTE),)))
    (tmp_path / "a.html").write_text(NOTE)
    assert "note of old-quarry" in LeakScan(inventory).of(reader, leaking)(tmp_path)


def build(folder: Path, out: Path, *more: str) -> tuple[int, str]:
    """What building books ends with and says."""
    built = CliRunner().invoke(main, ["build", str(folder), "--out", str(out), *more])
    return built.exit_code, built.output


def _in_a_page(monkeypatch: pytest.MonkeyPatch) -> None:
    from generator.book import make

    page = make.emergency_page

    def leaking(plan: Plan) -> Written:
        made = page(plan)
        spoilt = replace(made.page, markdown=f"{made.page.markdown}\n\n{escape(NOTE)}\n")
        return replace(made, page=spoilt if plan.reader != "owner" else made.page)

    leaking.__name__ = page.__name__
    monkeypatch.setattr(make, "emergency_page", leaking)


def _in_the_index(monkeypatch: pytest.MonkeyPatch) -> None:
    from generator.book import make

    page = make.work_page

    def leaking(plan: Plan) -> Written:
        made = page(plan)
        record = replace(made.page.search, text=f"{made.page.search.text} {escape(NAME)}")
        spoilt = replace(made.page, search=record)
        return replace(made, page=spoilt if plan.reader != "owner" else made.page)

    leaking.__name__ = page.__name__
    monkeypatch.setattr(make, "work_page", leaking)


def _in_the_calendar(monkeypatch: pytest.MonkeyPatch) -> None:
    from generator.book import make

    files = make.calendar_file

    def leaking(plan: Plan) -> dict[str, bytes]:
        return {
            name: content.replace(b"SUMMARY:", b"GEO:41.02894;-93.02163\r\nSUMMARY:")
            if plan.reader != "owner"
            else content
            for name, content in files(plan).items()
        }

    monkeypatch.setattr(make, "calendar_file", leaking)


def _in_a_file_name(monkeypatch: pytest.MonkeyPatch) -> None:
    from generator.book import make

    files = make.calendar_file

    def leaking(plan: Plan) -> dict[str, bytes]:
        more = {"stands-old-quarry.csv": b"1,2"} if plan.reader != "owner" else {}
        return {**files(plan), **more}

    monkeypatch.setattr(make, "calendar_file", leaking)


def _in_a_file_of_the_ground(monkeypatch: pytest.MonkeyPatch) -> None:
    from generator.book import make

    files = make.ground_files
    point = b'<gpx><wpt lat="41.02894" lon="-93.02163"/></gpx>'

    def leaking(plan: Plan) -> dict[str, bytes]:
        more = {GROUND_GPX: point} if plan.reader != "owner" else {}
        return {**files(plan), **more}

    monkeypatch.setattr(make, "ground_files", leaking)


LEAKS = {
    _in_a_page: "emergency.html holds",
    _in_the_index: "search/search_index.js",
    _in_the_calendar: "calendar-spans.ics holds",
    _in_a_file_of_the_ground: "ground.gpx holds",
    # the list of files for a phone names it first
    _in_a_file_name: 'holds "old-quarry": id of old-quarry',
}


def test_a_leak_fails_the_books_that_hold_it_and_leaves_the_old_ones(tmp_path: Path) -> None:
    folder, out = write_property(tmp_path / "land", with_kept()), tmp_path / "out"
    assert build(folder, out)[0] == 0
    before = (out / "hired" / SITE_MARK).read_bytes()
    one_file = file_beside(out / "hired").read_bytes()
    for number, (leak, told) in enumerate(LEAKS.items()):
        with pytest.MonkeyPatch.context() as monkeypatch:
            leak(monkeypatch)
            # the owner's takes longest: once is enough
            code, said = build(folder, out, *([] if number == 0 else ["--for", "hired"]))
        assert code == 1
        assert "hired was not built: it holds what this reader may not see" in said
        assert (f"{PARTNER} was not built" in said) == (number == 0)
        assert "owner was not built" not in said
        assert told in said
        assert "of old-quarry, stands.yaml line " in said
        assert "say it in other words where it is typed, or leave it out" in said
        assert (out / "hired" / SITE_MARK).read_bytes() == before
        assert file_beside(out / "hired").read_bytes() == one_file
        assert {path.name.removesuffix(".html") for path in out.iterdir()} == {*READERS, "owner"}


def test_a_leak_in_the_one_file_alone_fails_the_book(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def leaking(file: Path, *given: Any) -> Any:
        made = write_one_file(file, *given)
        file.write_text(file.read_text() + f"<p>{_escaped(NAME)}</p>")
        return made

    write_one_file = site_build.write_one_file
    monkeypatch.setattr(site_build, "write_one_file", leaking)
    code, said = build(write_property(tmp_path / "land", with_kept()), tmp_path, "--for", "hired")
    assert code == 1
    assert f'hired.html holds "{NAME}": name of old-quarry' in said
    assert [path.name for path in tmp_path.iterdir()] == ["land"]


def test_a_leak_keeps_an_archive_from_being_packed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = write_property(tmp_path / "land", with_kept())
    words = ["pack", str(folder), "--for", "hired", "--to", str(tmp_path)]
    _in_the_calendar(monkeypatch)
    packed = CliRunner().invoke(main, words)
    assert packed.exit_code == 1
    assert "zip, handbook-hired-2026-08-20/calendar-spans.ics holds" in packed.output
    assert "at_lat_lon of old-quarry" in packed.output
    assert [path.name for path in tmp_path.iterdir()] == ["land"]
    monkeypatch.undo()
    assert CliRunner().invoke(main, words).exit_code == 0
    assert [path.name for path in tmp_path.glob("*.zip")] == ["handbook-hired-2026-08-20.zip"]


def test_what_an_owner_wrote_into_a_text_that_others_read_is_a_caution(tmp_path: Path) -> None:
    data = with_kept()
    for screen in data["screens"]["screens"]:
        screen.setdefault("near", {})["lines"] = f"none by {NAME}, ask {PHONE}"
    code, said = build(write_property(tmp_path / "land", data), tmp_path / "out")
    assert code == 0, said
    pages = [path.read_text() for path in (tmp_path / "out/hired/work").iterdir()]
    assert any(f"none by {NAME}, ask {PHONE}" in unescape(page) for page in pages)
    assert "Widow" in (tmp_path / "out/owner/findings.html").read_text()

"""`handbook restore`: an archive from anywhere is taken for a trap until it proves to be ours."""

import datetime
import hashlib
import io
import struct
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.saved import names, read_back
from generator.saved.archive import save
from generator.saved.gathered import NotSaved
from generator.saved.names import HASHES
from generator.saved.read_back import Head
from generator.saved.restored import restore
from tests.cli.test_commands import print_of, run
from tests.properties import small_property, write_property

DAY = datetime.date(2026, 11, 30)
HEAD = Head("land", DAY).line()


def digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def packed(
    files: dict[str, bytes], listed: str | None = None, method: int = zipfile.ZIP_DEFLATED
) -> bytes:
    """An archive of these files, with a list that fits them unless another is given."""
    if listed is None:
        listed = "".join(f"{digest(content)}  {name}\n" for name, content in files.items())
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as archive:
        for name, content in files.items():
            archive.writestr(zipfile.ZipInfo(name), content, method)
        archive.writestr(HASHES, f"{HEAD}\n{listed}")
    return out.getvalue()


GOOD = {"land/property.yaml": b"format: 1\n", "land/log/a.yaml": b"entries: []\n"}


def with_member(change: Callable[[zipfile.ZipInfo], None]) -> bytes:
    """An archive of one file, whose entry says something else of it."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr(HASHES, f"{HEAD}\n{digest(b'../../etc')}  land/a\n")
        member = zipfile.ZipInfo("land/a")
        change(member)
        archive.writestr(member, b"../../etc")
    return out.getvalue()


def _link(member: zipfile.ZipInfo) -> None:
    member.create_system, member.external_attr = 3, 0o120777 << 16


def _device(member: zipfile.ZipInfo) -> None:
    member.create_system, member.external_attr = 3, 0o020666 << 16


def _claimed(content: bytes, at: int, size_bytes: int) -> bytes:
    """The same archive, in which the first file of the directory claims another length."""
    directory = content.index(b"PK\x01\x02")
    return content[: directory + at] + struct.pack("<I", size_bytes) + content[directory + at + 4 :]


def _with_flag(content: bytes) -> bytes:
    directory = content.index(b"PK\x01\x02")
    return content[: directory + 8] + b"\x01\x00" + content[directory + 10 :]


ZEROS = {"land/zeros": b"\0" * 5_000_000}
TRAPS: dict[str, tuple[bytes, str]] = {
    "no archive": (b"property", "no archive that handbook save wrote"),
    "nothing": (b"", "no archive that handbook save wrote"),
    "cut off": (packed(GOOD)[:-40], "no archive that handbook save wrote"),
    "out of the folder": (packed({"land/../../x": b"x"}), "leads out of the folder"),
    "up at once": (packed({"../x": b"x"}), "leads out of the folder"),
    "from the top": (packed({"/etc/x": b"x"}), "begins at the top of a disk"),
    "a drive": (packed({"C:/x": b"x"}), "begins at the top of a disk"),
    "backslashes": (packed({"land\\..\\x": b"x"}), "not every system takes"),
    "a device of one system": (packed({"land/nul.yaml": b"x"}), "not every system takes"),
    "a stream of one system": (packed({"land/a:b": b"x"}), "not every system takes"),
    "hidden": (packed({"land/.bashrc": b"x"}), "is a hidden file"),
    "no name": (packed({"land//x": b"x"}), "has a part without a name"),
    "a folder": (packed({"land/x/": b""}), "has a part without a name"),
    "too deep": (packed({f"land/{'a/' * 20}x": b"x"}), "folders deep"),
    "too long a name": (packed({f"land/{'a' * 300}": b"x"}), "more than 240 bytes"),
    "beside its folder": (packed({**GOOD, "else/x": b"x"}), "lies outside its folder"),
    "a link": (with_member(_link), "is a link"),
    "a device": (with_member(_device), "is no plain file"),
    "no such day": (
        _claimed(packed(GOOD), 12, 0xFFFF0000),
        "is of a day that there is not",
    ),
    "locked": (_with_flag(packed(GOOD)), "locked with a password"),
    "one name on some systems": (packed({**GOOD, "land/LOG/A.yaml": b"x"}), "stands in it twice"),
    "packed too well": (packed(ZEROS), "as in a trap"),
    "packed in another way": (packed(GOOD, method=zipfile.ZIP_BZIP2), "packed in a way"),
    "longer than it claims": (
        _claimed(packed({"land/a": b"a" * 50}, method=zipfile.ZIP_STORED), 24, 10),
        "land/a",
    ),
    "another content": (
        packed(GOOD, "".join(f"{digest(b'x')}  {name}\n" for name in GOOD)),
        "is not what its SHA-256 says",
    ),
    "not listed": (packed(GOOD, ""), "its list does not name land/log/a.yaml"),
    "listed and not there": (
        packed({}, f"{digest(b'x')}  land/x\n"), "it lacks land/x"
    ),
    "no list": (packed(GOOD).replace(HASHES.encode(), b"SHA256SUMX"), "it has no list"),
    "another list": (packed(GOOD, "anything\n"), "does not read as one"),
}  # fmt: skip


@pytest.mark.parametrize("trap", TRAPS)
def test_a_trap_is_refused_in_a_sentence_and_nothing_is_written(trap: str, tmp_path: Path) -> None:
    content, told = TRAPS[trap]
    archive = tmp_path / "inside" / "archive.zip"
    archive.parent.mkdir()
    archive.write_bytes(content)
    refused = run("restore", archive)
    assert refused.exit_code == 1
    assert told in refused.output
    assert "was not put back" in refused.output
    assert "Nothing was written." in refused.output
    assert sorted(path.name for path in tmp_path.rglob("*")) == ["archive.zip", "inside"]


@pytest.mark.parametrize("name", ["../away", "a/b", ".hidden", "nul", "two\nlines", ""])
def test_the_name_of_the_folder_leads_nowhere_else(name: str, tmp_path: Path) -> None:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr(HASHES, f"{Head(name, DAY).line()}\n")
    (tmp_path / "a.zip").write_bytes(out.getvalue())
    with pytest.raises(NotSaved):
        restore(tmp_path / "a.zip", tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["a.zip"]


def test_too_many_and_too_much_are_refused_before_anything_is_unpacked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "a.zip").write_bytes(packed(GOOD))
    for name, told in (("MOST_SAVED", "at most"), ("MOST_IN_ALL_BYTES", "more than")):
        with monkeypatch.context() as smaller:
            smaller.setattr(read_back, name, 0)
            with pytest.raises(NotSaved, match=told):
                restore(tmp_path / "a.zip", tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["a.zip"]
    assert names.MOST_SAVED >= 10_000


def test_it_goes_where_it_is_told_and_never_over_anything(tmp_path: Path) -> None:
    (tmp_path / "a.zip").write_bytes(packed(GOOD))
    into = tmp_path / "into"
    (into / f"land-saved-{DAY}").mkdir(parents=True)
    assert run("restore", tmp_path / "a.zip", "--to", into).exit_code == 0
    assert list((into / f"land-saved-{DAY}").iterdir()) == []
    assert (into / f"land-saved-{DAY}-2" / "log" / "a.yaml").read_bytes() == b"entries: []\n"
    assert run("restore", tmp_path / "b.zip").exit_code == 2


@given(st.data())
def test_an_archive_with_any_byte_changed_is_as_it_was_or_refused(
    tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    work = tmp_path_factory.mktemp("changed")
    content = bytearray(packed(GOOD))
    at = data.draw(st.integers(0, len(content) - 1))
    content[at] ^= data.draw(st.integers(1, 255))
    (work / "a.zip").write_bytes(content)
    try:
        back = restore(work / "a.zip", work)
    except NotSaved:
        assert [path.name for path in work.iterdir()] == ["a.zip"]
        return
    # what changed says nothing of the files: their times, or how they were packed
    found = {f"land/{name}": one for name, one in print_of(back.folder).items() if one != "folder"}
    assert found == {name: digest(content) for name, content in GOOD.items()}


def test_what_save_wrote_is_put_back(tmp_path: Path) -> None:
    folder = write_property(tmp_path / "land", small_property())
    saved = save(folder, tmp_path, DAY)
    assert print_of(restore(saved.archive, tmp_path).folder) == print_of(folder)

"""One owner's land over a year, with nothing but the files and the commands an owner has."""

import re
from pathlib import Path

import yaml
from click.testing import CliRunner

from generator.cli import main
from tests.book.reading import read
from tests.properties import SEASON, Data, write_property


class Land:
    """A property folder that is written, checked, recorded in and built by the command."""

    def __init__(self, folder: Path, data: Data) -> None:
        self.folder = write_property(folder / "land", data)
        self.books = 0

    def change(self, name: str, content: Data) -> None:
        """Write one file of the property anew, as an owner does in an editor."""
        text = yaml.safe_dump(content, sort_keys=False, allow_unicode=True)
        (self.folder / f"{name}.yaml").write_text(text, encoding="utf-8")

    def record(self, day: str, *words: str) -> None:
        """Write an entry into the log."""
        self._run("record", str(self.folder), "--on", day, *words)

    def book(self, day: str, season: int = SEASON, reader: str = "owner") -> "Book":
        """Build the book of a reader as of a day."""
        self.books += 1
        out = self.folder.parent / f"book {self.books}"
        self._run(
            "build", str(self.folder), "--as-of", day, "--season", str(season), "--for", reader,
            "--out", str(out),
        )  # fmt: skip
        return Book(out / reader)

    def _run(self, *words: str) -> None:
        done = CliRunner().invoke(main, list(words))
        assert done.exit_code == 0, done.output


class Book:
    """A finished book, read as a person reads it: the text of its pages."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def page(self, address: str) -> str:
        """The text of a page, on one line."""
        html = (self.folder / address).read_text(encoding="utf-8")
        (article,) = re.findall(r"<article.*?</article>", html, re.DOTALL)
        return re.sub(r"\s+", " ", read(article).text())

    def sheet(self, job_id: str) -> str:
        """The text of the owner's sheet of a job, its findings with it."""
        return self.page(f"work/{job_id.replace('/', '-')}.html")

    def __contains__(self, address: str) -> bool:
        return (self.folder / address).is_file()

"""The server answers this machine alone, with pages of its folder and nothing else."""

import http.client
import json
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.live.server import server_of
from generator.live.told import Told


class Asked:
    """A server of a small site, and what it answers."""

    def __init__(self, site: Path) -> None:
        (site / "places").mkdir(parents=True)
        (site / "index.html").write_text("<html><body><p>Home</p></body></html>")
        (site / "places" / "lane.html").write_text("<html><body>Lane</body></html>")
        (site / "calendar.ics").write_text("BEGIN:VCALENDAR")
        (site / ".handbook-site").write_text("mark")
        (site.parent / "secret.html").write_text("secret")
        self.told = Told()
        self.told.new_site(site)
        self.server = server_of(self.told, 0)
        threading.Thread(target=self.server.serve_forever, args=(0.01,), daemon=True).start()

    def __call__(
        self, path: str, host: str = "127.0.0.1:{}", method: str = "GET"
    ) -> tuple[int, str, str]:
        connection = http.client.HTTPConnection("127.0.0.1", self.server.server_port, timeout=10)
        connection.putrequest(method, path, skip_host=True)
        connection.putheader("Host", host.format(self.server.server_port))
        connection.endheaders()
        answer = connection.getresponse()
        body = answer.read().decode()
        connection.close()
        return answer.status, answer.headers["Content-Type"], body


@pytest.fixture
def ask(tmp_path: Path) -> Iterator[Asked]:
    asked = Asked(tmp_path / "site")
    yield asked
    asked.server.shutdown()
    asked.server.server_close()


def test_a_page_is_sent_with_the_script_that_asks_for_news(ask: Asked) -> None:
    status, kind, body = ask("/")
    assert (status, kind) == (200, "text/html; charset=utf-8")
    script = '<script src="/.live.js" data-version="1"></script>'
    assert body == f"<html><body><p>Home</p>{script}</body></html>"
    assert ask("/places/lane.html?x=1#y")[0] == 200
    assert ask.told.looked_at == "places/lane.html"
    assert ask("/.live.js")[1] == "text/javascript; charset=utf-8"
    assert ask("/calendar.ics")[1] == "text/calendar; charset=utf-8"
    assert ask("/", method="HEAD")[2] == ""


@pytest.mark.parametrize(
    "path",
    [
        "/../secret.html", "/%2e%2e/secret.html", "/places/../../secret.html", "//secret.html",
        "/places/%2e%2e/%2e%2e/secret.html", "/.handbook-site", "/places", "/gone.html",
        "/places\\..\\..\\secret.html", "/%00", "/" + "x" * 5000,
    ],
)  # fmt: skip
def test_nothing_outside_of_the_site_is_sent(ask: Asked, path: str) -> None:
    status, _, body = ask(path)
    assert status in (400, 404)
    assert "secret" not in body
    assert "mark" not in body


@pytest.mark.parametrize(
    "host", ["evil.example:{}", "127.0.0.1", "localhost:1", "", "127.0.0.1.evil.example:{}"]
)
def test_a_name_that_is_not_this_machine_s_gets_nothing(ask: Asked, host: str) -> None:
    assert ask("/", host)[0] == 403
    assert ask("/.live?version=0&page=index.html", host)[0] == 403
    assert ask("/", "localhost:{}")[0] == 200


def test_before_there_is_a_page_one_says_so_and_asks_for_news(tmp_path: Path) -> None:
    asked = Asked(tmp_path / "site")
    asked.server.RequestHandlerClass.state = Told()  # type: ignore[attr-defined]  # of our handler
    status, kind, body = asked("/places/lane.html")
    assert (status, kind) == (200, "text/html; charset=utf-8")
    assert '<script src="/.live.js" data-version="0"></script></body></html>' in body
    assert asked("/.handbook-site")[0] == 404
    asked.server.shutdown()
    asked.server.server_close()


def test_it_listens_on_this_machine_alone(ask: Asked) -> None:
    assert ask.server.server_address[0] == "127.0.0.1"


def test_an_open_page_is_told_as_soon_as_it_is_new(ask: Asked) -> None:
    answers: list[dict[str, object]] = []

    def wait() -> None:
        answers.append(json.loads(ask("/.live?version=1&page=places/lane.html")[2]))

    waiting = threading.Thread(target=wait)
    waiting.start()
    ask.told.new_pages(["index.html"])
    waiting.join(0.2)
    assert waiting.is_alive()
    ask.told.new_pages(["places/lane.html"])
    waiting.join(5)
    assert answers == [{"version": 3, "again": True, "faults": []}]


def test_faults_are_told_to_every_page_and_so_is_their_end(ask: Asked) -> None:
    ask.told.new_faults(("screens.yaml:3:1 F100 wrong",))
    told = json.loads(ask("/.live?version=1&page=index.html")[2])
    assert told == {"version": 2, "again": False, "faults": ["screens.yaml:3:1 F100 wrong"]}
    ask.told.new_faults(())
    assert json.loads(ask("/.live?version=2&page=index.html")[2])["faults"] == []


@pytest.mark.parametrize("version", ["", "x", "-1", "9" * 30, "٣"])
def test_a_version_that_is_no_number_is_refused(ask: Asked, version: str) -> None:
    from urllib.parse import quote

    assert ask(f"/.live?version={quote(version)}&page=index.html")[0] == 400

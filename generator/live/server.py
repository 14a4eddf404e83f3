"""Serves a preview on this machine alone, and tells open pages when they are new."""

import json
import mimetypes
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, unquote, urlsplit

from generator.dataclass import dataclass
from generator.live.told import Told

LOOPBACK = "127.0.0.1"
_NAMES = (LOOPBACK, "localhost")
NEWS, SCRIPT = "/.live", "/.live.js"
WAIT_S = 20.0
# What stands where no page was made yet; faults come onto it, and the pages in its place.
NO_PAGES_YET = (
    b'<!doctype html><html lang="en"><head><meta charset="utf-8"><title>No pages yet</title></head>'
    b"<body><p>The pages come by themselves once the files have no fault.</p>"
)
_SCRIPT = Path(__file__).with_name("live.js")
_MIME = {
    ".ics": "text/calendar",
    ".js": "text/javascript",
    ".csv": "text/csv",
    ".geojson": "application/geo+json",
    ".gpx": "application/gpx+xml",
    ".kml": "application/xml",
}


def server_of(told: Told, port: int) -> ThreadingHTTPServer:
    """Return a server of the pages that are told of; port 0 is any that is free.

    Raises OSError where the port is taken.
    """

    class Handler(_Handler):
        state = told

    server = ThreadingHTTPServer((LOOPBACK, port), Handler)
    server.daemon_threads = True
    Handler.hosts = frozenset(f"{name}:{server.server_port}" for name in _NAMES)
    return server


@dataclass(frozen=True, slots=True)
class _Answer:
    status: HTTPStatus
    kind: str
    body: bytes


class _Handler(BaseHTTPRequestHandler):
    state: Told
    hosts: frozenset[str]

    def do_GET(self) -> None:
        self._send(self._answer(), with_body=True)

    def do_HEAD(self) -> None:
        self._send(self._answer(), with_body=False)

    def log_message(self, format: str, *args: Any) -> None:
        """Say nothing of every request."""

    def _answer(self) -> _Answer:
        # a page from elsewhere that leads a browser here under a name of its own gets nothing
        if self.headers.get("Host") not in self.hosts:
            return _told(HTTPStatus.FORBIDDEN, "This server answers this machine alone.")
        asked = urlsplit(self.path)
        if asked.path == NEWS:
            return self._news(asked.query)
        if asked.path == SCRIPT:
            return _Answer(HTTPStatus.OK, "text/javascript", _SCRIPT.read_bytes())
        return self._file(unquote(asked.path))

    def _news(self, query: str) -> _Answer:
        words = parse_qs(query)
        version, page = words.get("version", [""])[0], words.get("page", [""])[0]
        if not (version.isascii() and version.isdecimal() and len(version) < 10):
            return _told(HTTPStatus.BAD_REQUEST, "The version is no number.")
        news = self.state.wait(int(version), page, WAIT_S)
        told = {"version": news.version, "again": news.again, "faults": news.faults}
        return _Answer(HTTPStatus.OK, "application/json", json.dumps(told).encode())

    def _file(self, path: str) -> _Answer:
        name = path.lstrip("/") or "index.html"
        site, version = self.state.site, self.state.version
        parts = name.split("/")
        # nothing of a site begins with a dot, so none leads out of it or is hidden in it
        if any(not part or part.startswith(".") or "\\" in part for part in parts):
            return _told(HTTPStatus.NOT_FOUND, "There is no such page.")
        script = f'<script src="{SCRIPT}" data-version="{version}"></script>'.encode()
        if site is None:
            return _Answer(HTTPStatus.OK, "text/html", NO_PAGES_YET + script + b"</body></html>")
        try:
            content = (site / name).read_bytes()
        except (OSError, ValueError):  # the system may not take the name at all
            return _told(HTTPStatus.NOT_FOUND, "There is no such page.")
        suffix = Path(name).suffix
        kind = _MIME.get(suffix) or mimetypes.guess_type(name)[0] or "application/octet-stream"
        if suffix == ".html":
            self.state.look_at(name)
            content = content.replace(b"</body>", script + b"</body>")
        return _Answer(HTTPStatus.OK, kind, content)

    def _send(self, answer: _Answer, *, with_body: bool) -> None:
        try:
            self.send_response(answer.status)
            is_text = answer.kind.startswith("text/")
            self.send_header("Content-Type", answer.kind + ("; charset=utf-8" if is_text else ""))
            self.send_header("Content-Length", str(len(answer.body)))
            self.send_header("Cache-Control", "no-store")
            self.end_headers()
            if with_body:
                self.wfile.write(answer.body)
        except ConnectionError:
            # whoever asked has gone
            self.close_connection = True


def _told(status: HTTPStatus, words: str) -> _Answer:
    return _Answer(status, "text/plain", f"{words}\n".encode())

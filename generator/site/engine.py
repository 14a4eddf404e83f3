"""The one module that knows MkDocs: builds pages through its public Python interface."""

import hashlib
import logging
import posixpath
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from jinja2 import Environment
from markdown import Markdown
from markdown.extensions import Extension
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page

from generator.dataclass import dataclass
from generator.site.bodies import Body
from generator.site.engine_theme import OwnTheme
from generator.site.frames import Frames
from generator.site.markdown_blocks import HandbookBlocks

UNUSED_NAMES, UNUSED_FOLDERS = (".map", "sitemap.xml"), ("assets/javascripts/lunr/",)
# A list of pages, titles with what they stand for: an address, or a list again.
NavigationData = list[dict[str, Any]]


class Failed(Exception):  # noqa: N818 - reads as what happened
    """MkDocs could not build the site; the message says why."""


@dataclass(frozen=True, slots=True)
class Prepared:
    """MkDocs' own reading of the settings, and the converter that they ask for."""

    config: MkDocsConfig
    converter: Markdown


@dataclass(frozen=True, slots=True)
class Finished:
    """What came of a build: warnings, a digest of each page, what is around one of each kind.

    `framed` puts another body of one of its pages into that page's frame.
    """

    messages: tuple[str, ...]
    digests: Mapping[str, str]
    frames: Mapping[str, str]
    framed: Callable[[Body], str]
    search_settings: Mapping[str, Any]


def prepared(settings: Path, navigation: NavigationData, site: Path) -> Prepared:
    """Read the settings of a build. Raises Failed where MkDocs gives up."""
    with _heard():
        config = load_config(str(settings), site_dir=str(site), nav=navigation)
        extensions: list[str | Extension] = [*config.markdown_extensions, HandbookBlocks()]
        converter = Markdown(extensions=extensions, extension_configs=config.mdx_configs)
        return Prepared(config, converter)


def build_site(
    config: MkDocsConfig,
    pages: Sequence[tuple[str, Body]],
    files: Mapping[str, bytes],
) -> Finished:
    """Build a site of pages, each with its title, and of files beside them.

    The search index is for the caller to write. Raises Failed where MkDocs gives up.
    """
    handbook = _Handbook(pages, files)
    with _heard() as heard:
        config.plugins["handbook"] = handbook
        build(config)
    return Finished(
        tuple(heard.messages),
        handbook.digests,
        handbook.joined.frames.first,
        handbook.framed,
        config.plugins["material/search"].config,
    )


@contextmanager
def _heard() -> Iterator["_Listener"]:
    """Listen to what MkDocs warns of; where it gives up, that is why."""
    heard = _Listener()
    logger = logging.getLogger("mkdocs")
    logger.addHandler(heard)
    try:
        yield heard
    except (Abort, Exception) as error:
        if not heard.messages:
            raise
        raise Failed("; ".join(heard.messages)) from error
    finally:
        logger.removeHandler(heard)


class _Listener(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())


class _BookPage(Page):
    """A page whose title and HTML are known before MkDocs comes to it."""

    def __init__(self, title: str, body: Body, file: File, config: MkDocsConfig) -> None:
        super().__init__(title, file, config)
        self.body: Body | None = body

    def read_source(self, config: MkDocsConfig) -> None:  # noqa: ARG002 - MkDocs calls it so
        self.markdown = ""
        # the theme's own index would read every page's HTML again; ours is written from data
        self.meta = {"title": self.title, "search": {"exclude": True}}

    def render(self, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002 - MkDocs calls it so
        assert self.body is not None
        self.show(self.body)

    def show(self, body: Body) -> None:
        """Have a body stand on the page."""
        self.content = body.html
        self.toc = body.headings  # type: ignore[assignment]  # what the theme asks of one

    def forget(self) -> None:
        """Hold no text of a page that is written."""
        self.body, self.content = None, ""


class _JoinedPages:
    """Takes the place of the theme's templates: pages are put into frames it rendered before."""

    def __init__(self, env: Environment, finished: Callable[[Page, str], None]) -> None:
        self.finished = finished
        self.frames = Frames(env.get_template("main.html"))
        # what a template is handed differs by folder alone, but for the page
        self.contexts: dict[str, Mapping[str, Any]] = {}

    def get_template(self, name: str) -> "_JoinedPages":  # noqa: ARG002 - MkDocs calls it so
        return self

    def render(self, context: Mapping[str, Any]) -> str:
        page = context["page"]
        self.contexts.setdefault(posixpath.dirname(page.url), context)
        html = self.frames.around(page, context)
        self.finished(page, html)
        return html


class _NoSettings(Config):  # type: ignore[no-untyped-call]  # MkDocs has no types here
    pass


class _Handbook(BasePlugin[_NoSettings]):  # type: ignore[no-untyped-call]  # MkDocs has no types here
    """Our part in a build: own pages, no file nobody reads, joined frames."""

    def __init__(self, pages: Sequence[tuple[str, Body]], files: Mapping[str, bytes]) -> None:
        self.pages, self.beside = pages, files
        self.by_address: dict[str, _BookPage] = {}
        self.digests: dict[str, str] = {}

    def on_config(self, config: MkDocsConfig) -> None:
        # The page for missing pages and the list of pages need an address on the web.
        config.theme.static_templates.clear()
        config.theme = OwnTheme(config.theme)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        for file in list(files):
            if file.src_uri.endswith(UNUSED_NAMES) or file.src_uri.startswith(UNUSED_FOLDERS):
                files.remove(file)
        for name, content in self.beside.items():
            files.append(File.generated(config, name, content=content))
        for title, body in self.pages:
            file = File.generated(config, body.address, content="")
            files.append(file)
            self.by_address[body.address] = _BookPage(title, body, file, config)
        return files

    def on_env(self, env: Environment, **_: object) -> Any:
        self.joined = _JoinedPages(env, self._note)
        return self.joined

    def _note(self, page: Page, html: str) -> None:
        self.digests[page.file.dest_uri] = hashlib.sha256(
            html.encode("utf-8", errors="xmlcharrefreplace")
        ).hexdigest()

    def framed(self, body: Body) -> str:
        """Return a page of this build with another body, in its frame."""
        page = self.by_address[body.address]
        page.show(body)
        page.active = True
        try:
            context = self.joined.contexts[posixpath.dirname(page.url)]
            return self.joined.frames.around(page, {**context, "page": page})
        finally:
            page.active = False
            page.forget()

    @event_priority(-50)
    def on_post_build(self, **_: object) -> None:
        for page in self.by_address.values():
            page.forget()

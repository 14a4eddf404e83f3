"""The one module that knows MkDocs: builds pages through its public Python interface."""

import hashlib
import logging
import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import mkdocs
from jinja2 import Environment, FileSystemLoader
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
from mkdocs.theme import Theme

from generator.compiled import Compiled
from generator.dataclass import dataclass
from generator.site.bodies import Body
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
    """What came of a build: warnings, a digest of each page, what is around one of each kind."""

    messages: tuple[str, ...]
    digests: Mapping[str, str]
    frames: Mapping[str, str]


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
    write_search: Callable[[Any], None],
) -> Finished:
    """Build a site of pages, each with its title, and of files beside them.

    `write_search` is called with the search settings once everything else is written. Raises
    Failed where MkDocs gives up.
    """
    handbook = _Handbook(pages, files, write_search)
    with _heard() as heard:
        config.plugins["handbook"] = handbook
        build(config)
    return Finished(tuple(heard.messages), handbook.digests, handbook.frames)


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
        self.body = body

    def read_source(self, config: MkDocsConfig) -> None:  # noqa: ARG002 - MkDocs calls it so
        self.markdown = ""
        # the theme's own index would read every page's HTML again; ours is written from data
        self.meta = {"title": self.title, "search": {"exclude": True}}

    def render(self, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002 - MkDocs calls it so
        self.content = self.body.html
        self.toc = self.body.headings  # type: ignore[assignment]  # what the theme asks of one


class _OwnTheme(Theme):
    """The theme without a walk over its thousands of icons, its templates kept compiled."""

    def __init__(self, theme: Theme) -> None:
        vars(self).update(vars(theme))

    def get_env(self) -> Environment:
        env = super().get_env()
        env.loader = _WithoutIcons(self.dirs)
        env.bytecode_cache = Compiled(f"theme {mkdocs.__version__}")
        return env


class _WithoutIcons(FileSystemLoader):
    """Lists what may be published: a page names the icons it shows, and none is a file beside."""

    def list_templates(self) -> list[str]:
        return sorted({name for folder in self.searchpath for name in _shown_files(folder)})


def _shown_files(folder: str) -> Iterator[str]:
    for here, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        yield from (Path(here, name).relative_to(folder).as_posix() for name in names)


class _JoinedPages:
    """Takes the place of the theme's templates: pages are put into frames it rendered before."""

    def __init__(self, env: Environment, finished: Callable[[Page, str], None]) -> None:
        self.env, self.finished = env, finished
        self.frames = Frames(env.get_template("main.html"))

    def get_template(self, name: str) -> "_JoinedPages":  # noqa: ARG002 - MkDocs calls it so
        return self

    def render(self, context: Mapping[str, Any]) -> str:
        html = self.frames.around(context["page"], context)
        self.finished(context["page"], html)
        return html


class _NoSettings(Config):  # type: ignore[no-untyped-call]  # MkDocs has no types here
    pass


class _Handbook(BasePlugin[_NoSettings]):  # type: ignore[no-untyped-call]  # MkDocs has no types here
    """Our part in a build: own pages, no file nobody reads, joined frames, own search index."""

    def __init__(
        self,
        pages: Sequence[tuple[str, Body]],
        files: Mapping[str, bytes],
        write_search: Callable[[Any], None],
    ) -> None:
        self.pages, self.beside, self.write_search = pages, files, write_search
        self.digests: dict[str, str] = {}
        self.frames: dict[str, str] = {}

    def on_config(self, config: MkDocsConfig) -> None:
        # The page for missing pages and the list of pages need an address on the web.
        config.theme.static_templates.clear()
        config.theme = _OwnTheme(config.theme)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        for file in list(files):
            if file.src_uri.endswith(UNUSED_NAMES) or file.src_uri.startswith(UNUSED_FOLDERS):
                files.remove(file)
        for name, content in self.beside.items():
            files.append(File.generated(config, name, content=content))
        for title, body in self.pages:
            file = File.generated(config, body.address, content="")
            files.append(file)
            _BookPage(title, body, file, config)
        return files

    def on_env(self, env: Environment, **_: object) -> Any:
        self.joined = _JoinedPages(env, self._note)
        return self.joined

    def _note(self, page: Page, html: str) -> None:
        self.digests[page.file.dest_uri] = hashlib.sha256(
            html.encode("utf-8", errors="xmlcharrefreplace")
        ).hexdigest()

    @event_priority(-50)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        self.frames = self.joined.frames.first
        self.write_search(config.plugins["material/search"].config)

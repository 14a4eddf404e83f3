"""The one module that knows MkDocs: builds pages through its public Python interface."""

import logging
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from jinja2 import Environment, TemplateError
from markdown import Markdown
from markdown.extensions import Extension
from mkdocs.commands.build import build, get_context
from mkdocs.config import load_config
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page

from generator.dataclass import dataclass
from generator.site.bodies import Body
from generator.site.engine_theme import OwnTheme
from generator.site.frames import Framed, Frames
from generator.site.markdown_blocks import HandbookBlocks

UNUSED_NAMES, UNUSED_FOLDERS = (".map", "sitemap.xml"), ("assets/javascripts/lunr/",)
# Puts a body into the frame of its page.
Framing = Callable[[Body], Framed]
# A list of pages, titles with what they stand for: an address, or a list again.
NavigationData = list[dict[str, Any]]


class Failed(Exception):  # noqa: N818 - reads as what happened
    """MkDocs could not build the site; the message says why."""


@dataclass(frozen=True, slots=True)
class Prepared:
    """MkDocs' own reading of the settings, and the converter that they ask for, as they say it."""

    config: MkDocsConfig
    converter: Markdown
    converter_settings: str


@dataclass(frozen=True, slots=True)
class Finished:
    """What came of a build: warnings, what frames its pages, the settings of its search."""

    messages: tuple[str, ...]
    framing: Framing
    search_settings: Mapping[str, Any]


def prepared(
    folder: Path, settings: Mapping[str, Any], navigation: NavigationData, site: Path
) -> Prepared:
    """Have MkDocs take the settings of a build in a folder. Raises Failed where it gives up."""
    # it wants a file, and reads it slowly: what is known already is handed over
    file = folder / "mkdocs.yml"
    file.write_text("site_name: Handbook\n", encoding="utf-8")
    with _heard():
        config = load_config(str(file), **{**settings, "site_dir": str(site), "nav": navigation})
        extensions: list[str | Extension] = [*config.markdown_extensions, HandbookBlocks()]
        converter = Markdown(extensions=extensions, extension_configs=config.mdx_configs)
        return Prepared(config, converter, f"{config.markdown_extensions} {config.mdx_configs}")


def build_site(
    config: MkDocsConfig,
    titles: Mapping[str, str],
    files: Mapping[str, bytes],
    write: Callable[[Framing], None],
) -> Finished:
    """Build a site of pages, their titles by their addresses, and of files beside them.

    `write` is called once every page has its place, and writes them all; the search index is for
    the caller to write. Raises Failed where MkDocs gives up.
    """
    handbook = _Handbook(titles, files, write)
    with _heard() as heard:
        config.plugins["handbook"] = handbook
        build(config)
    return Finished(
        tuple(heard.messages),
        handbook.framing,
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
    """A page that holds its HTML only while it is put into its frame."""

    def read_source(self, config: MkDocsConfig) -> None:  # noqa: ARG002 - MkDocs calls it so
        self.markdown = ""
        # the theme's own index would read every page's HTML again; ours is written from data
        self.meta = {"title": self.title, "search": {"exclude": True}}

    def render(self, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002 - MkDocs calls it so
        self.content = ""

    def show(self, body: Body) -> None:
        """Have a body stand on the page."""
        self.content = body.html
        self.toc = body.headings  # type: ignore[assignment]  # what the theme asks of one


class _Written:
    """Takes the place of the theme's templates once all pages are written: nothing is left."""

    def get_template(self, name: str) -> "_Written":  # noqa: ARG002 - MkDocs calls it so
        return self

    def render(self, context: Mapping[str, Any]) -> str:  # noqa: ARG002 - MkDocs calls it so
        return ""


class _NoSettings(Config):  # type: ignore[no-untyped-call]  # MkDocs has no types here
    pass


class _Handbook(BasePlugin[_NoSettings]):  # type: ignore[no-untyped-call]  # MkDocs has no types here
    """Our part in a build: own pages, no file nobody reads, joined frames."""

    def __init__(
        self,
        titles: Mapping[str, str],
        files: Mapping[str, bytes],
        write: Callable[[Framing], None],
    ) -> None:
        self.titles, self.beside, self.write = titles, files, write
        self.pages: dict[str, _BookPage] = {}

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
        for address, title in self.titles.items():
            file = File.generated(config, address, content="")
            files.append(file)
            self.pages[address] = _BookPage(title, file, config)
        return files

    def on_nav(self, nav: Navigation, **_: object) -> None:
        self.nav = nav

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Any:
        frames, every = Frames(env.get_template("main.html")), files.documentation_pages()

        def context_of(page: Page) -> Mapping[str, Any]:
            return get_context(self.nav, every, config, page)

        def framing(body: Body) -> Framed:
            page = self.pages[body.address]
            page.show(body)
            page.active = True
            try:
                return frames.around(page, self.nav.items, context_of)
            except (TemplateError, ValueError) as error:
                raise Failed(f"Error building page '{body.address}': {error}") from error
            finally:
                page.active = False
                page.content = ""

        self.framing: Framing = framing
        self.write(framing)
        # whoever stays to frame pages anew keeps none of what these were made from
        del self.write, self.beside
        return _Written()

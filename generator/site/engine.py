"""The one module that knows MkDocs: builds a staged tree through its public Python interface."""

import logging
import os
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import mkdocs
from jinja2 import Environment
from markdown import Markdown
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import get_toc

from generator.compiled import Compiled
from generator.site.markdown_blocks import HandbookBlocks
from generator.site.shares import Shares

UNUSED_NAMES, UNUSED_FOLDERS = (".map", "sitemap.xml"), ("assets/javascripts/lunr/",)


class Failed(Exception):  # noqa: N818 - reads as what happened
    """MkDocs could not build the tree; the message says why."""


def build_tree(
    tree: Path, site: Path, titles: Mapping[str, str], write_search: Callable[[Any], None]
) -> tuple[str, ...]:
    """Builds the site of `tree` and returns what MkDocs warned of.

    `titles` gives each page's title by address. `write_search` is called with the search
    settings once everything else is written. Raises Failed where MkDocs gives up.
    """
    heard = _Listener()
    shares = Shares()
    logger = logging.getLogger("mkdocs")
    logger.addHandler(heard)
    try:
        config = load_config(str(tree / "mkdocs.yml"), site_dir=str(site))
        config.plugins["handbook"] = _Handbook(titles, write_search, heard.messages, shares)
        build(config)
    except (Abort, Exception) as error:
        heard.messages += [] if shares.is_second else shares.gather()
        if not heard.messages:
            raise
        raise Failed("; ".join(heard.messages)) from error
    finally:
        if shares.is_second:
            os._exit(1)
        shares.stop_second()
        logger.removeHandler(heard)
    return tuple(heard.messages)


class _Listener(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())


class _BookPage(Page):
    """A page whose title is known before it is read and whose Markdown one converter renders."""

    def __init__(self, title: str, file: File, config: MkDocsConfig, converter: Markdown) -> None:
        super().__init__(title, file, config)
        self.converter = converter

    def read_source(self, config: MkDocsConfig) -> None:
        super().read_source(config)
        # The theme's own index would read every page's HTML again; ours is written from data.
        self.meta["search"] = {"exclude": True}

    def render(self, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002 - MkDocs calls it so
        self.content = self.converter.reset().convert(self.markdown or "")
        self.toc = get_toc(getattr(self.converter, "toc_tokens", []))


class _NoSettings(Config):  # type: ignore[no-untyped-call]  # MkDocs has no types here
    pass


class _Handbook(BasePlugin[_NoSettings]):  # type: ignore[no-untyped-call]  # MkDocs has no types here
    """Our part in a build: own pages, no file nobody reads, two processes, own search index."""

    def __init__(
        self,
        titles: Mapping[str, str],
        write_search: Callable[[Any], None],
        messages: list[str],
        shares: Shares,
    ) -> None:
        self.titles, self.write_search, self.messages = titles, write_search, messages
        self.shares = shares

    def on_config(self, config: MkDocsConfig) -> None:
        # The page for missing pages and the list of pages need an address on the web.
        config.theme.static_templates.clear()

    def on_env(self, env: Environment, **_: object) -> Environment:
        # the theme's templates are the same in every build, and slow to compile
        env.bytecode_cache = Compiled(f"theme-{mkdocs.__version__}")
        return env

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        converter = Markdown(
            extensions=[*config.markdown_extensions, HandbookBlocks()],
            extension_configs=config.mdx_configs,
        )
        for file in list(files):
            address = file.src_uri
            if address.endswith(UNUSED_NAMES) or address.startswith(UNUSED_FOLDERS):
                files.remove(file)
            elif address in self.titles:
                _BookPage(self.titles[address], file, config, converter)
        return files

    @event_priority(-100)
    def on_nav(self, nav: Navigation, *, files: Files, **_: object) -> Navigation:
        left_out = list(self.shares.split(files.documentation_pages()))
        if self.shares.is_second:
            self.messages.clear()
            left_out += [file for file in files if not file.is_documentation_page()]
        for file in left_out:
            file.inclusion = InclusionLevel.EXCLUDED
        return nav

    @event_priority(100)
    def on_build_error(self, *, error: Exception) -> None:
        if self.shares.is_second:
            status = getattr(error, "errno", None) or 1
            self.shares.report([*self.messages, str(error)], status=status)

    @event_priority(-50)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        if self.shares.is_second:
            self.shares.report(self.messages, status=0)
        self.messages += self.shares.gather()
        self.write_search(config.plugins["material/search"].config)

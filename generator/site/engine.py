"""The one module that knows MkDocs: builds a staged tree through its public Python interface."""

import logging
import os
import sys
import threading
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

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

from generator.site.markdown_blocks import HandbookBlocks

# Below this many pages a second process costs more than it saves.
TWO_PROCESSES_FROM = 60
UNUSED = (".map", "assets/javascripts/lunr/")


class Failed(Exception):
    """MkDocs could not build the tree; the message says why."""


def build_tree(
    tree: Path, site: Path, titles: Mapping[str, str], write_search: Callable[[Any], None]
) -> tuple[str, ...]:
    """Builds the site of `tree` and returns what MkDocs warned of.

    `titles` gives each page's title by address. `write_search` is called with the search
    settings once everything else is written. Raises Failed where MkDocs gives up.
    """
    heard = _Listener()
    logger = logging.getLogger("mkdocs")
    logger.addHandler(heard)
    this_process = os.getpid()
    try:
        config = load_config(str(tree / "mkdocs.yml"), site_dir=str(site))
        config.plugins["handbook"] = _Handbook(titles, write_search, heard.messages)
        build(config)
    except Abort as error:
        raise Failed("; ".join(heard.messages) or str(error)) from error
    finally:
        # The second process must never come back into the caller's code.
        if os.getpid() != this_process:
            os._exit(1)
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
        self.meta["search"] = {"exclude": True}

    def render(self, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002
        converter = self.converter.reset()
        self.content = converter.convert(self.markdown or "")
        self.toc = get_toc(getattr(converter, "toc_tokens", []))


class _NoSettings(Config):
    pass


class _Handbook(BasePlugin[_NoSettings]):
    """Our part in a build: own pages, no file nobody reads, a second process, own search index."""

    def __init__(
        self,
        titles: Mapping[str, str],
        write_search: Callable[[Any], None],
        messages: list[str],
    ) -> None:
        self.titles, self.write_search, self.messages = titles, write_search, messages
        self.other: tuple[int, int] | None = None
        self.parent = 0

    def on_config(self, config: MkDocsConfig) -> None:
        # The page for missing pages and the list of pages need an address on the web.
        config.theme.static_templates.clear()

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        converter = Markdown(
            extensions=[*config.markdown_extensions, HandbookBlocks()],
            extension_configs=config.mdx_configs,
        )
        for file in list(files):
            if file.src_uri.endswith(UNUSED[0]) or file.src_uri.startswith(UNUSED[1]):
                files.remove(file)
            elif file.src_uri in self.titles:
                _BookPage(self.titles[file.src_uri], file, config, converter)
        return files

    @event_priority(-100)
    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:  # noqa: ARG002
        pages = files.documentation_pages()
        can_fork = sys.platform == "linux" and threading.active_count() == 1
        if len(pages) >= TWO_PROCESSES_FROM and can_fork and (os.cpu_count() or 1) > 1:
            self._share(pages, files)
        return nav

    def _share(self, pages: Any, files: Files) -> None:
        """Splits into two processes that write every second page each; the parent the rest too."""
        parent = os.getpid()
        reading, writing = os.pipe()
        child = os.fork()
        if child:
            os.close(writing)
            self.other = (child, reading)
            left_out = pages[1::2]
        else:
            os.close(reading)
            self.parent, self.other = parent, (0, writing)
            self.messages.clear()
            left_out = [*pages[::2], *(file for file in files if not file.is_documentation_page())]
        for file in left_out:
            file.inclusion = InclusionLevel.EXCLUDED

    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> None:  # noqa: ARG002
        if self.parent and os.getppid() != self.parent:
            os._exit(1)

    @event_priority(100)
    def on_build_error(self, *, error: Exception) -> None:
        if self.parent and self.other:
            os.write(self.other[1], f"{error}".encode())
            os._exit(1)

    @event_priority(-50)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        if self.parent and self.other:
            os.write(self.other[1], "\n".join(self.messages).encode())
            os._exit(0)
        if self.other:
            child, reading = self.other
            with open(reading, "rb") as report:
                self.messages += report.read().decode().splitlines()
            if os.waitpid(child, 0)[1]:
                self.messages.append("The second process of the build ended early.")
        self.write_search(config.plugins["material/search"].config)

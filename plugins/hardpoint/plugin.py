"""The MkDocs plugin: it wires load, rules, pages and templates to MkDocs' events, and does nothing else."""

from __future__ import annotations

import logging
import pathlib
from typing import Literal

from jinja2 import Environment, FileSystemLoader
from markupsafe import escape
from mkdocs.config import config_options as option
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as MkPage
from mkdocs.structure.toc import TableOfContents
from mkdocs.utils.templates import TemplateContext

from hardpoint.book import Book
from hardpoint.pages import Page, addresses, all_pages, anchors
from hardpoint.pages.data import files_beside
from hardpoint.pages.finder import finder, finder_script
from hardpoint.rendering import SAYING, environment, render
from hardpoint.words import AS_WRITTEN, speak

log = get_plugin_logger("hardpoint")
_HERE = pathlib.Path(__file__).parent
_ASSETS = "assets/hardpoint"


class HardpointConfig(Config):  # type: ignore[no-untyped-call]  # MkDocs leaves its subclass hook untyped
    """Options in mkdocs.yml; the command line sets the first two. ``words``: a .po file beside mkdocs.yml."""

    fleet = option.Type(str, default="fleet")
    as_of = option.Optional(option.Type(str))
    words = option.Optional(option.Type(str))


class HardpointPlugin(BasePlugin[HardpointConfig]):  # type: ignore[no-untyped-call]  # as above
    """Kept by MkDocs over the rebuilds of ``serve``, so that the last good fleet can be shown when a record breaks."""

    def __init__(self) -> None:
        self.serving = False
        self.book = Book()
        self.pages: dict[str, Page] = {}
        self.docs: list[MkPage] = []
        self.unused: set[str] = set()

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """https://www.mkdocs.org/dev-guide/plugins/#on_startup"""
        self.serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """https://www.mkdocs.org/dev-guide/plugins/#on_config"""
        config.use_directory_urls = False  # a folder address needs a server; file:// has none
        # Our frame loads none of the theme's scripts, styles, fonts: four fifths of a small site's bytes.
        self.unused = {folder for folder in config.theme.dirs if folder != config.theme.custom_dir}
        config.theme.dirs.insert(1 if config.theme.custom_dir else 0, str(_HERE / "theme"))
        beside = pathlib.Path(config.config_file_path).parent
        watched = [beside / name for name in (self.config.fleet, self.config.words) if name]
        watched += [_HERE / "templates", _HERE / "theme", _HERE / "assets"]
        config.watch.extend(str(path) for path in watched if path.exists())
        custom = [pathlib.Path(config.theme.custom_dir) / "hardpoint"] if config.theme.custom_dir else []
        self.templates = environment(FileSystemLoader([*custom, _HERE / "templates"]))
        self.pages = {}
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """https://www.mkdocs.org/dev-guide/plugins/#on_pre_build: the target is emptied right after this."""
        beside = pathlib.Path(config.config_file_path).parent
        wrong = self.book.open(beside, self.config.fleet, self.config.as_of, self.config.words)
        if wrong and not (self.serving and self.book.site):
            raise PluginError(wrong)
        log.log(logging.ERROR if wrong else logging.INFO, wrong or self.book.read)
        speak(self.book.language)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """https://www.mkdocs.org/dev-guide/plugins/#on_files"""
        for file in [file for file in files if file.src_dir in self.unused]:
            files.remove(file)
        for page in all_pages(self.book.shown):
            source = page.address.removesuffix(".html") + ".md"
            if source in files.src_uris:
                raise PluginError(f"docs/{source} stands where Hardpoint makes the page {page.address}; rename it")
            self.pages[source] = page
            files.append(File.generated(config, source, content="", inclusion=InclusionLevel.NOT_IN_NAV))
        for address, content in files_beside(self.book.shown):
            files.append(File.generated(config, address, content=content))
        for asset in sorted((_HERE / "assets").iterdir()):
            files.append(File.generated(config, f"{_ASSETS}/{asset.name}", abs_src_path=str(asset)))
        return files

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        """https://www.mkdocs.org/dev-guide/plugins/#on_nav"""
        self.docs = [page for page in nav.pages if page.file.src_uri not in self.pages]
        return nav

    def on_page_content(self, html: str, *, page: MkPage, config: MkDocsConfig, files: Files) -> str:
        """https://www.mkdocs.org/dev-guide/plugins/#on_page_content: not yet rendered, so that memory stays flat."""
        ours = self.pages.get(page.file.src_uri)
        if ours is None:
            return html
        page.title = str(escape(ours.title))
        page.toc = TableOfContents([])
        page.present_anchor_ids = anchors(ours.view)
        page.meta = {"template": "hardpoint.html", "search": {"exclude": True}}
        return ""

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        """https://www.mkdocs.org/dev-guide/plugins/#on_env: frames; docs are rendered, files not yet copied."""
        env.globals |= SAYING
        env.globals["hardpoint"] = self.book.shown.around | {"docs": [(page.title, page.url) for page in self.docs]}
        index = finder(self.book.shown, self.pages.values(), self.docs)
        files.append(File.generated(config, addresses.FINDER, content=finder_script(index)))
        return env

    def on_page_context(
        self, context: TemplateContext, *, page: MkPage, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """https://www.mkdocs.org/dev-guide/plugins/#on_page_context"""
        ours = self.pages.get(page.file.src_uri)
        if ours is not None:
            page.content = render(self.templates, ours)
        return context

    def on_post_page(self, output: str, *, page: MkPage, config: MkDocsConfig) -> str:
        """https://www.mkdocs.org/dev-guide/plugins/#on_post_page: MkDocs keeps pages to the end; their text may go."""
        if page.file.src_uri in self.pages:
            page.content = None
        return output

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """https://www.mkdocs.org/dev-guide/plugins/#on_post_build: the next build in this process begins in English."""
        speak(AS_WRITTEN)

    def on_build_error(self, *, error: Exception) -> None:
        """https://www.mkdocs.org/dev-guide/plugins/#on_build_error: as above"""
        speak(AS_WRITTEN)

"""The MkDocs plugin: it wires load, rules, pages and templates to MkDocs' events, and does nothing else."""

from __future__ import annotations

import pathlib
from typing import Literal

import click
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

from hardpoint import load, report
from hardpoint.commands.project import Day, edition, today
from hardpoint.pages import Page, Site, addresses, all_pages, anchors
from hardpoint.pages.data import data_files
from hardpoint.pages.finder import finder, finder_script
from hardpoint.rendering import environment, render
from hardpoint.words import say, say_count

log = get_plugin_logger("hardpoint")
_HERE = pathlib.Path(__file__).parent
_ASSETS = "assets/hardpoint"


class HardpointConfig(Config):  # type: ignore[no-untyped-call]  # MkDocs leaves its subclass hook untyped
    """Options in mkdocs.yml; the command line sets both."""

    fleet = option.Type(str, default="fleet")
    as_of = option.Optional(option.Type(str))


class HardpointPlugin(BasePlugin[HardpointConfig]):  # type: ignore[no-untyped-call]  # as above
    """Kept by MkDocs over the rebuilds of ``serve``, so that the last good fleet can be shown when a record breaks."""

    def __init__(self) -> None:
        self.serving = False
        self.site: Site | None = None
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
        folders = [str(self._fleet(config)), str(_HERE / "templates"), str(_HERE / "theme"), str(_HERE / "assets")]
        config.watch.extend(folder for folder in folders if pathlib.Path(folder).is_dir())
        own = [pathlib.Path(config.theme.custom_dir) / "hardpoint"] if config.theme.custom_dir else []
        self.templates = environment(FileSystemLoader([*own, _HERE / "templates"]))
        self.pages = {}
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """https://www.mkdocs.org/dev-guide/plugins/#on_pre_build: the target is emptied right after this."""
        try:
            as_of = Day().convert(self.config.as_of, None, None) if self.config.as_of else today()
        except click.UsageError as wrong:
            raise PluginError(wrong.format_message()) from None
        checked = load.check(self._fleet(config), as_of)
        if not checked.errors:
            when = edition(pathlib.Path(config.config_file_path).parent, as_of).date().isoformat()
            self.site = Site(checked.fleet, tuple(checked.findings), as_of, when)
            log.info(f"{checked.files} records, {len(checked.findings)} warnings, all on the gaps page")
            return
        words = report.text(checked.errors, as_of, checked.files)
        if not self.serving or self.site is None:
            raise PluginError(words)
        log.error(words)
        self.site = self.site.held_back_by(checked.errors[0])

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """https://www.mkdocs.org/dev-guide/plugins/#on_files"""
        for file in [file for file in files if file.src_dir in self.unused]:
            files.remove(file)
        for page in all_pages(self._site):
            source = page.address.removesuffix(".html") + ".md"
            if source in files.src_uris:
                raise PluginError(f"docs/{source} stands where Hardpoint makes the page {page.address}; rename it")
            self.pages[source] = page
            files.append(File.generated(config, source, content="", inclusion=InclusionLevel.NOT_IN_NAV))
        for address, text in data_files(self._site):
            files.append(File.generated(config, address, content=text))
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
        env.globals |= {"say": say, "say_count": say_count}
        env.globals["hardpoint"] = self._site.around | {"docs": [(page.title, page.url) for page in self.docs]}
        index = finder(self._site, self.pages.values(), self.docs)
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

    def _fleet(self, config: MkDocsConfig) -> pathlib.Path:
        return pathlib.Path(config.config_file_path).parent / self.config.fleet

    @property
    def _site(self) -> Site:
        if self.site is None:
            raise PluginError("no fleet was read: on_pre_build did not run")
        return self.site

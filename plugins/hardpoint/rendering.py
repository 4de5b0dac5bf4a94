"""From a page's frozen data to HTML text, by our own templates; the loader is handed in, users may override them."""

from __future__ import annotations

from jinja2 import BaseLoader, Environment, StrictUndefined

from hardpoint.pages.site import Page
from hardpoint.words import say, say_count, say_counts

SAYING = {"say": say, "say_count": say_count, "say_counts": say_counts}
"""What every template can call, ours and the theme's."""


def environment(loader: BaseLoader) -> Environment:
    """Escapes everything, forgives nothing: an unknown name in a template is an error, not a blank."""
    made = Environment(
        loader=loader,
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=False,
    )
    made.globals |= SAYING
    return made


def render(environment: Environment, page: Page) -> str:
    """The content of a page, without the frame that the theme puts around it."""
    return environment.get_template(page.template).render(page=page.view)

"""From a page's frozen data to HTML text, by our own templates; the loader is handed in, users may override them."""

from __future__ import annotations

import re

from jinja2 import BaseLoader, Environment, StrictUndefined
from markupsafe import Markup, escape

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
    made.filters["unbroken"] = unbroken
    made.globals |= SAYING
    return made


_REGISTRATION = re.compile(r"\b[A-Z0-9]{1,3}-[A-Z0-9]{2,5}\b")


def unbroken(text: str) -> Markup:
    """A title, escaped, in which no line ends inside a registration: QQ- and BOD on two lines read as two things."""
    return Markup(_REGISTRATION.sub(r'<span class="reg">\g<0></span>', str(escape(text))))


def render(environment: Environment, page: Page) -> str:
    """The content of a page, without the frame that the theme puts around it."""
    return environment.get_template(page.template).render(page=page.view)

"""Fixtures of the tests over a built site."""

from __future__ import annotations

from tests.site.fixtures import demo, hostile, web

__all__ = ["demo", "hostile", "web"]

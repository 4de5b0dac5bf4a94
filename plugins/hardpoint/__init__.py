"""Hardpoint: a rescue knowledge base for an airfield, built out of structured airframe records."""

__version__ = "0.1.0"

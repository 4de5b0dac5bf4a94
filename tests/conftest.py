"""What holds for every test."""

from __future__ import annotations

from hypothesis import settings

# A machine that does other work at the same time is no fault of what is tried; the first call of a library that is
# imported where it is needed takes seconds.
settings.register_profile("patient", deadline=None)
settings.load_profile("patient")

"""Interrupts that a started process really gets."""

from __future__ import annotations

import signal


def heed_interrupts() -> None:
    """For ``preexec_fn``: a run in the background hands down to its children that interrupts are ignored."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)

"""What holds for every test: how the interpreter is set up for them."""

from __future__ import annotations

import gc
import signal
import threading

from hypothesis import settings

# Hundreds of parsed pages are kept for one test after another. To look through them for garbage each time that some
# objects were made costs a quarter of the time it takes to parse one.
gc.set_threshold(100_000, 50, 100)

# A machine that does other work at the same time is no fault of what is tried; the first call of a library that is
# imported where it is needed takes seconds.
settings.register_profile("patient", deadline=None)
settings.load_profile("patient")

# A shell starts what runs in the background with interrupts ignored, and every process below would inherit that; what
# the tests interrupt would then run on for ever.
if threading.current_thread() is threading.main_thread() and signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)

"""``python -m hardpoint``: what ``site_build.py`` starts inside the environment that it made."""

import sys

from hardpoint.cli import main

sys.exit(main())

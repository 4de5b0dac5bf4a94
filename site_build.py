#!/usr/bin/env python3
"""Hardpoint: builds a rescue knowledge base for an airfield out of the records under fleet/.

Usage: python3 site_build.py [COMMAND] [OPTIONS]

  build    make the site (this is done when no command is given)
  check    read the records and say what is wrong with them
  serve    show the site in a browser and follow changes
  schema   write the schema that editors complete records with
  test     run every check of the project itself

The first start makes .venv beside this file from plugins/run.lock, which takes a minute or two and needs the network.
Then "python3 site_build.py COMMAND --help" tells more about a command.
"""

# This file must parse on any Python, however old, so that it can say which one is needed: no f-strings, no annotations.
import os
import sys

if __name__ == "__main__":
    if sys.version_info < (3, 11):
        sys.stderr.write(
            "site_build: this is Python %d.%d, and Python 3.11 or later is needed. "
            "Start it with a later one, for example: python3.11 site_build.py\n" % sys.version_info[:2]
        )
        sys.exit(3)
    root = os.path.dirname(os.path.realpath(__file__))
    sys.path.insert(0, os.path.join(root, "plugins"))
    from hardpoint import environment

    del sys.path[0]  # Left there, it would hide whether this Python has the package installed.
    sys.exit(environment.main(root, sys.argv[1:], __doc__ or ""))

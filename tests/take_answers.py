"""Writes into docs/writing-a-record.md what ``check`` answers to each slip there now. Not a test; start it by hand.

Read the difference before you commit it: the page shows what authors will read.

.venv/bin/python -m tests.take_answers
"""

from __future__ import annotations

import tempfile
from pathlib import Path

from tests import test_docs as docs


def main() -> None:
    """Replace each answer that is no longer true."""
    page = docs.AUTHORS_PAGE.read_text(encoding="utf-8")
    for slip in docs.SLIPS:
        with tempfile.TemporaryDirectory() as folder:
            now = docs.answers(slip, Path(folder))
        shown = f"```yaml\n{slip.written}```\n\n```text\n"
        page = page.replace(shown + "\n".join(slip.answers) + "\n", shown + "\n".join(now) + "\n")
    docs.AUTHORS_PAGE.write_text(page, encoding="utf-8")


if __name__ == "__main__":
    main()

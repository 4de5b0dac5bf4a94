"""The package's own examples hold."""

import doctest

from hardpoint import units


def test_the_examples_in_the_docstring_hold() -> None:
    result = doctest.testmod(units)
    assert result.attempted > 0
    assert result.failed == 0

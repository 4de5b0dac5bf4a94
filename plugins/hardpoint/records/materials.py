"""Materials that a cutting tool meets: one list for skins, canopies and tools, so that they can be matched."""

from __future__ import annotations

from typing import Literal

Material = Literal[
    "aluminium",
    "steel tube",
    "steel sheet",
    "titanium",
    "magnesium",
    "glass fibre",
    "carbon fibre",
    "aramid fibre",
    "plywood",
    "solid wood",
    "fabric",
    "acrylic",
    "polycarbonate",
    "glass",
    "webbing",
    "cord",
    "wire",
    "cable",
    "rod",
    "rubber",
]

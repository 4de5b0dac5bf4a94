"""A photo as it is published: two sizes of one picture, told by the digest of their own bytes."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True)
class Sized:
    """One size of a picture: width and height in pixels, its JPEG bytes and their SHA-256."""

    width: int
    height: int
    digest: str
    data: bytes = field(repr=False)


@dataclass(frozen=True)
class Picture:
    """A picture in the size that pages show and in the one that a tap opens; the same where the source is small."""

    small: Sized
    large: Sized

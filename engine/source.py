"""Where a number or a rule comes from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Source:
    """Document, edition and place. ``typical`` marks what no document at hand confirms."""

    document: str
    edition: str
    place: str
    typical: bool = False

    def __str__(self) -> str:
        parts = [part for part in (self.document, self.edition, self.place) if part]
        return ", ".join(parts) + (" (typical)" if self.typical else "")


def common_practice(what: str) -> Source:
    """Return the source of a rule of thumb that nobody published with authority.

    Examples
    --------
    >>> str(common_practice("tape measure"))
    'common practice, no source, tape measure (typical)'
    """
    return Source("common practice", "no source", what, typical=True)

"""A small reader of markup for tests: strict about balance, and able to take a fragment in."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

VOID = {"input", "br", "hr", "img"}
"""Elements of HTML that never end; shapes of a picture end themselves with a slash."""


@dataclass(eq=False)
class Element:
    """An element with its attributes and what stands inside."""

    name: str
    attributes: dict[str, str | None] = field(default_factory=dict)
    inside: list[Element | str] = field(default_factory=list)

    def every(self) -> Iterator[Element]:
        """Return this element and all below it."""
        yield self
        for one in self.inside:
            if isinstance(one, Element):
                yield from one.every()

    def named(self, *names: str) -> list[Element]:
        """Return all elements of these names."""
        return [one for one in self.every() if one.name in names]

    def at(self, ident: str) -> Element:
        """Return the element with an id."""
        found = [one for one in self.every() if one.attributes.get("id") == ident]
        assert len(found) == 1, f"{len(found)} elements have the id {ident}"
        return found[0]

    @property
    def text(self) -> str:
        """All text inside, one space between parts."""
        parts = (one if isinstance(one, str) else one.text for one in self.inside)
        return " ".join(" ".join(parts).split())

    def plain(self) -> object:
        """Return the tree as tuples, to compare."""
        return (self.name, tuple(sorted(self.attributes.items(), key=str)), self.within())

    def within(self) -> tuple[object, ...]:
        """Return what stands inside, as tuples."""
        return tuple(one if isinstance(one, str) else one.plain() for one in self.inside)


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.root = Element("root")
        self.open = [self.root]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._take(tag, attrs, stays=tag not in VOID)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert any(one.name == "svg" for one in self.open), f"<{tag}/> outside a picture"
        self._take(tag, attrs, stays=False)

    def _take(self, tag: str, attrs: list[tuple[str, str | None]], *, stays: bool) -> None:
        assert len({name for name, _ in attrs}) == len(attrs), f"<{tag}> states one thing twice"
        one = Element(tag, dict(attrs))
        self.open[-1].inside.append(one)
        if stays:
            self.open.append(one)

    def handle_endtag(self, tag: str) -> None:
        assert self.open[-1].name == tag, f"</{tag}> ends <{self.open[-1].name}>"
        self.open.pop()

    def handle_data(self, data: str) -> None:
        self.open[-1].inside.append(data)

    def handle_comment(self, data: str) -> None:
        raise AssertionError(data)

    def handle_decl(self, decl: str) -> None:
        raise AssertionError(decl)


def parsed(html: str) -> Element:
    """Return the tree of a piece of markup; a tag left open or ended twice fails."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    assert len(reader.open) == 1, f"<{reader.open[-1].name}> is left open"
    return reader.root

"""Html that escapes by default, and blocks that know whether they changed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cached_property
from typing import Final, TypeAlias

VOID: Final = {"input", "br", "hr", "img"}
SHAPES: Final = {"line", "rect", "circle", "path"}
"""Elements of a picture; they end themselves."""


class Html(str):
    """Text that is already markup."""

    __slots__ = ()


_FIGURE: Final = re.compile(
    r"(?<=\d) (?=(?:k?W|k?Wh|m?A|Ah|V|m?Ω|%|m|ft|mm2|mm²|°C|°F|h|min|AWG|SAE|days?|cmil)\b|%)"
    r"|(?<=±) (?=\d)"
)
"""The space between a figure and its unit."""

ROLES: Final = {
    "table": "table", "thead": "rowgroup", "tbody": "rowgroup", "tr": "row", "td": "cell",
}  # fmt: skip
"""Said aloud, because a table laid out as cards loses them otherwise."""

Content: TypeAlias = "str | Html | Block | None"
Attribute: TypeAlias = "str | int | float | bool | None"


def escaped(text: str) -> str:
    """Return a text with every mark of markup made harmless.

    Examples
    --------
    >>> escaped('<b title="x">')
    '&lt;b title=&quot;x&quot;&gt;'
    """
    return (
        text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace('"', "&quot;")
        .replace("'", "&#39;")
    )


def joined(*content: Content) -> Html:
    """Return contents one after another; plain text is escaped, None left out."""
    return Html("".join(_markup(one) for one in content if one is not None))


def _markup(content: Content) -> str:
    if isinstance(content, Block):
        return content.outer
    if isinstance(content, Html):
        return content
    return kept_together(escaped(content or ""))


def kept_together(text: str) -> str:
    """Return a text whose figures stay on one line with their units.

    Examples
    --------
    >>> kept_together("± 0.3 m") == "±\u00a00.3\u00a0m"
    True
    """
    return _FIGURE.sub("\u00a0", text) if " " in text else text


def tag(element: str, /, *content: Content, **attributes: Attribute) -> Html:
    """Return an element. ``class_`` stands for class, ``data_do`` for data-do.

    Examples
    --------
    >>> tag("p", "3 < 4", class_="note", hidden=True)
    '<p class="note" hidden>3 &lt; 4</p>'
    """
    opened = f"<{element}{_role(element, attributes)}{_attributes(attributes)}"
    if element in SHAPES:
        return Html(f"{opened}/>")
    if element in VOID:
        return Html(f"{opened}>")
    return Html(f"{opened}>{joined(*content)}</{element}>")


def head(*labels: str, numbers: tuple[str, ...] = ()) -> Html:
    """Return a table's head; those in ``numbers`` stand over figures."""
    cells = (tag("th", one, scope="col", class_="n" if one in numbers else None) for one in labels)
    return tag("thead", tag("tr", *cells))


def _role(element: str, attributes: dict[str, Attribute]) -> str:
    role = ROLES.get(element)
    if element == "th":
        role = "rowheader" if str(attributes.get("scope")).startswith("row") else "columnheader"
    return f' role="{role}"' if role else ""


def _attributes(attributes: dict[str, Attribute]) -> str:
    parts = []
    for name, value in attributes.items():
        if value is None or value is False:
            continue
        shown = name.rstrip("_").replace("_", "-")
        parts.append(f" {shown}" if value is True else f' {shown}="{escaped(str(value))}"')
    return "".join(parts)


@dataclass(frozen=True, eq=False)
class Block:
    """An element with an id whose inside can be sent alone when only that changed."""

    ident: str
    name: str
    body: tuple[Content, ...]
    class_: str = ""

    @cached_property
    def inner(self) -> str:
        """The markup inside."""
        return joined(*self.body)

    @cached_property
    def outer(self) -> str:
        """The whole element."""
        shell = _attributes({"id": self.ident, "class": self.class_ or None})
        return f"<{self.name}{_role(self.name, {})}{shell}>{self.inner}</{self.name}>"


def block(ident: str, *body: Content, name: str = "section", class_: str = "") -> Block:
    """Return a block."""
    return Block(ident, name, body, class_)


def changed(old: Block, new: Block) -> list[tuple[str, str]]:
    """Return what must be sent so that an element showing ``old`` shows ``new``.

    Each pair is an id and its new inner markup; the deepest blocks that cover every change.
    """
    if old.inner == new.inner:
        return []
    if len(old.body) != len(new.body):
        return [(new.ident, new.inner)]
    found: list[tuple[str, str]] = []
    for before, after in zip(old.body, new.body, strict=True):
        if isinstance(before, Block) and isinstance(after, Block):
            same = (before.ident, before.name, before.class_) == (
                after.ident,
                after.name,
                after.class_,
            )
            if not same:
                return [(new.ident, new.inner)]
            found += changed(before, after)
        elif _markup(before) != _markup(after):
            return [(new.ident, new.inner)]
    return found

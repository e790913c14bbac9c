"""A whole plan in the fragment of a link: deflated, URL-safe, with length and checksum in front.

The form is ``p1.LENGTH.CHECKSUM.TEXT``: version, bytes packed, CRC-32 of them, and the bytes in
URL-safe base 64. A damaged link is told from a whole one and never opens anything else.
"""

from __future__ import annotations

import re
import zlib
from base64 import urlsafe_b64decode, urlsafe_b64encode
from typing import TYPE_CHECKING, Final

from engine.plan.document import parsed, written
from engine.problem import Problem

if TYPE_CHECKING:
    from engine.plan.document import Document

MARK: Final = "p1"
LONGEST_LINK: Final = 256_000
"""Characters of a link that are read."""
LARGEST_PLAN: Final = 2_000_000
"""Bytes a link may unfold to."""
LENGTHS: Final = (
    (1500, "short enough for a text message"),
    (3500, "fit for chat or e-mail"),
    (30000, "long: some chats cut it; a file is surer"),
)
_FORM: Final = re.compile(r"p([0-9]{1,3})\.([0-9]{1,7})\.([0-9a-f]{8})\.([A-Za-z0-9_-]*)")
ASK: Final = "Ask for the file."


def packed(document: Document) -> str:
    """Return the fragment that holds a plan."""
    body = zlib.compress(written(document).encode(), 9, wbits=-15)
    text = urlsafe_b64encode(body).decode().rstrip("=")
    return f"{MARK}.{len(body)}.{zlib.crc32(body):08x}.{text}"


def is_link(fragment: str) -> bool:
    """Return whether a fragment claims to hold a plan, be its mark damaged.

    Examples
    --------
    >>> is_link("p1.10.abc"), is_link("papers/send")
    (True, False)
    """
    return re.match(r"[^/?.]{1,12}\.", fragment) is not None


def unpacked(fragment: str) -> Document:
    """Return the plan a fragment holds.

    Raises
    ------
    Problem
        If it is cut, altered, of another version, or no plan. Never part of a plan.
    """
    if len(fragment) > LONGEST_LINK:
        raise Problem("link", "This link is longer than any plan.", ASK)
    found = _FORM.fullmatch(fragment.strip())
    if not found:
        raise Problem("link", "This link is damaged: its front part cannot be read.", ASK)
    version, length, checksum, text = found.groups()
    if f"p{version}" != MARK:
        raise Problem(
            "link", f"This link is of version {version}; this page reads version 1.",
            "Update this page, or ask for the file.",
        )  # fmt: skip
    whole = text[:-1] if len(text) % 4 == 1 else text
    body = urlsafe_b64decode(whole + "=" * (-len(whole) % 4))
    if len(body) != int(length):
        raise Problem(
            "link",
            f"This link is damaged ({int(length)} bytes expected, {len(body)} received).",
            ASK,
        )
    same = urlsafe_b64encode(body).decode().rstrip("=") == text
    if not same or f"{zlib.crc32(body):08x}" != checksum:
        raise Problem("link", "This link is damaged: its checksum does not fit.", ASK)
    return parsed(_inflated(body))


def _inflated(body: bytes) -> str:
    reader = zlib.decompressobj(wbits=-15)
    try:
        text = reader.decompress(body, LARGEST_PLAN + 1)
        if len(text) > LARGEST_PLAN:
            raise Problem("link", "This link unfolds to more than any plan holds.", ASK)
        return text.decode()
    except (zlib.error, UnicodeDecodeError):
        raise Problem("link", "This link is damaged: it does not unfold.", ASK) from None


def length_words(fragment: str) -> str:
    """Return what a link of this length is fit for.

    Examples
    --------
    >>> length_words("x" * 1000)
    'short enough for a text message'
    """
    for most, words in LENGTHS:
        if len(fragment) <= most:
            return words
    return "too long for a link: send the file instead"

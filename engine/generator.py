"""A small generator of chance, the same on every machine."""

from __future__ import annotations

from typing import Final

_MASK: Final = (1 << 64) - 1


def mixed(state: int, text: str) -> int:
    """Return a seed mixed with a text.

    Parameters
    ----------
    state : int
        Any seed. [1]
    text : str
        What the draw is for.

    Returns
    -------
    int
        Below 2⁶⁴. [1]
    """
    for char in text:
        state = ((state ^ ord(char)) * 0x100000001B3) & _MASK
    return state


def stepped(state: int) -> int:
    """Return the next state.

    Parameters
    ----------
    state : int
        Below 2⁶⁴. [1]

    Returns
    -------
    int
        Below 2⁶⁴; its upper bits are the random ones. [1]

    References
    ----------
    .. [1] Knuth, MMIX: x → 6364136223846793005 x + 1442695040888963407 modulo 2⁶⁴.
    """
    return (state * 6364136223846793005 + 1442695040888963407) & _MASK


def share_of(state: int) -> float:
    """Return a share from a state.

    Parameters
    ----------
    state : int
        Below 2⁶⁴. [1]

    Returns
    -------
    float
        Above 0 and below 1. [1]

    Examples
    --------
    >>> share_of(1 << 63)
    0.5
    """
    return ((state >> 11) + 0.5) / (1 << 53)

"""Entries that cannot be read: where they stand, what is so, and what to type instead."""

from __future__ import annotations


class Problem(Exception):
    """An entry that cannot be read. Never a broken rule: that is a Finding.

    Parameters
    ----------
    where : str
        Path of the entry, such as ``circuits.D05.run``; empty when the caller knows it.
    what : str
        What is so, quoting the value.
    mend : str
        What to enter instead, with an example.
    """

    def __init__(self, where: str, what: str, mend: str) -> None:
        super().__init__(where, what, mend)
        self.where = where
        self.what = what
        self.mend = mend

    def __str__(self) -> str:
        place = f"{self.where}: " if self.where else ""
        return f"{place}{self.what} {self.mend}"

    def at(self, where: str) -> Problem:
        """Return the same problem, placed.

        Examples
        --------
        >>> print(Problem("", "“four” is not a number.", "Enter metres.").at("run"))
        run: “four” is not a number. Enter metres.
        """
        return Problem(where, self.what, self.mend)

    def as_row(self) -> dict[str, str]:
        """Return the problem as one row of an answer."""
        return {"where": self.where, "what": self.what, "mend": self.mend}


def quoted(text: str, most: int = 40) -> str:
    """Return the text in quotation marks, shortened, so that no entry can flood a message.

    Examples
    --------
    >>> quoted("3 kg")
    '“3 kg”'
    >>> len(quoted("x" * 1000))
    42
    """
    plain = " ".join("".join(c for c in text if c.isprintable() or c.isspace()).split())
    return f"“{plain if len(plain) <= most else plain[: most - 1] + '…'}”"

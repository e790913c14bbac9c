"""How fast a fuse opens, and what it lets through meanwhile."""

from __future__ import annotations

from engine.conductors.withstand import ADIABATIC, WITHSTANDS, heat
from engine.finding import Judgement, Verdict, meets
from engine.problem import Problem
from engine.protection.tables import BANDS
from engine.units import Amp, said


def band(series: str, times: float) -> tuple[float, float | None] | None:
    """Return how soon and how late a fuse opens at a multiple of its rating, typical.

    Parameters
    ----------
    series : str
        A name in ``SERIES``.
    times : float
        Current over rating. [1]

    Returns
    -------
    tuple of float, or None
        Least and most seconds; the most is None where it may never open. None where no times of
        the series are known. [s]

    Raises
    ------
    Problem
        If the multiple is not above nothing.

    Notes
    -----
    A time never grows with the current, so the rows on either side bound it: the most of the row
    at or below, the least of the row at or above, and 0 beyond the last row.

    Examples
    --------
    >>> band("blade", 2.0), band("blade", 3.0), band("blade", 10.0)
    ((0.15, 5.0), (0.04, 5.0), (0.0, 0.1))
    >>> band("blade", 1.0)
    (360000.0, None)
    """
    if times <= 0:
        raise Problem(
            "", f"{said(times)} times the rating is no overload.", "Enter a multiple above 0."
        )
    if series not in BANDS:
        return None
    rows = BANDS[series].rows
    least = [cell[0] for row, cell in rows.items() if meets(times, row)]
    most = [cell[1] for row, cell in rows.items() if meets(row, times)]
    return least[0] if least else 0.0, most[-1] if most else None


def let_through(series: str, rating: Amp, fault: Amp) -> float | None:
    """Return an upper bound of the heat a fuse lets through, as I²t, typical.

    Parameters
    ----------
    series : str
        A name in ``SERIES``.
    rating : Amp
        What the fuse is marked. [A]
    fault : Amp
        Prospective current. [A]

    Returns
    -------
    float or None
        None where it cannot be said: no times known, or the fuse may take over 5 s. [A²s]

    Raises
    ------
    Problem
        If rating or fault is not above nothing.

    Notes
    -----
    The heat that melts a fuse falls as the current grows, since less of it can leave: each row at
    or below the fault, also beyond the last, bounds it by (multiple × rating)² × its most time.
    Only rows of up to 5 s count, as in slower ones the conductor too loses heat.

    Examples
    --------
    >>> let_through("blade", Amp(10.0), Amp(1000.0))
    360.0
    >>> let_through("class T", Amp(200.0), Amp(9000.0)) is None
    True
    """
    if rating <= 0 or fault <= 0:
        raise Problem(
            "",
            f"A fault of {said(fault)} A on a rating of {said(rating)} A is none.",
            "Enter both above 0 A.",
        )
    if series not in BANDS:
        return None
    bounds = [
        (times * rating) ** 2 * most
        for times, (_, most) in BANDS[series].rows.items()
        if most is not None and most <= ADIABATIC and meets(times, fault / rating)
    ]
    return min(bounds, default=None)


def withstands(limit: float, through: float | None) -> Judgement:
    """Return whether a conductor bears what its fuse lets through.

    Parameters
    ----------
    limit : float
        ``(k S)²`` of the conductor. [A²s]
    through : float or None
        Upper bound of what the fuse lets through. [A²s]

    Notes
    -----
    More than the conductor bears is no certain failure, as it is an upper bound: “should”.

    Examples
    --------
    >>> [withstands(1e6, through).verdict.value for through in (8e5, 2e6, None)]
    ['within limit', 'should', 'cannot say']
    """
    bears = f"the conductor bears {heat(limit)}"
    if through is None:
        words = f"What the protection lets through is not known; {bears}."
        mend = "Compare with the let-through figure on the protection's papers."
        return Judgement(Verdict.CANNOT_SAY, words, mend, WITHSTANDS)
    words = f"The fuse may let through {heat(through)} at most; {bears}."
    if meets(through, limit):
        return Judgement(Verdict.FINE, words, "", WITHSTANDS)
    mend = "Use a smaller rating, a faster fuse or a thicker conductor."
    return Judgement(Verdict.SHOULD, words, mend, WITHSTANDS)

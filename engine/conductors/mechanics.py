"""Mechanics of conductors: least sizes, support, terminals, and sizes of the other catalogue."""

from __future__ import annotations

from typing import Final

from engine.conductors.sizes import AWG, METRIC, STOCKED, Size, gauge_number
from engine.conductors.tables import PULL
from engine.finding import Judgement, Rule, Verdict, meets
from engine.source import Source
from engine.units import Celsius, Metre, Ohm, fixed, said

INCH: Final = 0.0254
NEWTON_PER_POUND: Final = 4.4482216152605
"""One pound-force, N (exact: 0.45359237 kg × 9.80665 m/s²)."""

SUPPORT_LAW: Final = Metre(24 * INCH)
SUPPORT_ISO: Final = Metre(0.450)
SUPPORT_ISO_BATTERY: Final = Metre(0.300)
"""Of battery conductors and sheathed cables, the first within 1 m of the terminal, m."""
SUPPORT_USUAL: Final = Metre(18 * INCH)
MOST_ON_STUD: Final = 4
FRICTION_LIMIT: Final = Ohm(0.05 / 20)
"""50 mV at 20 A: the most a friction connector may resist, Ω."""
ENGINE_LEAST: Final = Celsius(75.0)
"""Least class of insulation in an engine space, °C."""
SHEATH_END: Final = Metre(30 * INCH)
SHEATH_END_ISO: Final = Metre(0.800)

SUPPORTED: Final = Rule(
    "support",
    "a conductor is supported at least every 24 in, by metal",
    Source("46 CFR", "in force", "183.340(b)(4)"),
)
SUPPORTED_ISO: Final = Rule(
    "support, international",
    "a conductor is supported every 450 mm; battery conductors and sheathed cables every 300 mm, "
    "the first within 1 m of the terminal",
    Source("ISO 10133", "2012", "7.3 and 7.4"),
)
SUPPORTED_USUAL: Final = Rule(
    "support, usual",
    "a conductor is supported every 18 in",
    Source("ABYC E-11", "as commonly quoted", "support of conductors", typical=True),
)
LEAST_SIZE: Final = Rule(
    "least size",
    "a conductor on its own is 16 AWG or more; in a sheath 18 AWG, with up to 30 in outside it",
    Source("33 CFR", "in force", "183.425(d) to (f)"),
)
LEAST_SIZE_ISO: Final = Rule(
    "least size, metric",
    "a conductor on its own is 1 mm² or more; in a sheath 0.75 mm², with up to 800 mm outside it",
    Source("ISO 10133", "2012", "7.7"),
)
STUD_STACK: Final = Rule(
    "stud",
    "one stud holds at most four conductors",
    Source("ABYC E-11", "as commonly quoted", "terminal studs", typical=True),
)
FRICTION: Final = Rule(
    "friction connector",
    "a friction connector loses at most 50 mV at 20 A, that is 2.5 mΩ",
    Source("ABYC E-11", "as commonly quoted", "friction connectors", typical=True),
)
ENGINE_INSULATION: Final = Rule(
    "insulation in an engine space",
    "insulation is for 75 °C or more and resists oil",
    Source("ABYC E-11", "as reprinted", "11.16.1"),
)
PARALLEL: Final = Rule(
    "parallel conductors",
    "only conductors of 1/0 AWG or more run in parallel, of equal size and length",
    Source("NFPA 70 (NEC)", "as commonly read", "310.10", typical=True),
)


def smallest_judgement(size: Size, *, sheathed: bool) -> Judgement:
    """Return whether a conductor is thick enough to bear handling.

    Parameters
    ----------
    size : Size
        A metric size is judged by ISO, a gauge by US law.
    sheathed : bool
        Whether it shares a sheath with others.

    References
    ----------
    .. [1] 33 CFR 183.425(d) to (f).
    .. [2] ISO 10133:2012, 7.7.

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> smallest_judgement(read_size("18 AWG"), sheathed=False).words
    '18 AWG on its own; the least is 16 AWG.'
    """
    if size.catalogue == METRIC:
        least, end, rule = "0.75 mm2" if sheathed else "1 mm2", SHEATH_END_ISO, LEAST_SIZE_ISO
        enough = meets(0.75 if sheathed else 1.0, size.area)
    else:
        gauge = 18 if sheathed else 16
        least, end, rule = f"{gauge} {size.catalogue.upper()}", SHEATH_END, LEAST_SIZE
        enough = gauge_number(size.name) <= gauge
    words = f"{size} {'in a sheath' if sheathed else 'on its own'}; the least is {least}"
    if sheathed:
        words += f", with up to {fixed(end, 2)} m outside the sheath"
    if enough:
        return Judgement(Verdict.FINE, f"{words}.", "", rule)
    return Judgement(Verdict.SHOULD, f"{words}.", f"Use {least} or more.", rule)


def insulation_judgement(insulation: int, *, engine_space: bool) -> Judgement:
    """Return whether a class of insulation belongs where the conductor lies.

    Parameters
    ----------
    insulation : int
        Temperature class. [°C]
    engine_space : bool
        Whether any part of it lies in the engine space.

    References
    ----------
    .. [1] ABYC E-11, 11.16.1, as reprinted.

    Examples
    --------
    >>> insulation_judgement(60, engine_space=True).verdict.value
    'should'
    """
    words = f"Insulation of {insulation} °C"
    if not engine_space or meets(ENGINE_LEAST, insulation):
        return Judgement(Verdict.FINE, f"{words} belongs here.", "", ENGINE_INSULATION)
    mend = f"Use oil-resistant insulation of {said(ENGINE_LEAST)} °C or more, such as 105 °C."
    words = f"{words} does not belong in an engine space."
    return Judgement(Verdict.SHOULD, words, mend, ENGINE_INSULATION)


def pull_newton(gauge: str) -> float:
    """Return the pull a crimped terminal must hold for one minute, typical.

    Parameters
    ----------
    gauge : str
        Such as ``10`` or ``2/0``.

    Returns
    -------
    float
        The tabled pounds-force in newtons. [N]

    Raises
    ------
    Problem
        If the table has no such gauge.

    Examples
    --------
    >>> pull_newton("10")
    177.9
    """
    return PULL[gauge] * NEWTON_PER_POUND


def parallel_allowed(size: Size) -> bool:
    """Return whether a size may run in parallel with its equals, of the same length.

    Parameters
    ----------
    size : Size
        A metric size counts as the next gauge with no more copper.

    References
    ----------
    .. [1] NFPA 70 (NEC) 310.10, as commonly read (typical).

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> [parallel_allowed(read_size(text)) for text in ("1 AWG", "1/0 AWG", "50 mm2", "70 mm2")]
    [False, True, False, True]
    """
    return bool(size.counts_as) and gauge_number(size.counts_as) <= 0


def nearest(size: Size) -> Size:
    """Return the size of the other catalogue whose copper is nearest, by ratio.

    Parameters
    ----------
    size : Size
        AWG and SAE sizes go to metric, metric sizes to AWG.

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> str(nearest(read_size("1/0 AWG"))), str(nearest(read_size("6 mm2")))
    ('50 mm2', '10 AWG')
    """
    other = STOCKED[AWG if size.catalogue == METRIC else METRIC]
    return min(other, key=lambda one: max(one.area / size.area, size.area / one.area))


def swap_note(size: Size) -> str:
    """Return how the nearest size of the other catalogue differs, in words.

    Parameters
    ----------
    size : Size
        Of any catalogue.

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> swap_note(read_size("1/0 AWG"))
    '1/0 AWG (53.5 mm²): the nearest, 50 mm2, is smaller and has 6 % less copper.'
    """
    other = nearest(size)
    area = f" ({said(size.area)} mm²)" if size.catalogue != METRIC else ""
    shown = f" ({said(other.area)} mm²)" if other.catalogue != METRIC else ""
    share = abs(other.area / size.area - 1) * 100
    how, word = ("smaller", "less") if other.area < size.area else ("larger", "more")
    return (
        f"{size}{area}: the nearest, {other}{shown}, is {how} and has {fixed(share, 0)} % {word} "
        "copper."
    )

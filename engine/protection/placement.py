"""How far from its source of power a protection may stand, and at which ends."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Judgement, Rule, Verdict, meets
from engine.source import Source
from engine.units import Amp, Metre, fixed, said

if TYPE_CHECKING:
    from engine.estimate import Estimate

INCH: Final = 0.0254
NEAR: Final = Metre(7 * INCH)
SHEATHED: Final = Metre(40 * INCH)
AT_BATTERY: Final = Metre(72 * INCH)
FROM_CHARGER: Final = Metre(1.8)
OUTPUT: Final = 1.2
"""Most a protection at a source that does not limit itself may be, times its output."""

PLACED: Final = Rule(
    "placement",
    "protection stands within 7 in of the source of power, measured along the conductor",
    Source("33 CFR", "in force", "183.455(b)(1)"),
)
PLACED_SHEATHED: Final = Rule(
    "placement, sheathed",
    "protection stands within 40 in where the conductor is sheathed or enclosed the whole way",
    Source("33 CFR", "in force", "183.455(b)(2)"),
)
PLACED_AT_BATTERY: Final = Rule(
    "placement at the battery",
    "protection of a battery's output conductor, not the cranking motor's, stands within 72 in",
    Source("33 CFR", "as commonly quoted", "183.460(a)", typical=True),
)
PLACED_FROM_CHARGER: Final = Rule(
    "placement at a charger",
    "protection of a charger's or alternator's conductor stands within 1.8 m of it",
    Source("ISO 13297", "2020", "12.3"),
)
STARTER: Final = Rule(
    "cranking motor",
    "the cranking motor's conductor needs no protection by law; heat and drop are still asked",
    Source("33 CFR", "in force", "183.455 and 183.460, the cranking-motor exceptions"),
)
TWO_SOURCES: Final = Rule(
    "two sources",
    "a conductor with a source of power at each end is protected at each end, save at one that "
    "limits its own current where the conductor carries its full output",
    Source("33 CFR", "as commonly quoted", "183.455(b), 183.460(b)", typical=True),
)


def placed(
    distance: Estimate, *, sheathed: bool, at_battery: bool, cranking: bool = False
) -> Judgement:
    """Return whether a protection stands near enough to its source of power.

    Parameters
    ----------
    distance : Estimate
        Along the conductor, in metres.
    sheathed : bool
        Whether the conductor is sheathed or enclosed the whole of that way.
    at_battery : bool
        Whether the source is a battery post.
    cranking : bool
        Whether it is the cranking motor's conductor.

    References
    ----------
    .. [1] 33 CFR 183.455(b); 183.460(a) (typical).

    Examples
    --------
    >>> from engine.estimate import Estimate
    >>> placed(Estimate.exact(0.5), sheathed=False, at_battery=False).words
    'Protection stands 0.50 m (20 in) along the conductor, beyond 0.18 m (7 in).'
    """
    if cranking:
        words = "The cranking motor's conductor needs no protection by law; heat and drop do count."
        return Judgement(Verdict.FINE, words, "", STARTER)
    if at_battery:
        return _within(distance, AT_BATTERY, PLACED_AT_BATTERY)
    if sheathed:
        return _within(distance, SHEATHED, PLACED_SHEATHED)
    return _within(distance, NEAR, PLACED)


def placed_from_charger(distance: Estimate) -> Judgement:
    """Return whether a protection stands near enough to a charger or alternator, by ISO.

    Parameters
    ----------
    distance : Estimate
        Along the conductor, in metres.

    References
    ----------
    .. [1] ISO 13297:2020, 12.3.
    """
    return _within(distance, FROM_CHARGER, PLACED_FROM_CHARGER)


def _within(distance: Estimate, limit: Metre, rule: Rule) -> Judgement:
    stands = f"Protection stands {_length(distance.likely)} along the conductor"
    if distance.high <= 0:
        return Judgement(Verdict.FINE, "Protection stands at the source of power.", "", rule)
    if meets(distance.high, limit):
        return Judgement(Verdict.FINE, f"{stands}, within {_length(limit)}.", "", rule)
    if meets(distance.low, limit):
        span = f"{fixed(distance.low, 2)} to {fixed(distance.high, 2)} m"
        words = f"{stands}, perhaps {span}; the limit is {_length(limit)}."
        return Judgement(Verdict.CANNOT_SAY, words, "Measure it along the conductor.", rule)
    mend = f"Move it to within {_length(limit)} of the source, measured along the conductor."
    return Judgement(Verdict.STOP, f"{stands}, beyond {_length(limit)}.", mend, rule)


def _length(metres: float) -> str:
    return f"{fixed(metres, 2)} m ({fixed(metres / INCH, 0)} in)"


@dataclass(frozen=True, slots=True)
class End:
    """A source of power at one end of a conductor; ``most`` is its greatest output, A."""

    name: str
    protected: bool
    limits_itself: bool = False
    most: Amp | None = None


def output_limit(most: Amp) -> Amp:
    """Return the most a protection at a source that does not limit itself may be marked.

    Parameters
    ----------
    most : Amp
        Rated output of the source. [A]

    Returns
    -------
    Amp
        120 % of it. [A]

    References
    ----------
    .. [1] 33 CFR 183.460(b), as commonly quoted (typical).

    Examples
    --------
    >>> output_limit(Amp(50.0))
    60.0
    """
    return Amp(OUTPUT * most)


def two_sources(one: End, other: End, carries: Amp) -> Judgement:
    """Return whether a conductor fed from both ends is protected against both.

    Parameters
    ----------
    one, other : End
        Battery, charger, alternator or solar controller at each end.
    carries : Amp
        What the conductor carries after every factor. [A]

    Examples
    --------
    >>> charger = End("charger", protected=False, limits_itself=True, most=Amp(40.0))
    >>> two_sources(End("bank", protected=True), charger, Amp(60.0)).verdict.value
    'within limit'
    """
    found = [_end(end, carries) for end in (one, other)]
    return next(
        (
            judged
            for verdict in (Verdict.STOP, Verdict.CANNOT_SAY)
            for judged in found
            if judged.verdict == verdict
        ),
        Judgement(Verdict.FINE, " ".join(judged.words for judged in found), "", TWO_SOURCES),
    )


def _end(end: End, carries: Amp) -> Judgement:
    if end.protected:
        return Judgement(Verdict.FINE, f"Protected at the {end.name}.", "", TWO_SOURCES)
    mend = f"Fit protection at the {end.name}, near its terminal."
    if not end.limits_itself:
        words = f"The {end.name} feeds this conductor too, and nothing protects it at that end."
        return Judgement(Verdict.STOP, words, mend, TWO_SOURCES)
    if end.most is None:
        words = f"The {end.name} limits itself, but its greatest output is not known."
        return Judgement(Verdict.CANNOT_SAY, words, "Read it off its nameplate.", TWO_SOURCES)
    output = f"The {end.name} limits itself to {said(end.most)} A"
    if meets(end.most, carries):
        words = f"{output}, which the conductor carries."
        return Judgement(Verdict.FINE, words, "", TWO_SOURCES)
    words = f"{output}, more than the {said(carries)} A the conductor carries."
    return Judgement(Verdict.STOP, words, mend, TWO_SOURCES)

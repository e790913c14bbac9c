"""Other volts and hertz: which appliances may be used in another country."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Rule, Verdict, meets
from engine.problem import Problem
from engine.shore.appliances import Nature
from engine.source import Source
from engine.units import Share, Volt, said, words

if TYPE_CHECKING:
    from engine.shore.appliances import Appliance
    from engine.shore.services import Service

TOLERANCE: Final = Share(0.1)
"""Share that the volts may be off where a plate gives one figure."""
PLATE: Final = Rule(
    "plate",
    "an appliance is used only within the volts and hertz on its plate",
    Source("plate of the appliance", "every country", "input volts and hertz"),
)
FLUX: Final = Rule(
    "volts per hertz",
    "iron in a motor or transformer takes no more volts per hertz than its plate",
    Source("Faraday's law", "induction", "flux goes with volts over hertz"),
)
PASSES_ON: Final = Rule(
    "passes on",
    "an inverter-charger passes shore power as it comes to the circuits behind it",
    Source("inverter-charger makers' sheets", "common", "pass-through", typical=True),
)
FIXED: Final = Rule(
    "fixed installation",
    "what is wired in for one service is never fed with another",
    Source("plate of the appliance", "every country", "input volts and hertz"),
)


@dataclass(frozen=True, slots=True)
class Plate:
    """Least and most volts, least and most hertz that a plate gives."""

    volts: tuple[Volt, Volt]
    hertz: tuple[float, float]

    def __post_init__(self) -> None:
        if not 0 < self.volts[0] <= self.volts[1] or not 0 < self.hertz[0] <= self.hertz[1]:
            raise Problem(
                "plate",
                f"{said(self.volts[0])} to {said(self.volts[1])} V, {said(self.hertz[0])} to "
                f"{said(self.hertz[1])} Hz do not run from low to high.",
                "Enter such as 100 to 240 V, 50 to 60 Hz.",
            )


def plate_of(home: Service) -> Plate:
    """Return the plate of an appliance made for one service only.

    Parameters
    ----------
    home : Service
        What it was bought for.

    Examples
    --------
    >>> from engine.shore.services import service
    >>> plate_of(service("30 A 120 V"))
    Plate(volts=(108.0, 132.0), hertz=(60, 60))
    """
    low, high = home.volts * (1 - TOLERANCE), home.volts * (1 + TOLERANCE)
    return Plate((Volt(low), Volt(high)), (home.hertz, home.hertz))


@dataclass(frozen=True, slots=True)
class Abroad:
    """Whether an appliance may be used, why, and the rule.

    ``own`` is false where its own plate would do and what it passes power on to would not.
    """

    verdict: Verdict
    words: str
    rule: Rule
    own: bool = True


IRON: Final = frozenset({Nature.MOTOR, Nature.TRANSFORMER})
"""Classes with iron that minds the hertz."""


def abroad(appliance: Appliance, plate: Plate | None, there: Service) -> Abroad:
    """Return whether an appliance may be used on another country's service.

    Parameters
    ----------
    appliance : Appliance
        Its class decides what is minded.
    plate : Plate or None
        What its plate gives; None where it was not read.
    there : Service
        What the dock offers there.

    Examples
    --------
    >>> from engine.shore.appliances import read_appliances
    >>> from engine.shore.services import service
    >>> (kettle,) = read_appliances("kettle 1000 W")
    >>> abroad(kettle, plate_of(service("30 A 120 V")), service("16 A 230 V")).words
    'The kettle may not be used at 230 V: it would take 3.67 times its watts.'
    """
    name = appliance.name
    if plate is None:
        return Abroad(Verdict.NOT_KNOWN, f"The {name}'s plate was not read.", PLATE)
    low, high = plate.volts
    at = f"at {said(there.volts)} V"
    if not meets(there.volts, high):
        return Abroad(
            Verdict.STOP,
            f"The {name} may not be used {at}: {_over(appliance, plate, there)}",
            PLATE,
        )
    if not meets(low, there.volts):
        return Abroad(Verdict.STOP, f"The {name} may not be used {at}: {_under(appliance)}", PLATE)
    slow, fast = plate.hertz
    if slow <= there.hertz <= fast:
        return Abroad(Verdict.FINE, f"The {name} may be used {at} through a suitable inlet.", PLATE)
    if appliance.nature not in IRON:
        return Abroad(
            Verdict.FINE,
            f"The {name} may be used {at}; {said(there.hertz)} Hz do not matter to it.",
            PLATE,
        )
    return _hertz(appliance, plate, there)


def _over(appliance: Appliance, plate: Plate, there: Service) -> str:
    rated = sum(plate.volts) / 2
    if appliance.nature is Nature.RESISTIVE:
        return f"it would take {said((there.volts / rated) ** 2)} times its watts."
    if appliance.nature in IRON:
        return "its iron saturates and it burns."
    return "its input fails at once."


def _under(appliance: Appliance) -> str:
    if appliance.nature is Nature.RESISTIVE:
        return "it would hardly warm."
    if appliance.nature is Nature.MOTOR:
        return "it may stall and burn."
    return "it does not start, or draws too much."


def _hertz(appliance: Appliance, plate: Plate, there: Service) -> Abroad:
    """Return the verdict on iron at hertz that its plate does not give."""
    nearest = min(plate.hertz, key=lambda one: abs(one - there.hertz))
    hertz = f"{said(there.hertz)} Hz"
    if there.hertz < nearest:
        return Abroad(
            Verdict.STOP,
            f"The {appliance.name} may not be used at {hertz}: its iron takes "
            f"{said(nearest / there.hertz)} times the flux it was made for.",
            FLUX,
        )
    return Abroad(
        Verdict.SHOULD,
        f"The {appliance.name} runs at {hertz}, but "
        f"{said(there.hertz / nearest)} times as fast where it is a motor.",
        FLUX,
    )


def differs(one: Service, other: Service) -> bool:
    """Return whether two services differ in volts or hertz.

    Parameters
    ----------
    one, other : Service
        To compare.
    """
    return (one.volts, one.hertz) != (other.volts, other.hertz)


def passes_abroad(
    name: str, behind: tuple[str, ...], there: Service, home: Service | None, *, sure: bool
) -> Abroad:
    """Return what abroad means for a charger whose own plate would do, if it passes power on.

    Parameters
    ----------
    name : str
        Of the charger.
    behind : tuple of str
        Circuits fed through an inverter-charger, shape ``(n,)``.
    there : Service
        What the dock offers there.
    home : Service or None
        What the circuits are made for, None where not known.
    sure : bool
        Whether this is the unit, and it passes power on.
    """
    made_for = f" made for {said(home.volts)} V" if home else ""
    on_to = f" {words(behind)}" if behind else " the circuits behind it"
    if sure:
        text = (
            f"The {name}'s own plate allows {said(there.volts)} V, but as wired the "
            f"inverter-charger passes shore power on to{on_to}{made_for}. Do not feed it before a "
            "licensed person has parted them."
        )
        return Abroad(Verdict.STOP, text, PASSES_ON, own=False)
    text = (
        f"The {name}'s own plate allows {said(there.volts)} V. Not known: whether it is an "
        f"inverter-charger that passes shore power on to{on_to}{made_for}."
    )
    return Abroad(Verdict.NOT_KNOWN, text, PASSES_ON, own=False)


def fixed_abroad(home: Service, there: Service) -> Abroad:
    """Return what another service means for all that is wired in.

    Parameters
    ----------
    home : Service
        What inlet, main, breakers and outlets are made for.
    there : Service
        What the dock offers there; of other volts or hertz.

    Examples
    --------
    >>> from engine.shore.services import service
    >>> fixed_abroad(service("30 A 120 V"), service("16 A 230 V")).verdict.value
    'stop'
    """
    return Abroad(
        Verdict.STOP,
        f"The boat's fixed {said(home.volts)} V {said(home.hertz)} Hz installation, from inlet to "
        f"outlets, is not fed with {said(there.volts)} V {said(there.hertz)} Hz.",
        FIXED,
    )

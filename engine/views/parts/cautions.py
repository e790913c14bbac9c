"""Cautions, shown at the step before the step: a short line always, more on a tap."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.check.shore_gravest import LOOKS
from engine.shore.earthing import CAUTION, SWIM_CAUTION
from engine.shore.generator import EXHAUST_CAUTION
from engine.views.parts.html import Html, joined, tag

if TYPE_CHECKING:
    from collections.abc import Iterable

    from engine.finding import Finding


@dataclass(frozen=True, slots=True)
class Caution:
    """What can happen, what to do, and who may do it.

    Where ``licensed`` holds what only such a person does, ``more`` holds what an owner does.
    """

    signal: str
    short: str
    more: tuple[str, ...]
    who: str = "Owner"
    licensed: tuple[str, ...] = ()


PLANNING: Final = Caution(
    "Care",
    "A planning aid. It cannot see your boat, and it can be wrong. AC work: licensed people only.",
    (
        "It does sums from what you type and reminds you of good practice.",
        "The law and the codes where the boat is built, kept, sold or chartered come first. So do "
        "the instructions of whoever made the gear, your insurer's terms, and a qualified person "
        "standing on your boat. If any of them disagrees with this page, follow them.",
        "In many places work on shore power or other high-voltage circuits must be done, tested "
        "or signed by a licensed person. Rules for boats differ from rules for houses.",
        "Numbers marked estimate or default are guesses. A plan with guesses is a plan to go and "
        "measure.",
        "If you are unsure, tired, wet or alone, stop. The boat can wait.",
    ),
)
SHORE: Final = Caution(
    "Danger",
    CAUTION.removeprefix("Danger. "),
    (
        "To connect: dock breaker and boat main off first; then boat end, then dock end, then dock "
        "breaker, then boat main. To disconnect: the reverse.",
        "A leakage trip is telling you something. Only with nobody in the water, and nothing wet, "
        "hot or damaged, try once with everything off. If it trips again, unplug and call someone. "
        "Do not try another dock to see.",
        "A warm, browned, loose or wet plug or inlet: dock breaker off, unplug at the dock, do not "
        "use it again.",
        "Reverse-polarity light on: unplug. Switch nothing on to try it.",
        "Household leads, adaptors in a chain and domestic sockets do not belong on a dock.",
        "Press the test button of each leakage device as often as its instructions say. If "
        "pressing does nothing, do not use that supply.",
        "Never cut or remove the safety ground, and never cure a trip by disconnecting it. It "
        "carries a fault away from people, on board and in the water.",
    ),
    "Licensed or qualified person only",
    (
        "Opening an AC panel or cover, and all that is behind it. They make it dead and prove it "
        "dead first: boat AC main off, dock breaker off, cord unplugged at the dock, inverter off "
        "and locked off, generator off, and the wait its maker asks for stored charge. The "
        "inverter can make the panel live with the cord in your hand.",
        "Every measurement on AC. Neutral and safety ground join only at the source of power in "
        "use; a join aboard that stays is a fault for them to find and mend.",
        "Saying that a supply which tripped, ran hot or got wet may be used again.",
    ),
)
SWIM: Final = Caution(
    "Danger",
    SWIM_CAUTION.removeprefix("Danger. "),
    (
        "A fault too small to feel on deck can paralyse a swimmer. You cannot see it and it can "
        "start at any moment.",
        "No swimming, diving on the propeller or hull cleaning in a marina or beside a plugged-in "
        "boat. Unplugging your own boat is not enough: the fault may be the neighbour's.",
        "In the water and tingling: shout, stay upright, tuck your legs up, go back the way you "
        "came, away from dock and boats. Do not grab a metal ladder.",
        "Someone else in trouble: do not go in. Cut the dock power. Shout for help and call the "
        "emergency number or coastguard. Reach with a pole, throw a float. Start CPR once they "
        "are out and the power is off.",
    ),
    "Everyone aboard",
)
SHORT_CIRCUIT: Final = Caution(
    "Warning",
    "A battery can push thousands of amperes through a spanner. Take off rings, watch and chains.",
    (
        "Switch off loads and charging first, engine stopped. Cover the terminal you are not "
        "working on. Insulate tools. Wear eye protection.",
        "On a negative-ground boat, take the negative off first and put it back last.",
        "Photograph and label every lead before removing any. Two people check before the last "
        "one goes on.",
        "Every lead from the bank needs protection close to the bank, able to break the bank's "
        "full short-circuit current.",
        "Never use a meter's amps socket across a battery. For more than a few amperes use a "
        "clamp meter.",
    ),
    "Owner, with a second person aboard",
)
LEAD: Final = Caution(
    "Warning",
    "Charging lead-acid batteries makes gas that explodes. No sparks. Let it out at the top.",
    (
        "Turn the charger off before touching any lead. No smoking, grinding or loose tools.",
        "Hot case, swelling, hissing, smell of rotten eggs: charger off from a distance, open "
        "everything, people out, let it cool.",
        "Acid on skin: wash with lots of water. In eyes: rinse at least 15 minutes and get "
        "medical help.",
        "Battery acid and sea water make chlorine. If batteries flood, get out and ventilate.",
    ),
)
EQUALISING: Final = Caution(
    "Warning",
    "Equalise only a flooded bank, only as its maker says, and switch off every load first.",
    (
        "Its volts harm lamps, electronics and fridges: take the loads off the bank, and leave "
        "nothing else joined to it.",
        "It gases hard: open the space, no sparks, caps as the maker says, plates covered; look at "
        "the cells every hour, and stop when one gets hot.",
        "Never equalise AGM, gel or lithium, and never a bank that is cold, frozen or damaged.",
    ),
)
LITHIUM: Final = Caution(
    "Warning",
    "Lithium is a system, not a swap. It can switch itself off without asking.",
    (
        "Follow the maker's installation and charging instructions exactly, and ask your insurer "
        "in writing before you buy.",
        "Never charge below the maker's minimum temperature, often 0 °C (32 °F). Fit a sensor "
        "that stops it.",
        "Charging sources must stop before the protection opens. If it opens while the alternator "
        "runs, the alternator and electronics can be destroyed.",
        "Keep anchor light, VHF, bilge pump and engine start able to run if the lithium bank shuts "
        "down.",
        "Owner-built packs and mixed cells are outside what this page can check.",
    ),
    "Owner, with a second person aboard",
)
TURNING: Final = Caution(
    "Warning",
    "Never turn the battery switch through “off” or unplug the bank while the engine turns.",
    (
        "An alternator without its bank makes a surge that destroys it and the electronics. A "
        "lithium bank's protection must not open before charging has stopped.",
        "Keep sleeves, hair and leads from belts. Exhaust gas kills: air, and a working alarm.",
        "A hungry bank can overheat an alternator: limit its current and watch its temperature.",
    ),
)
PANELS: Final = Caution(
    "Warning",
    "Panels are live whenever there is light, and a DC arc does not go out by itself.",
    (
        "Cover them before you touch a lead. Never pull a plug apart while current flows.",
        "Which side of the controller comes off first stands in its instructions.",
        "Panels in series can be well above 60 V: a qualified person.",
    ),
)
BLADES: Final = Caution(
    "Warning",
    "Turning blades cut to the bone. Stop the turbine before anyone comes within reach.",
    (
        "Stop it as its instructions say and tie the blades before you work on it; the wind gets "
        "up again. Keep people, lines and flags clear of the disc.",
        "Do not unplug it from the bank while it turns.",
    ),
)
TOWED: Final = Caution(
    "Warning",
    "The line of a towed rotor takes fingers. Slow down before you bring it in.",
    ("Tell who is on deck before you stream it; hands and feet clear of bights.",),
)
EXHAUST: Final = Caution(
    "Danger",
    EXHAUST_CAUTION.removeprefix("Danger. "),
    (
        "Never run a portable generator below, in the cockpit under cover, or upwind of an open "
        "hatch; a neighbour's exhaust counts too.",
        "Headache, dizziness: everybody out into the air, engine off, call for help.",
        "Petrol aboard: blower and sniff first; fill only with it stopped and cold.",
        "What it feeds is AC: licensed or qualified person only.",
    ),
    "Everyone aboard",
)
MEASURING: Final = Caution(
    "Warning",
    "Measure DC only, with dry hands, a meter rated for the job and a second person aboard.",
    (
        "Leads whole, probes insulated to the tip, one hand behind your back is a good habit.",
        "Aloft, in the bilge or the engine space: tell someone, tie on, breaker off and tagged.",
        "Petrol or gas aboard: blower, sniff, then switch on. No test sparks.",
    ),
    "Owner, with a second person aboard",
)

CLASSES: Final = {"Danger": "danger", "Warning": "warning", "Care": "care"}


def caution(one: Caution, ident: str, *, brief: bool = False) -> Html:
    """Return a caution: word, shape and short line always visible; ``brief`` on paper too."""
    parts = [tag("ul", *(tag("li", line) for line in one.more))]
    if one.licensed:
        parts = [
            tag("p", "What an owner does, and does not:", class_="note"),
            *parts,
            tag("p", f"{one.who}:", class_="note"),
            tag("ul", *(tag("li", line) for line in one.licensed)),
        ]
    else:
        parts.append(tag("p", f"Who may do it: {one.who}.", class_="note"))
    return tag(
        "details",
        tag("summary", tag("b", f"{one.signal}. "), one.short),
        *parts,
        class_=f"caution {CLASSES[one.signal]}{' brief' * brief}",
        id=f"caution-{ident}",
    )


def dangers(ident: str, *, swim: bool = True, brief: bool = False) -> Html:
    """Return the line on alternating current and, near a dock, the one on the water."""
    return joined(
        caution(SHORE, ident, brief=brief),
        caution(SWIM, f"{ident}-swim", brief=brief) if swim else None,
    )


ON_SHORE: Final = {"shore", "ac", "records"}
"""Parts of a plan whose findings are about shore power."""


def dangers_of(found: Iterable[Finding], ident: str) -> Html | None:
    """Return the dangers of what findings are about; nothing where none is about AC."""
    places = {one.where for one in found}
    parts = {place.partition(".")[0] for place in places}
    near = bool(parts & ON_SHORE or places & LOOKS)
    return dangers(ident, swim=near, brief=True) if near or "inverter" in parts else None


def chemistry_caution(chemistry: str) -> Caution:
    """Return the caution that goes with a chemistry."""
    return LITHIUM if chemistry == "lithium" else LEAD

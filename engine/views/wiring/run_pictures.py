"""Two pictures of one circuit: its run as a strip, and the window of ratings as a scale."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.loads.load import CONDITIONS
from engine.units import fixed, said
from engine.views.parts.html import Html, joined, tag
from engine.views.parts.pictures import Scale, Stop, scale_picture, strip_picture
from engine.views.parts.say import length, warmth

if TYPE_CHECKING:
    from engine.check.circuits import CircuitAnswer
    from engine.check.network import NetworkAnswer
    from engine.check.wire import Wire
    from engine.units import Volt
    from engine.views.parts.scene import Scene

FAR: dict[str, str] = {
    "loads": "load",
    "motor": "motor",
    "bus": "bus",
    "inverter": "inverter",
    "source": "source",
    "bank": "other bank",
    "starter": "starter",
}


def strip(scene: Scene, answer: CircuitAnswer, shared: NetworkAnswer) -> Html | None:
    """Return the run as a strip: source, protection, conductor, joints and far end, with volts.

    Volts are the network's, with all that the way of living uses running and this circuit at its
    design current; where the network cannot say, those of the circuit alone.
    """
    circuit, wire = answer.circuit, answer.wire
    if wire is None or circuit.run is None or circuit.current is None:
        return None
    source, start, far = _ends(answer, shared, wire)
    amps = circuit.current.likely
    if shared.solved and circuit.ident in shared.solved.amps:
        amps = shared.solved.amps[circuit.ident]
    bare_words = "no protection here"
    if circuit.guard.fitted and circuit.guard.distance:
        bare_words = f"{length(circuit.guard.distance.likely, scene.units)} without"
    stops = [Stop(source, f"{fixed(start, 2)} V", 0.0)]
    guard, fed = circuit.guard, start
    bare = 0.0
    if not guard.fitted:
        bare = 1.0
    elif guard.rating:
        away = min(guard.distance.likely / circuit.run.likely, 1.0) if guard.distance else 0.0
        place = max(0.3 * min(1.0, away * 4), 0.26)
        bare = place if guard.distance and guard.distance.likely > 0 else 0.0
        stops.append(Stop(f"{said(guard.rating)} A", f"{fixed(fed, 2)} V", place))
    if circuit.joints:
        after = far + circuit.joints * amps
        stops.append(Stop("joints", f"{fixed(after, 2)} V", 0.86))
    stops.append(Stop(FAR[circuit.feeds], f"{fixed(far, 2)} V", 1.0))
    one, both = (
        length(metres, scene.units) for metres in (circuit.run.likely, 2 * circuit.run.likely)
    )
    lost = start - far
    side = f"{circuit.parallel} × " if circuit.parallel > 1 else ""
    above = f"{side}{circuit.size}, {one} one way, {both} there and back"
    below = f"{said(abs(amps))} A · {fixed(abs(lost), 2)} V {'lost' if lost >= 0 else 'gained'}"
    title = (
        f"{circuit.name}: {fixed(start, 2)} V at the {source}, {fixed(far, 2)} V at the "
        f"{FAR[circuit.feeds]}"
    )
    return tag(
        "figure",
        strip_picture(stops, above, below, title, narrow=False, bare=bare,
                      bare_words=bare_words),
        strip_picture(stops, f"{one} one way", below, title, narrow=True, bare=bare,
                      bare_words=bare_words),
        tag("figcaption", _caption(scene, answer, shared, lost * amps)),
    )  # fmt: skip


def _ends(
    answer: CircuitAnswer, shared: NetworkAnswer, wire: Wire
) -> tuple[str, Volt | float, Volt | float]:
    """Return what is at the start, the volts there, and the volts at the far end."""
    circuit = answer.circuit
    source = answer.path.feeders[-1] if answer.path.feeders else "bank"
    far = shared.volts_at(circuit.ident)
    start = shared.volts_at(answer.path.feeders[-1] if answer.path.feeders else "bank")
    if far is None or start is None:
        name = source if circuit.on_bank else "source"
        return name, circuit.volts, wire.at_load
    return source, start, far


def _caption(scene: Scene, answer: CircuitAnswer, shared: NetworkAnswer, heat: float) -> str | Html:
    circuit, wire = answer.circuit, answer.wire
    assert wire is not None  # noqa: S101 - there is a strip
    own = (
        f"Its own run makes {said(abs(heat), 2)} W of heat; at its design current the copper "
        f"reaches {warmth(wire.temperature, scene.units)}."
    )
    if circuit.joints is None:
        own += " Joints are not counted."
    lost = shared.lost_to(circuit.ident)
    if lost is None:
        return own
    share = said(abs(lost) / circuit.volts * 100, 2)
    running = "what you switched on" if scene.running is not None else (
        f"all that is used {CONDITIONS[scene.condition]}"
    )  # fmt: skip
    return (
        f"{own} From the bank's terminals to here {fixed(abs(lost), 2)} V are "
        f"{'lost' if lost >= 0 else 'gained'}, {share} %, with "
        f"{running} running and this circuit at its design current."
    )


def window_scale(answer: CircuitAnswer) -> Html | None:
    """Return the window of ratings as a scale with load, rating and carrying capacity marked."""
    circuit, wire = answer.circuit, answer.wire
    if wire is None or circuit.current is None:
        return None
    each = circuit.current.likely / circuit.guard.abreast
    mark = f"{said(circuit.rating)} A" if circuit.rating else "none entered"
    if not circuit.guard.fitted:
        mark = "none fitted"
    label = circuit.guard.label_most
    by_label = label is not None and label < wire.window.most
    top = label if by_label and label else wire.window.most
    word = "label asks" if by_label else "carries"
    scale = Scale(each, wire.window.least, top, circuit.rating, mark, word)
    least, most = said(wire.window.least), said(top)
    title = f"Protection may be marked {least} to {most} A; {mark}"
    words_window = (
        f"Between {least} and {most} A: above the load"
        + (" with a fifth to spare, since it runs for hours" if circuit.continuous else "")
        + (
            ", and no more than its label asks for."
            if by_label
            else ", and no more than the conductor carries."
        )
    )
    if wire.window.empty:
        words_window = (
            f"No rating fits: the load asks for {least} A and the conductor carries {most} A."
        )
    return joined(
        tag("h2", "Protection"),
        tag(
            "figure",
            scale_picture(scale, title, narrow=False),
            scale_picture(scale, title, narrow=True),
            tag("figcaption", words_window),
        ),
    )

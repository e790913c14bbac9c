"""Volts at rest against charge: a curve, a table, and where the volts tell nothing."""

from __future__ import annotations

from math import ceil, floor
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.voltage import FLAT, HALF, resting_caution
from engine.check.bank_rest import LEAST, resting_curve
from engine.units import fixed, said
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.pictures import drawing, nice_step

if TYPE_CHECKING:
    from engine.units import Share, Volt
    from engine.views.parts.scene import Scene

SLOW: Final = (
    " Lithium's were taken in a 20-hour discharge: a rested pack shows 0.05 to 0.1 V more on a "
    "12 V system."
)
ROWS: Final = 9
"""Steps of the table: every tenth of the charge."""
TOP, BOTTOM, LEFT, RIGHT = 22, 196, 84, 16


def resting(scene: Scene) -> Html | None:
    """Return what a rested bank's volts say of its charge."""
    bank = scene.plan.bank
    if bank is None:
        return None
    kind = CHEMISTRIES[bank.chemistry]
    flat = resting_caution(kind, HALF)
    curve = resting_curve(bank)
    title = f"Volts at rest of {kind.label}, from {said(LEAST * 100)} % to full"
    table = tag(
        "table",
        head("Charge", "Volts at rest", numbers=("Charge", "Volts at rest")),
        tag(
            "tbody",
            *(
                tag("tr", tag("th", f"{fixed(charge * 100, 0)} %", scope="row", class_="n"),
                    tag("td", f"{fixed(volts, 2)} V", class_="n"))
                for charge, volts in reversed(resting_curve(bank, ROWS))
            ),
        ),
        class_="grid",
    )  # fmt: skip
    return joined(
        tag("h2", "Volts at rest"),
        tag("p", flat or "Volts tell the charge only of a bank at rest.", class_="answer"),
        tag("p", "Rested two hours at least, nothing drawing and nothing charging; lead takes "
            "longer to settle. A reading sooner after charging says too much, under load too "
            "little.", class_="note"),
        tag(
            "figure",
            *(_picture(curve, title, narrow=one, flat=flat is not None) for one in (False, True)),
            tag("figcaption", "Near 25 °C, typical of the chemistry.", None if kind.lead else SLOW),
        ),
        tag("details", tag("summary", "The same as a table"), table, class_="why",
            id="bank-rest-table"),
    )  # fmt: skip


def _picture(
    curve: tuple[tuple[Share, Volt], ...], title: str, *, narrow: bool, flat: bool
) -> Html:
    """Return the curve; where it tells nothing lies a band."""
    width = 360 if narrow else 760
    step = nice_step(curve[-1][1] - curve[0][1], 5)
    low, high = floor(curve[0][1] / step) * step, ceil(curve[-1][1] / step) * step

    def x(charge: float) -> float:
        return LEFT + (charge - LEAST) / (1 - LEAST) * (width - LEFT - RIGHT)

    def y(volts: float) -> float:
        return BOTTOM - (volts - low) / (high - low) * (BOTTOM - TOP)

    marks = []
    if flat:
        start, end = x(FLAT[0]), x(FLAT[1])
        marks = [
            tag("rect", x=fixed(start, 1), y=TOP, width=fixed(end - start, 1),
                height=BOTTOM - TOP, class_="band"),
            _text((start + end) / 2, BOTTOM - 12, "volts tell nothing here"),
        ]  # fmt: skip
    for n in range(round((high - low) / step) + 1):
        volts = low + n * step
        marks += [
            tag("line", x1=LEFT, y1=fixed(y(volts), 1), x2=width - RIGHT, y2=fixed(y(volts), 1),
                class_="soft"),
            _text(LEFT - 8, y(volts) + 5, f"{fixed(volts, 1)} V", "end", "soft"),
        ]  # fmt: skip
    for tenth in (2, 5, 10) if narrow else (2, 4, 6, 8, 10):
        last = tenth == 10
        marks.append(_text(x(tenth / 10), BOTTOM + 22, f"{tenth * 10} %",
                           "end" if last else "middle", "soft"))  # fmt: skip
    points = " L".join(f"{fixed(x(charge), 1)} {fixed(y(volts), 1)}" for charge, volts in curve)
    return drawing(
        width, BOTTOM + 30, title, *marks, tag("path", d=f"M{points}", class_="line"),
        class_="narrow" if narrow else "wide",
    )  # fmt: skip


def _text(x: float, y: float, words: str, anchor: str = "middle", class_: str = "ink") -> Html:
    return tag("text", words, x=fixed(x, 1), y=fixed(y, 1), text_anchor=anchor, class_=class_)

"""Papers: plans on this device, send and receive, backup, tables, about and limits."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

from engine.loads.draws import DRAWS, SEED
from engine.plan.fields import MONTHS
from engine.plan.link import length_words
from engine.plan.receive import Received
from engine.plan.table_in import Incoming
from engine.units import words
from engine.views.home.home import banner
from engine.views.parts.cautions import PLANNING, caution, dangers
from engine.views.parts.foot import foot
from engine.views.parts.html import Block, Html, block, escaped, head, joined, tag
from engine.views.parts.say import button, link

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene

STAMP: Final = re.compile(
    r"(?P<year>\d{4})-(?P<month>\d\d)-(?P<day>\d\d)T(?P<time>\d\d:\d\d)[\d:.]*Z$"
)
LIMITS: Final = (
    "Day's use, bank, charging, days ahead, circuits with their fuse window, fault current, the DC "
    "network as a whole, the inverter's runtime and shore power are worked out. The drawing is not "
    "yet.",
    "A month's sun may be out by 15 %; the chance of needing the engine is no forecast.",
    "A circuit's drop is judged run by run; what the bank, switch and buses lose before it stands "
    "on the page of the network.",
    "Joints are not counted: a bad one loses more than the whole run. Measure.",
    "Lead-acid and lithium figures are typical until you enter what is measured.",
    "Lightning, owner-built packs and live AC work are left to people of the trade.",
)


def papers(scene: Scene) -> tuple[Block, ...]:
    """Return the Papers page."""
    return (
        block(
            "papers-head",
            banner(scene),
            tag("h1", "Papers"),
            dangers("papers", brief=True),
        ),
        block("papers-send", tag("h2", "Send this plan"), _send(scene)),
        block("papers-receive", tag("h2", "Receive a plan"), receive_form(scene)),
        block("papers-plans", tag("h2", "Plans on this device"), _plans(scene)),
        block("papers-backup", tag("h2", "Backup and tables"), _backup(scene)),
        block("papers-about", *_about(scene)),
    )


def _send(scene: Scene) -> Html:
    made = None
    if scene.link:
        made = joined(
            tag(
                "p",
                f"The link has {len(scene.link):,} characters: {length_words(scene.link)}.",
            ),
            tag("label", "The link", for_="link-text"),
            tag("textarea", scene.link, id="link-text", readonly=True, rows=4, class_="link-text"),
        )
    return joined(
        tag(
            "p",
            "A link holds the whole plan after the # sign; no server sees it, but a chat keeps "
            "what you paste. Boat's name and place go with it.",
            class_="note",
        ),
        tag(
            "p",
            button("Make a link", "share", class_="main"),
            button("Save as a file", "export"),
            class_="actions",
        ),
        made,
    )


def receive_form(scene: Scene) -> Html:
    """Return the ways to take in a plan."""
    problem = scene.refused.get("receive")
    return joined(
        problems_box([problem]) if problem else None,
        tag(
            "form",
            tag(
                "div",
                tag("label", "Paste a link or the text of a plan", for_="receive-text"),
                tag("textarea", "", name="text", id="receive-text", rows=3),
                class_="field",
            ),
            tag(
                "p",
                tag("button", "Look at it", type="button", data_do="receive-text"),
                class_="actions",
            ),
            data_do="receive-text",
        ),
        tag(
            "div",
            tag("label", "Or choose a plan file", for_="receive-file"),
            tag("input", type="file", id="receive-file", data_file=True,
                accept=".json,application/json,text/plain"),
            class_="field",
        ),
    )  # fmt: skip


def problems_box(problems: list[object]) -> Html:
    """Return the error summary."""
    return tag(
        "div",
        tag("h2", "There is a problem"),
        tag("ul", *(tag("li", str(one)) for one in problems)),
        class_="problems",
        role="alert",
        tabindex="-1",
        id="problems",
    )


def moment(stamp: str) -> str:
    """Return a browser's time stamp, which is of Greenwich, as a person reads it.

    Examples
    --------
    >>> moment("2026-11-28T07:20:07.554Z"), moment("just now")
    ('28 November 2026, 07:20 UTC', 'just now')
    """
    found = STAMP.match(stamp)
    if found is None or not 1 <= int(found["month"]) <= len(MONTHS):
        return stamp
    month = MONTHS[int(found["month"]) - 1]
    return f"{int(found['day'])} {month} {found['year']}, {found['time']} UTC"


def _plans(scene: Scene) -> Html:
    rows = []
    for kept in scene.plans:
        here = kept.ident == scene.plan_id
        rows.append(
            tag(
                "tr",
                tag("th", kept.name or "unnamed", " (open)" if here else "", scope="row"),
                tag("td", moment(kept.saved), data_label="Saved"),
                tag(
                    "td",
                    tag(
                        "div",
                        button("Open", "open-plan", kept.ident, disabled=here),
                        button("Delete", "ask-delete", kept.ident),
                        class_="actions",
                    ),
                ),
            )
        )
        if scene.asked == kept.ident:
            rows.append(
                tag(
                    "tr",
                    tag(
                        "td",
                        tag("p", f"Delete “{kept.name}” from this device for good? Undo cannot "
                            "reach it."),
                        tag(
                            "p",
                            button("Delete for good", "delete-plan", kept.ident),
                            button("Keep it", "ask-delete", ""),
                            class_="actions",
                        ),
                        colspan=3,
                    ),
                )
            )  # fmt: skip
    table = tag("table", tag("tbody", *rows), class_="grid cards") if rows else None
    empty = None if rows else tag("p", "None yet. The made-up boat is never kept.", class_="empty")
    return joined(
        table,
        empty,
        tag(
            "p",
            link("start", "Start another boat", class_="button"),
            button("Copy this plan", "copy-plan") if scene.mine else None,
            button("Look around the made-up boat", "look-around"),
            class_="actions",
        ),
    )


def _backup(scene: Scene) -> Html:
    storage = {
        "kept": "The browser says it keeps this until you remove it.",
        "may be cleared": "The browser may clear this if it is long unused. Keep a file.",
        "lost": "Nothing is stored here. If you had a plan, open your backup file.",
    }.get(scene.device.get("storage", ""), "")
    return joined(
        tag("p", storage, class_="note") if storage else None,
        tag(
            "p",
            button("Save the plan as a file", "export"),
            button("Loads as a table (CSV)", "export-loads"),
            link("energy/paste", "Loads from a table", class_="button"),
            tag("button", "Print this page", type="button", data_local="print"),
            class_="actions",
        ),
        foot(scene),
    )


def _about(scene: Scene) -> tuple[Html, ...]:
    offline = scene.device.get("offline", "")
    version = scene.device.get("version", "")
    state = {
        "ready": "Ready offline: every file is kept here and one sum has run from them.",
        "checking": "Getting ready for offline.",
    }.get(offline, "")
    if offline.startswith("failed"):
        state = f"Not ready offline: {offline.removeprefix('failed:').strip()}."
    update = None
    if scene.device.get("update") == "waiting":
        update = tag(
            "p",
            "A new version is ready. Your plan stays. ",
            button("Update now", "update-now"),
            class_="actions",
        )
    return (
        tag("h2", "About and limits"),
        update or joined(),
        tag("p", state) if state else joined(),
        caution(PLANNING, "about"),
        tag("ul", *(tag("li", line) for line in LIMITS), class_="list"),
        tag(
            "p",
            "Private by construction: no account, no server, nothing sent anywhere. What you enter "
            "stays in this browser until you send it yourself.",
        ),
        tag(
            "p",
            f"Version {version}. Days are drawn {DRAWS} times with seed {SEED}: the same plan and "
            "version always give the same figures.",
            class_="note",
        ),
    )


def receive(scene: Scene) -> tuple[Block, ...]:
    """Return the page for taking in a plan, with a preview before anything opens."""
    back = link("papers", "Papers", class_="crumb")
    if not isinstance(scene.incoming, Received):
        return (block("receive", back, tag("h1", "Receive a plan"), receive_form(scene)),)
    return (block("receive", back, tag("h1", "Receive a plan"), _preview(scene.incoming)),)


def _preview(received: Received) -> Html:
    unread = [tag("li", str(problem)) for problem in received.problems[:20]]
    more = len(received.problems) - len(unread)
    flag = "A made-up boat. " if received.made_up else ""
    count = len(received.problems)
    note = "Every value could be read."
    if count:
        note = f"{count} value{'s' if count > 1 else ''} could not be read; they stay as typed."
    return tag(
        "div",
        tag(
            "p",
            f"{flag}{received.name or 'An unnamed boat'}"
            f"{', ' + received.revision if received.revision else ''}: "
            f"{received.loads} loads, {received.circuits} circuits. {note}",
            class_="answer",
        ),
        tag("ul", *unread, tag("li", f"and {more} more") if more > 0 else None, class_="list")
        if unread
        else None,
        tag("p", "It opens as a new plan; none of yours is touched.", class_="note"),
        tag(
            "p",
            button("Open as a new plan", "accept", class_="main"),
            button("Leave it", "refuse"),
            class_="actions",
        ),
        class_="preview",
    )


def paste(scene: Scene) -> tuple[Block, ...]:
    """Return the page for a pasted table, with a preview and every line's problems."""
    back = link("energy/use", "Day's use", class_="crumb")
    problem = scene.refused.get("paste")
    form = tag(
        "form",
        problems_box([problem]) if problem else None,
        tag(
            "div",
            tag("label", "Paste from a spreadsheet or a CSV file, heading row first",
                for_="paste-text"),
            tag("textarea", Html(escaped(scene.typed.get("paste", ""))), name="table",
                id="paste-text", rows=8),
            tag(
                "p",
                "Headings such as Load, Draw, Low, High, Watts, Hours at anchor, Duty, Zone, "
                "Circuit are recognised. Formulas are never run.",
                class_="help",
            ),
            class_="field",
        ),
        tag("p", tag("button", "Look at it", type="button", data_do="paste"), class_="actions"),
        data_do="paste",
    )  # fmt: skip
    file = tag(
        "div",
        tag("label", "Or choose a CSV file", for_="paste-file"),
        tag("input", type="file", id="paste-file", data_file=True, accept=".csv,text/csv,.txt"),
        class_="field",
    )
    found = scene.pasted
    preview = _table_preview(found) if isinstance(found, Incoming) else None
    return (
        block("paste-head", back, tag("h1", "Loads from a table")),
        block("paste-preview", preview),
        block("paste-form", form, file),
    )


def _table_preview(found: Incoming) -> Html:
    rows = [
        tag(
            "tr",
            tag("td", str(line.number), class_="n"),
            tag("td", line.row.get("name", "")),
            tag("td", line.row.get("draw", "not known")),
            tag("td", line.row.get("hours_anchor", "not known")),
            tag(
                "td",
                *(tag("p", str(problem), class_="problem") for problem in line.problems),
                None if line.problems else "read",
            ),
        )
        for line in found.lines
    ]
    heads = ("Line", "Load", "Draw", "Hours at anchor", "Read")
    columns = words(f"“{heading}” as {field}" for heading, field in found.used)
    left = f" Left out: {words(f'“{one}”' for one in found.left_out)}." if found.left_out else ""
    passed = f" Passed over: {'; '.join(found.passed)}." if found.passed else ""
    return tag(
        "div",
        tag("p", f"{len(found.lines)} loads found.", class_="answer"),
        tag("p", f"Columns: {columns}.{left}{passed}", class_="note"),
        tag(
            "div",
            tag(
                "table",
                head(*heads),
                tag("tbody", *rows),
                class_="grid",
            ),
            class_="scroll",
            tabindex="0",
            role="region",
            aria_label="Loads found in the table",
        ),
        tag(
            "p",
            button(f"Add {len(found.lines)} loads", "take-table", class_="main"),
            button("Leave it", "leave-table"),
            class_="actions",
        ),
        class_="preview",
    )

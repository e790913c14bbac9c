"""All that lives between two events."""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from engine.plan.document import new_document, shaped, written
from engine.plan.history import (
    DEEPEST,
    Step,
    applied,
    as_json,
    changes_between,
    from_json,
    reversed_step,
)
from engine.plan.made_up import PLANNED, made_up_document
from engine.plan.read import plan_of
from engine.problem import Problem
from engine.views.parts.scene import Kept, Scene, Units

if TYPE_CHECKING:
    from engine.plan.document import Document
    from engine.plan.parts import Plan
    from engine.session.work import Work
    from engine.views.parts.scene import Progress

MADE_UP: str = "made-up"


@dataclass
class State:
    """The open plan with its history, and what the person looks at."""

    document: Document = field(default_factory=made_up_document)
    plan_id: str = MADE_UP
    done: tuple[Step, ...] = ()
    undone: tuple[Step, ...] = ()
    route: tuple[str, ...] = ("home",)
    settings: dict[str, str] = field(default_factory=dict)
    device: dict[str, str] = field(default_factory=dict)
    plans: tuple[Kept, ...] = ()
    condition: str = "anchor"
    group: str = ""
    chosen: frozenset[str] = frozenset()
    running: frozenset[str] | None = None
    before: frozenset[str] | None = None
    level: str = "now"
    plugged: frozenset[str] | None = None
    sum_inputs: dict[str, str] = field(default_factory=dict)
    sums_kept: dict[str, dict[str, str]] = field(default_factory=dict)
    quiet_field: str = ""
    typed: dict[str, str] = field(default_factory=dict)
    refused: dict[str, Problem] = field(default_factory=dict)
    notice: str = ""
    incoming: object | None = None
    pasted: object | None = None
    link: str = ""
    asked: str = ""
    work: Work | None = None
    progress: Progress | None = None
    tonight: dict[str, str] = field(default_factory=dict)
    days: str = "14"
    sky: str = "part"
    reply: dict[str, Any] = field(default_factory=dict)

    @property
    def mine(self) -> bool:
        """True for a plan of one's own, which is kept."""
        return self.plan_id != MADE_UP

    def plan(self) -> Plan:
        """Return the open plan, read."""
        return plan_of(self.document)

    def edit(self, name: str, document: Document) -> None:
        """Take a new document as the result of a named edit.

        Raises
        ------
        Problem
            If another tab has the plan open: only one may write.
        """
        changes = changes_between(self.document, document)
        if not changes:
            return
        self._may_write()
        self.document = document
        self.done = (*self.done, Step(name, changes))[-DEEPEST:]
        self.undone = ()
        self.keep()

    def undo(self) -> None:
        """Take the last edit back."""
        if not self.done:
            return
        self._may_write()
        *rest, last = self.done
        self.document = applied(self.document, reversed_step(last).changes)
        self.done, self.undone = tuple(rest), (*self.undone, last)
        self.reply["say"] = f"Undone: {last.name}"
        self._forget_typing()
        self.keep()

    def redo(self) -> None:
        """Do the last edit taken back again."""
        if not self.undone:
            return
        self._may_write()
        *rest, last = self.undone
        self.document = applied(self.document, last.changes)
        self.undone, self.done = tuple(rest), (*self.done, last)
        self.reply["say"] = f"Done again: {last.name}"
        self._forget_typing()
        self.keep()

    def _may_write(self) -> None:
        if self.mine and self.reader:
            raise Problem(
                "",
                "This plan is open in another tab, which may change it; here it can only be read.",
                "Close the other tab, and this one takes over.",
            )

    @property
    def reader(self) -> bool:
        """True in a second tab."""
        return self.device.get("tab") == "reader"

    def _forget_typing(self) -> None:
        self.typed = {}
        self.refused = {}

    def keep(self) -> None:
        """Hand the plan back to be stored; the made-up boat never is, nor by a reader."""
        if not self.mine or self.reader:
            return
        record = {
            "id": self.plan_id,
            "document": self.document,
            "done": as_json(self.done),
            "undone": as_json(self.undone),
        }
        name = self.document.get("boat", {}).get("name", "")
        before = self.reply.get("record")
        if before and before["id"] != self.plan_id:
            self.reply.setdefault("left", []).append(before)
        self.reply["record"] = {"id": self.plan_id, "name": name, "text": written(record)}

    def open_own(self, document: Document) -> None:
        """Open a document as a new plan of one's own."""
        taken = {kept.ident for kept in self.plans} | {self.plan_id}
        number = next(n for n in range(1, len(taken) + 2) if f"plan-{n}" not in taken)
        document = {key: value for key, value in document.items() if key != "made_up"}
        self._show(document, f"plan-{number}")
        name = document.get("boat", {}).get("name", "")
        self.plans = (*self.plans, Kept(self.plan_id, name, ""))
        self.keep()

    def open_made_up(self, revision: str = PLANNED) -> None:
        """Show the made-up boat as it was made: planned, or as it was found."""
        self._show(made_up_document(revision), MADE_UP)

    def open_record(self, text: str) -> None:
        """Open a stored plan with its history.

        Raises
        ------
        Problem
            If the record is not what this page writes.
        """
        try:
            record = json.loads(text)
            document, ident = shaped(record["document"]), str(record["id"])
            done, undone = from_json(record["done"]), from_json(record["undone"])
        except (KeyError, TypeError, ValueError, RecursionError):
            raise Problem(
                "record",
                "The plan stored here cannot be read.",
                "Open your backup file; the stored copy is left as it is.",
            ) from None
        self._show(document, ident)
        self.done, self.undone = done, undone

    def _show(self, document: Document, ident: str) -> None:
        self.document, self.plan_id = document, ident
        self.done = self.undone = ()
        self.chosen = frozenset()
        self.running = self.before = self.plugged = None
        self.tonight = {}
        self.link = ""
        self._forget_typing()
        self.incoming = self.pasted = None

    def start_own(self) -> None:
        """Open an empty plan."""
        self.open_own(new_document())

    def scene(self) -> Scene:
        """Return all a page may know."""
        units = Units(
            self.settings.get("length", "m"),
            self.settings.get("temperature", "degC"),
            self.settings.get("charge", "Ah"),
        )
        return Scene(
            self.document,
            self.plan(),
            self.mine,
            self.route,
            {},
            units,
            dict(self.settings),
            dict(self.device),
            self.plans,
            self.plan_id,
            self.done[-1].name if self.done else "",
            self.undone[-1].name if self.undone else "",
            self.condition,
            self.group,
            self.chosen,
            self.running,
            self.before,
            self.level,
            dict(self.sum_inputs),
            self.quiet_field,
            dict(self.typed),
            dict(self.refused),
            (self.notice,) if self.notice else (),
            self.incoming,
            self.pasted,
            self.link,
            self.asked,
            self.plugged,
            self.progress,
            dict(self.tonight),
            int(self.days),
            self.sky,
        )

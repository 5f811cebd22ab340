"""What `tarebook devices take-back` and `give-back` do: say what would change, ask, change it, say how to go back."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from typing import TYPE_CHECKING

from tarebook.cli.words import is_yes, printable
from tarebook.garage import take_back
from tarebook.garage.take_back import Plan, What
from tarebook.journal.kinds import KINDS

if TYPE_CHECKING:
    from sqlalchemy.orm import Session

    from tarebook.cli.garage import OpenGarage
    from tarebook.store.models import DeviceRow


def take(garage: OpenGarage, device: DeviceRow, since: str, is_sure: bool) -> int:
    def plan(session: Session) -> Plan:
        return take_back.taking_back(session, garage.id, device.id, since)

    if not _carried_out(garage, device, "taken", plan, is_sure):
        return 1
    print(f"To undo that: tarebook devices give-back {device.id}")
    if not device.revoked_at:
        print(f"It may still send more. To end that: tarebook devices revoke {device.id}")
    return 0


def give(garage: OpenGarage, device: DeviceRow, is_sure: bool) -> int:
    def plan(session: Session) -> Plan:
        return take_back.giving_back(session, garage.id, device.id)

    return 0 if _carried_out(garage, device, "given", plan, is_sure) else 1


def _carried_out(
    garage: OpenGarage, device: DeviceRow, what: What, plan: Callable[[Session], Plan], is_sure: bool
) -> bool:
    with garage.database.read() as session:
        _tell(device, shown := plan(session))
    if not shown.changes:
        return False
    if not (is_sure or is_yes("Do this, on every phone? [y/N] ")):
        print("Nothing was changed.")
        return False
    with garage.database.write() as session:  # planned again: phones may have sent more meanwhile
        done = plan(session)
        take_back.carry_out(session, garage.id, device.id, what, done)
    print(f"Done: {len(done.changes)} records. Phones follow when they next reach this computer.")
    return True


def _tell(device: DeviceRow, plan: Plan) -> None:
    print(f"{device.id}, {printable(device.name)}:")
    told = {
        "deleted": plan.gone,
        "brought back": plan.back,
        "with the values they had": plan.set,
        "left alone, as others have worked on them": plan.shared,
    }
    for what, kinds in told.items():
        if kinds:
            print(f"  {what}: {_counted(kinds)}")
    if not plan.changes:
        print("  nothing to change")


def _counted(kinds: Counter[str]) -> str:
    return ", ".join(f"{count} {_words(kind)[count != 1]}" for kind, count in sorted(kinds.items()))


def _words(kind: str) -> tuple[str, str]:
    plain = kind.replace("_", " ")
    return KINDS[kind].words or (plain, f"{plain}s")

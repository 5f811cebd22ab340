"""What happens to the home computer, and what is done at it."""

from __future__ import annotations

import json
from pathlib import Path

from tarebook.errors import TarebookError
from tarebook.store import restore
from tests.sync.simulation.moves.table import by_a_phone, move
from tests.sync.simulation.world import Kept, Phone, World


@move(2.5)
def the_disk_fails(world: World) -> str | None:
    disk = world.server.disk
    if disk.how:
        return None
    disk.how, disk.after = world.chance.choice(["crash", "full", "failing", "readonly"]), world.chance.randrange(12)
    if disk.how == "readonly":
        disk.after = 0
    return f"{disk.how} after {disk.after}"


@move(3)
def the_disk_is_well_again(world: World) -> str | None:
    if not world.server.disk.how:
        return None
    world.server.disk.well()
    return ""


@move(0.5)
def the_server_is_started_again(world: World) -> str:
    world.server.restart()
    return ""


@move(0.8)
def a_backup(world: World) -> str | None:
    file = world.root / f"backup-{world.steps}.zip"
    try:
        world.server.back_up(file)
    except TarebookError as refusal:
        world.must(world.server.disk.struck, f"no backup: {refusal.code}")
        return refusal.code
    except RuntimeError:
        world.must(world.server.disk.struck, "the backup ended")
        world.server.restart()
        return "ended"
    world.backups.append(Kept(file, frozenset(world.revoked)))
    return file.name


def _restored(world: World, elsewhere: bool) -> str | None:
    if not world.backups:
        return None
    kept = world.chance.choice(world.backups)
    world.server.disk.well()
    world.server.restore(kept.file, elsewhere, lambda phones: _who_may_come_in(world, phones))
    return kept.file.name


def _who_may_come_in(world: World, phones: list[restore.Phone]) -> list[restore.Phone]:
    """Most people remember whom they took off the list; some let everybody in, or leave somebody out."""
    careless = world.chance.random() < 0.2
    known = set(world.revoked.values())
    staying = [one for one in phones if (careless or one.id not in known) and world.chance.random() < 0.9]
    allowed = {one.id for one in staying if one.off is None}
    world.revoked = {token: name for token, name in world.revoked.items() if name not in allowed}
    for one in phones:
        if one not in staying:
            world.take_off(one.id)
    return staying


@move(1.2)
def a_restore(world: World) -> str | None:
    return _restored(world, elsewhere=False)


@move(0.8)
def a_restore_on_a_new_computer(world: World) -> str | None:
    return _restored(world, elsewhere=True)


@move(0.4)
def the_files_are_copied(world: World) -> str:
    copy = Kept(world.root / f"copy-{world.steps}", frozenset(world.revoked))
    world.server.disk.well()
    world.server.copy_files(copy.file)
    world.copies.append(copy)
    return copy.file.name


@move(0.8)
def the_files_are_put_back(world: World) -> str | None:
    """Nobody can tell the program then who was taken off the list since: whoever copies files answers for that."""
    if not world.copies:
        return None
    copy = world.chance.choice(world.copies)
    world.server.put_files_back(copy.file)
    world.revoked = {token: name for token, name in world.revoked.items() if token in copy.revoked}
    return copy.file.name


@by_a_phone(0.4)
def an_export_is_taken_in(world: World, phone: Phone) -> str | None:
    if world.server.disk.how:
        return None
    world.server.take_in(_export(world, phone))
    return ""


@by_a_phone(0.5)
def another_garage_takes_an_export_in(world: World, phone: Phone) -> str | None:
    if world.server.disk.how:
        return None
    file = _export(world, phone)
    texts = {entry["text"] for entry in json.loads(file.read_text())["entries"]}
    world.must(texts == world.server.another_garages(file), "another garage has not all of an export")
    return f"{len(texts)}"


def _export(world: World, phone: Phone) -> Path:
    file = world.root / "export.json"
    file.write_text(world.app(phone, "takeout")["value"])
    return file


@move(0.5)
def a_rebuild(world: World) -> str | None:
    if world.server.disk.how:
        return None
    world.must(world.server.rebuild() == 0, "a rebuild changed the tables")
    return ""


@move(3)
def an_upgrade(world: World) -> str | None:
    return upgrade(world)


def upgrade(world: World) -> str | None:
    """All at once: what a replica holds does not depend on what it knows."""
    if not world.is_older:
        return None
    world.older.close()
    world.is_older = False
    world.server.restart()
    for phone in world.phones:
        world.kill(phone)
        world.open(phone)
    return ""

"""Who is let in, and who is taken off the list."""

from __future__ import annotations

from tarebook.devices import joining, pairing, tokens
from tests.sync.simulation.moves.table import by_a_phone, move, on_a_sound_disk
from tests.sync.simulation.world import Phone, World


def _invited(world: World, phone: Phone, here: bool) -> str:
    with world.server.database.write() as session:
        made = pairing.invite(session, world.server.garage, here=here)
    world.app(phone, "join", made.full)
    return f"{phone.number}"


@move(8)
def a_new_phone_is_paired(world: World) -> str | None:
    waiting = [phone for phone in world.phones if phone.open and phone.device is None]
    if not waiting:
        return None
    return on_a_sound_disk(world, lambda: _invited(world, world.chance.choice(waiting), world.chance.random() < 0.6))


@by_a_phone(0.7)
def a_phone_is_paired_anew(world: World, phone: Phone) -> str | None:
    return on_a_sound_disk(world, lambda: _invited(world, phone, world.chance.random() < 0.6))


@move(4)
def a_phone_taken_off_the_list_is_paired_anew(world: World) -> str | None:
    """What it wrote meanwhile is a stranger's then, for people to judge."""
    off = [phone for phone in world.phones if phone.open and phone.device in world.revoked.values()]
    if not off:
        return None
    return on_a_sound_disk(world, lambda: _invited(world, world.chance.choice(off), world.chance.random() < 0.6))


@move(3)
def somebody_says_yes(world: World) -> str | None:
    def say() -> str | None:
        with world.server.database.write() as session:
            asked = joining.waiting(session, world.server.garage)
            for one in asked:
                joining.decide(session, world.server.garage, one.id, world.chance.random() < 0.9)
        return str(len(asked)) if asked else None

    return on_a_sound_disk(world, say)


@move(1.2)
def a_phone_is_taken_off_the_list(world: World) -> str | None:
    def revoke() -> str | None:
        rows = world.server.rows("select id from device where revoked_at is null order by id")
        if not rows:
            return None
        device = world.chance.choice(rows)[0]
        with world.server.database.write() as session:
            tokens.revoke(session, world.server.garage, device)
        world.take_off(device)
        return str(device)

    return on_a_sound_disk(world, revoke)

"""What happens to phones, and the time that passes for all."""

from __future__ import annotations

from tests.sync.simulation.moves.table import MOST_PHONES, by_a_phone, fields, move, record
from tests.sync.simulation.world import Phone, World


def _cut(world: World, phone: Phone, how: str) -> str:
    cut = {"after": 1 + world.chance.randrange(24), "how": how}
    return world.save(phone, "edit", record(world), fields(world), None, cut=cut)


@by_a_phone(0.7)
def a_page_is_killed_in_the_middle_of_a_write(world: World, phone: Phone) -> str:
    return _cut(world, phone, "kill")


@by_a_phone(0.5)
def a_page_is_killed_before_it_hears_of_its_write(world: World, phone: Phone) -> str:
    return _cut(world, phone, "late")


@by_a_phone(0.7)
def a_phone_has_no_room_left(world: World, phone: Phone) -> str:
    return _cut(world, phone, "quota")


@move(0.7)
def a_page_is_killed(world: World) -> str | None:
    some = [phone for phone in world.phones if phone.open]
    if not some:
        return None
    phone = world.chance.choice(some)
    world.kill(phone)
    return str(phone.number)


@move(6)
def a_page_is_opened_again(world: World) -> str | None:
    shut = [phone for phone in world.phones if not phone.open]
    if not shut:
        return None
    phone = world.chance.choice(shut)
    world.open(phone)
    return str(phone.number)


@by_a_phone(1.5)
def a_phone_is_cloned(world: World, phone: Phone) -> str | None:
    if len(world.phones) >= MOST_PHONES:
        return None
    world.kill(phone)
    twin = world.new_phone(source=phone.number)
    world.open(phone)
    return f"as {twin.number}"


@by_a_phone(1.5)
def a_tab_is_opened_beside(world: World, phone: Phone) -> str | None:
    if len(world.phones) >= MOST_PHONES:
        return None
    return f"as {world.new_phone(phone.number, is_tab=True).number}"


@move(1)
def a_new_phone(world: World) -> str | None:
    if len(world.phones) >= MOST_PHONES:
        return None
    return str(world.new_phone().number)


@move(7)
def time_passes(world: World) -> str:
    seconds = world.chance.choice([0.5, 2.5, 2.5, 11, 11, 70, 4000])
    world.passes(seconds)
    return str(seconds)


@move(0.5)
def the_servers_clock_is_ten_years_off(world: World) -> str:
    world.clock.off = world.chance.choice([-10, 0, 10]) * 31_557_600.0
    return str(world.clock.off)

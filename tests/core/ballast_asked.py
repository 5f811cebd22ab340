"""Questions a paddock asks of ballast: eight places about a small car, for the second solver and for the bench."""

from random import Random

from tarebook.core.ballast.ballast import Carried, Place, Wanted
from tarebook.core.numbers.uncertain import Uncertain

CAR = Carried(Uncertain(900.0), Uncertain(480.0), Uncertain(460.0), 0.48, 2.42, 1.43, 1.395, 0.55)
SPOTS = ((-0.5, 0.0, 0.35), (0.3, -0.3, 0.25), (1.1, -0.4, 0.15), (1.1, 0.4, 0.15),
         (1.9, -0.35, 0.2), (1.9, 0.35, 0.2), (2.75, 0.0, 0.22), (2.9, 0.45, 0.33))  # fmt: skip


def instance(random: Random) -> tuple[list[Place], Wanted]:
    """Eight places about a small car, up to forty blocks each: alike, of two sizes, or single plates as weighed."""
    sizes = random.choice(([1.0], [2.5], [5.0], [1.0, 2.5], [round(random.uniform(0.5, 5.0), 3) for _ in range(8)]))
    most = 4 if len(sizes) == 8 else 40
    at = [place(random, n, sizes[n] if len(sizes) == 8 else random.choice(sizes), most) for n in range(8)]
    room = sum(each.block * each.most for each in at)
    need = min(random.uniform(10.0, 60.0), 0.6 * room)
    front = share(at, 480.0, [1 - each.x / 2.42 for each in at], need, room) + random.uniform(-0.005, 0.005)
    left = share(at, 460.0, [0.5 - each.y / 1.4125 for each in at], need, room) + random.uniform(-0.004, 0.004)
    return at, Wanted(
        900.0 + need,
        900.0 + need + random.uniform(0.0, 12.0) if random.random() < 0.5 else None,
        (front - 0.003, front + 0.003) if random.random() < 0.8 else None,
        (left - 0.002, left + 0.002) if random.random() < 0.8 else None,
        random.choice(("mass", "centre", "cross")),
    )


def place(random: Random, n: int, block: float, most: int) -> Place:
    x, y, z = (round(axis + random.uniform(-0.05, 0.05), 3) for axis in SPOTS[n])
    return Place(f"p{n}", x, y, z, block, random.randrange(1, most + 1))


def share(at: list[Place], load: float, parts: list[float], need: float, room: float) -> float:
    """What it comes to when every place is filled alike."""
    onto = sum(place.block * place.most * part for place, part in zip(at, parts, strict=True))
    return (load + onto * need / room) / (900.0 + need)

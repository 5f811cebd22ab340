"""How long a code or a wait is good: five minutes by this computer's clock, and not at all before it was made.

A clock that is set back must not bring old codes to life again. Phones are told seconds, never a moment: their clock
may be years off.
"""

from datetime import UTC, datetime, timedelta

from tarebook.store.models import utc_now

GOOD_FOR = timedelta(minutes=5)


def good_until() -> str:
    return (datetime.now(UTC) + GOOD_FOR).isoformat(timespec="milliseconds")


def is_good(made_at: str, until: str) -> bool:
    return made_at <= utc_now() < until


def seconds_left(until: str) -> int:
    left = (datetime.fromisoformat(until) - datetime.now(UTC)).total_seconds()
    return max(0, int(left))

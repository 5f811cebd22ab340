"""What `tarebook import` says became of the lines of a file, read back from its words."""

import re

_WORDS = {
    "line to take in": "taken", "lines to take in": "taken",
    "line that corrects an earlier one": "corrected", "lines that correct earlier ones": "corrected",
    "line that is here already": "same", "lines that are here already": "same",
    "line with nothing to take in": "nothing", "lines with nothing to take in": "nothing",
    "heading or title": "heading", "headings and titles": "heading", "total": "total", "totals": "total",
    "line not understood": "bad", "lines not understood": "bad",
    "line that goes on from the one above": "continued", "lines that go on from the one above": "continued",
}  # fmt: skip


def fates_in(said: str) -> dict[str, int]:
    """How many lines have which fate. They must add up to the lines of the file."""
    told = re.findall(r"^ +(\d+) ([a-z ]+)(?::.*)?$", said, re.MULTILINE)
    found = {_WORDS[words]: int(number) for number, words in told}
    [lines] = re.findall(r"^Of (\d+) lines:$", said, re.MULTILINE)
    assert sum(found.values()) == int(lines), said
    return found


def lines_told(said: str, fate: str) -> set[int]:
    """The numbers of the lines that have a fate, where they are told."""
    for words, runs in re.findall(r"^ +\d+ ([a-z ]+): ([\d–, ]+)$", said, re.MULTILINE):
        if _WORDS[words] == fate:
            bounds = [run.split("–") for run in runs.split(", ")]
            return {number for run in bounds for number in range(int(run[0]), int(run[-1]) + 1)}
    return set()

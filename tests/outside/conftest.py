"""Prints how many published values were checked, source by source, and lets the test for all of them run last."""

from pathlib import Path

import pytest

from tests.outside.published import CHECKED, by_source

LAST = "test_every_published_value.py"


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    items.sort(key=lambda item: item.path.name == LAST)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    found = sorted(by_source(CHECKED).items(), key=lambda each: (-each[1][0], each[0]))
    if not found:
        return
    terminalreporter.section("published values checked, by source")
    for source, (values, entries) in found:
        terminalreporter.write_line(f"Published: {values:4} values, {entries:2} entries  {source}")
    total = [sum(numbers) for numbers in zip(*(each for _, each in found), strict=True)]
    terminalreporter.write_line(f"Published: {total[0]:4} values, {total[1]:2} entries  in all")


@pytest.fixture
def other_files() -> set[str]:
    """The files of this folder that hold the other tests."""
    return {path.name for path in Path(__file__).parent.glob("test_*.py")} - {LAST}

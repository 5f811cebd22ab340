"""What the phone shares with the server is generated, and never stale."""

from __future__ import annotations

from tarebook import contract


def test_the_generated_files_are_what_would_be_written_now() -> None:
    assert contract.stale() == []


def test_every_file_there_is_generated() -> None:
    made = {name for name, _text in contract.everything()} - {contract.RECORDS}
    assert {path.name for path in contract.GENERATED.iterdir()} == made

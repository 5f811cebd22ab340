"""What the browser tests found out and a person should read at the end of the run, test by test."""

lines: list[str] = []

"""What the numbers mean: pure functions on plain data, the same in Python and TypeScript."""

"""Broken and hostile input of every kind, by the minute: `python -m tests.fuzz`. Each case is made from a seed."""

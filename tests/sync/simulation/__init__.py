"""Phones and a home computer under one seeded scheduler, in the manner of simulation-tested databases.

The real phone code, several pages of it in one Node on doubles of their disks, and the real server application on
SQLite in memory meet nowhere but here. One `random.Random(seed)` decides every next move: who saves what, which request
arrives, which answer is lost, whose page is killed at which task, when the disk is full, what is backed up, restored,
what time it is. Timers, clocks, ids and secrets of both sides come from it as well, so a seed replays byte for byte;
what it found is a seed. No sequence is written down anywhere: `moves` has the moves and how often each is tried.

`truth` knows what phones called saved and what the server said it counts, and never asks the fold. `run` holds the
world to it: after every step as far as that is cheap, and wholly once all is quiet.

    python -m tests.sync.simulation --seed 1 --steps 1000000 --workers 2
    python -m tests.sync.simulation --seed 17 --steps 150 --trace
"""

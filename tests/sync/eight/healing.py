"""Backup, go on, restore, let new writes pass the old head: two phones bring everything back, entries and photos.

The restore is told (`tarebook restore`) or untold: somebody unpacks the backup over the data folder, photos and all or
the database alone. What is written before and after, by whom, and who comes back first is by chance.
"""

from __future__ import annotations

import hashlib
import shutil
import zipfile
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Any

from tarebook.garage.records import all_records, all_texts
from tarebook.store.backup import back_up_to
from tarebook.store.rebuild import rebuild
from tarebook.store.restore import restore
from tests.home import Home
from tests.photos import photo_fields, picture, send_photo, sha
from tests.sync.eight import Outcome
from tests.sync.model_phone import ModelPhone
from tests.sync.simulation.truth import Truth

PAST = 40
"""More entries than the backup can have lost: the journal is past its old head when the phones come back."""


@dataclass
class PhotoPhone(ModelPhone):
    """A model phone that keeps the bytes of its photos, and asks in every sync whether they are all over there."""

    photos: dict[str, bytes] = field(default_factory=dict)

    def photograph(self, seed: int, of: str) -> None:
        data = picture(seed)
        self.photos[sha(data)] = data
        self.save("photo", f"photo-{seed}", photo_fields(data, of), photos=[sha(data)])

    def sync(self, home: Home) -> None:
        super().sync(home)
        for data in self.photos.values():
            send_photo(self.device, data)

    def look(self) -> None:
        """Fetches what others have photographed and keeps it, as the app does."""
        for row in self.fold().records.values():
            name = str(row.values.get("sha256", ""))
            if row.kind == "photo" and name not in self.photos:
                answer = self.device.get(f"/photos/{name}")
                assert answer.status_code == 200
                self.photos[name] = answer.data


Way = Callable[[Home, Path], None]


def told(home: Home, file: Path) -> None:
    """`tarebook restore`"""
    home.close()
    restore(home.settings, file)


def untold(home: Home, file: Path) -> None:
    """Somebody unpacks the backup over the data folder."""
    home.close()
    shutil.rmtree(home.settings.data)
    with zipfile.ZipFile(file) as archive:
        archive.extractall(home.settings.data)


def untold_photos_kept(home: Home, file: Path) -> None:
    """Somebody copies only the database back."""
    home.close()
    for old in home.settings.data.glob("tarebook.sqlite3*"):
        old.unlink()
    with zipfile.ZipFile(file) as archive:
        archive.extract("tarebook.sqlite3", home.settings.data)


WAYS: tuple[Way, ...] = (told, untold, untold_photos_kept)


def records(home: Home) -> dict[str, dict[str, Any]]:
    """Every record by its id, deleted ones too, after a rebuild that changed nothing."""
    with home.database.write() as session:
        assert rebuild(session, home.garage).changed == 0
        rows = all_records(session, home.garage, deleted=True)
    return {row["id"]: row for some in rows.values() for row in some}


def work(phones: list[PhotoPhone], home: Home, chance: Random, steps: int) -> Outcome:
    """Both phones save by chance, and are in sync and have each other's photos at the end."""
    done = Outcome()
    for _ in range(steps):
        phone = chance.choice(phones)
        jobs = [name for name, row in phone.fold().records.items() if row.kind == "job"]
        match chance.choice(("new", "edit", "edit", "photo", "sync")) if jobs else "new":
            case "new":
                phone.save("job", f"j{chance.randrange(10**9)}", {"name": "Seats", "hours": "1"})
            case "edit":
                phone.save("job", chance.choice(jobs), {chance.choice(("hours", "money")): str(chance.randrange(99))})
            case "photo":
                phone.photograph(chance.randrange(10**9), chance.choice(jobs))
                done.did["photos"] += 1
            case "sync":
                phone.sync(home)
    for phone in (*phones, *phones):
        phone.sync(home)
        phone.look()
    return done


def healed(folder: Path, bring_back: Way, chance: Random, steps: int) -> Outcome:
    """One garage restored once, in a folder of its own."""
    home = Home(folder / "data")
    phones = [PhotoPhone(home.pair()), PhotoPhone(home.pair())]
    found = work(phones, home, chance, steps)
    back_up_to(home.settings, home.database, folder / "backup.zip")
    found.add(work(phones, home, chance, steps))
    bring_back(home, folder / "backup.zip")
    third = PhotoPhone(home.pair())
    third.pull()
    for number in range(PAST):
        third.save("job", f"new-{number}", {"name": f"new {number}"})
    third.sync(home)
    everybody = [*phones, third]
    for phone in (*chance.sample(everybody, 3), *everybody):
        phone.sync(home)

    truth = Truth()
    for phone in everybody:
        truth.save(phone.held)
    with home.database.read() as session:
        journal = set(all_texts(session, home.garage))
    for text in truth.saved:
        truth.accept(text)
    truth.heard.update(truth.accepted)
    figures = records(home)
    folds = [{name: row.values for name, row in phone.fold().records.items()} for phone in everybody]
    assert folds[0] == folds[1] == folds[2]
    for name in {name for phone in phones for name in phone.photos}:
        if hashlib.sha256(third.device.get(f"/photos/{name}").data).hexdigest() != name:
            found.lost.append(f"photo {name}")
    found.lost += [text for text in truth.saved if text not in journal]
    found.missing += truth.missing(figures)
    found.did.update({"entries": len(journal), "phones": 3, "restores": 1})
    home.close()
    return found


def run(folder: Path, seed: int, times: int, steps: int = 15) -> Outcome:
    """Each way of bringing a backup back, so many times."""
    found = Outcome()
    for number in range(times):
        for way in WAYS:
            name = f"{way.__name__}-{number}"
            found.add(healed(folder / name, way, Random(f"{seed} {name}"), steps))
    return found

"""A server that several tests use one after the other, each with an empty garage of its own in it."""

from collections.abc import Mapping, Sequence
from typing import Any

from tarebook.devices import pairing
from tarebook.garage.author import Change, write
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.database import Database
from tests.browser.serving import Server


class SharedHome(Server):
    """Serves all the time; nothing is switched off or restored here, as others use it too."""

    def another_garage(self) -> None:
        """What the next pairing links lead into."""
        with self._database().write() as session:
            self.garage = garages.create(session).id

    def holds(self, records: Mapping[str, Sequence[Mapping[str, Any]]]) -> None:
        """Records by kind, each with its id, as if phones had written them."""
        changes = [
            Change(kind, str(each["id"]), {name: value for name, value in each.items() if name != "id"})
            for kind, several in records.items()
            for each in several
        ]
        with self._database().write() as session:
            write(session, self.garage, changes)

    def _database(self) -> Database:
        return Database(Settings(data=self.folder / "data").database)

    def pairing_link(self) -> str:
        with self._database().write() as session:
            return f"{self.address}/#pair={pairing.new_code(session, self.garage)}"

"""A server that several tests use one after the other, each with an empty garage of its own in it."""

from tarebook.devices import pairing
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

    def _database(self) -> Database:
        return Database(Settings(data=self.folder / "data").database)

    def pairing_link(self) -> str:
        with self._database().write() as session:
            return f"{self.address}/#pair={pairing.new_code(session, self.garage)}"

"""The web application: its rooms put together."""

from typing import Any

from flask import Flask
from flask_smorest import Api

from tarebook.api import access, answers, app_files, devices, pairing, photos, report, sync, system, watching
from tarebook.api.calc import routes as calc
from tarebook.api.schemas import ErrorSchema
from tarebook.api.services import NAME, Services
from tarebook.devices.allowance import Allowance
from tarebook.devices.tries import Tries
from tarebook.settings import Settings
from tarebook.store.database import Database
from tarebook.store.photos import Photos

ROOMS = (system.room, pairing.room, sync.room, photos.room, devices.room, report.room, calc.room)


TOKEN = (
    "A paired device's token, in the header `Authorization: Bearer TOKEN`. To get one, also for `calc` alone: "
    "`tarebook pair --here` on the home computer prints a link; what stands behind `#pair=` in it is a code, and "
    '`POST /api/v1/pair` answers `{"code": CODE}` with the token, once. The demo asks for no code: `{"code": null}`. '
    "`tarebook calc` on the command line needs no token."
)


class _Api(Api):
    ERROR_SCHEMA = ErrorSchema


def build(settings: Settings | None = None) -> Flask:
    """The application over a database that `store.migrate.prepare` has made ready."""
    settings = settings or Settings.read()
    app = _bare()
    database = Database(settings.database, app)
    watching.watch(app)
    photos_kept, allowance = Photos(settings, database), Allowance(settings.device_entries)
    app.extensions[NAME] = Services(settings, database, photos_kept, Tries(), allowance)
    return app


def _bare() -> Flask:
    """The routes, without anything behind them: enough to write the document."""
    app = Flask("tarebook", static_folder=None)
    app.url_map.merge_slashes = False  # an address is right or it is not: nobody is sent on
    app.config.update(
        API_TITLE="Tarebook",
        API_VERSION="v1",
        OPENAPI_VERSION="3.1.0",
        MAX_CONTENT_LENGTH=access.BODY_BYTES,
    )
    api = _Api(app, spec_kwargs={"info": {"description": "Everything the app uses, and `calc` for anyone."}})
    api.spec.components.security_scheme("token", {"type": "http", "scheme": "bearer", "description": TOKEN})
    for room in ROOMS:
        api.register_blueprint(room)
    app.url_map.converters["file"] = app_files.FileConverter
    app.register_blueprint(app_files.files)
    app.extensions["tarebook_api"] = api
    answers.handle(app)
    access.guard(app)
    return app


def openapi_document() -> dict[str, Any]:
    """The OpenAPI document of all routes."""
    return _bare().extensions["tarebook_api"].spec.to_dict()  # type: ignore[no-any-return]

"""The app's own files."""

from __future__ import annotations

from tests.home import Home


def test_the_page_is_there_without_a_token_and_asked_for_each_time(home: Home) -> None:
    answer = home.client.get("/")
    assert answer.status_code == 200
    assert "Tarebook" in answer.text
    assert answer.headers["Cache-Control"] == "no-cache"


def test_the_worker_is_asked_for_each_time(home: Home) -> None:
    answer = home.client.get("/sw.js")
    assert answer.headers["Cache-Control"] == "no-cache"
    assert answer.mimetype == "text/javascript"


def test_files_named_by_their_content_are_kept_for_ever(home: Home) -> None:
    assert "immutable" in home.client.get("/assets/main-1a2b.js").headers["Cache-Control"]


def test_a_page_that_is_still_the_same_is_not_sent_again(home: Home) -> None:
    mark = home.client.get("/").headers["ETag"]
    assert home.client.get("/", headers={"If-None-Match": mark}).status_code == 304


def test_health_tells_what_a_phone_needs_to_know(home: Home) -> None:
    told = home.client.get("/api/v1/health").json
    assert (told["ok"], told["proto"], told["schema"], told["demo"]) == (True, 1, 1, False)


def test_an_installation_without_the_app_says_so(home: Home) -> None:
    (home.settings.static_app / "index.html").unlink()
    assert home.client.get("/").json["error"]["code"] == "app_missing"

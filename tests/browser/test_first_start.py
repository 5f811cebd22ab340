"""The app from a cold start: it comes from the server once, and afterwards without it."""

from playwright.sync_api import expect


def test_the_app_starts_from_its_own_cache_when_the_server_is_gone(server, make_phone):
    phone = make_phone("anna", server)
    phone.open()
    phone.is_installed()
    phone.close()
    server.kill()
    page = phone.open()
    expect(page.locator("#app")).not_to_be_empty()

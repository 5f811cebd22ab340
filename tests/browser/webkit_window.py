"""
One window of WebKitGTK that a driver may steer, run by the system's own Python: `webkit_window.py FOLDER`, and on a
home network also the port of the look-up that leads to the home computer, and the file of its certificate.

The browser that comes with WebKitGTK forgets everything at its end when it is steered. This one keeps its profile in
FOLDER, as a phone does, so that it can be killed and opened again.
"""

import sys
from pathlib import Path
from typing import Any

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gio, Gtk, WebKit2  # noqa: E402

PHONE = (390, 844)
HOME = "tarebook.local"


def main(folder: Path, *at_home: str) -> None:
    """Open the window and stay until it is killed."""
    manager = WebKit2.WebsiteDataManager(
        base_data_directory=str(folder / "data"), base_cache_directory=str(folder / "cache")
    )
    context = WebKit2.WebContext.new_with_website_data_manager(manager)
    if at_home:
        come_home(manager, context, *at_home)
    view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)
    context.set_preferred_languages(["en-GB"])
    context.set_automation_allowed(True)
    context.connect("automation-started", lambda _, session: steer(session, view))
    window = Gtk.Window()
    window.set_default_size(*PHONE)
    window.add(view)
    window.show_all()
    Gtk.main()


def come_home(manager: Any, context: Any, look_up: str, certificate: str) -> None:
    """Find the home computer by its name, and believe its certificate."""
    led = WebKit2.NetworkProxySettings.new(f"socks5://127.0.0.1:{look_up}", None)
    manager.set_network_proxy_settings(WebKit2.NetworkProxyMode.CUSTOM, led)
    context.allow_tls_certificate_for_host(Gio.TlsCertificate.new_from_file(certificate), HOME)


def steer(session: Any, view: Any) -> None:
    """Tell the driver who we are, and give it our window for its own."""
    info = WebKit2.ApplicationInfo()
    info.set_name("WebKitGTK")
    info.set_version(WebKit2.get_major_version(), WebKit2.get_minor_version(), WebKit2.get_micro_version())
    session.set_application_info(info)
    session.connect("create-web-view", lambda _: view)


main(Path(sys.argv[1]), *sys.argv[2:])

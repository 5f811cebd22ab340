"""A real Chromium in which a page saves jobs as fast as its screen allows, and tells each that it has called saved."""

from __future__ import annotations

import json
import sqlite3
import time
from contextlib import closing
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, Playwright, expect

from tests.browser.doing import begin, in_sync, join
from tests.browser.phone import Phone
from tests.browser.serving import Server
from tests.sync.eight import Outcome

MOST_SECONDS = 60
expect.set_options(timeout=1000 * MOST_SECONDS)  # of a busy machine; nothing is asserted about speed
# Types a name, presses the button, and tells it once the saved job stands on the screen, again and again.
SAVING = """(word) => {
  const until = async (find) => {
    for (;;) {
      const found = find();
      if (found) return found;
      await new Promise((done) => setTimeout(done, 3));
    }
  };
  const titled = (title) => document.querySelector("h1")?.textContent === title;
  const type = (box, text) => {
    const { prototype } = box instanceof HTMLTextAreaElement ? HTMLTextAreaElement : HTMLInputElement;
    box.focus(); // what is set while nobody is in the field is kept at once, and the button is gone
    Object.getOwnPropertyDescriptor(prototype, "value").set.call(box, text);
    box.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const reading = (tags, words) => [...document.querySelectorAll(tags)].find((one) => words.test(one.textContent));
  (async () => {
    for (let number = 1; !window.enough; number++) {
      const name = `${word} ${number}`;
      location.hash = "#/job/new";
      const label = await until(() => titled("New job") && reading("label", /^What is done$/));
      type(document.getElementById(label.htmlFor), name);
      (await until(() => reading(".dock button:enabled", /^Go on to its parts/))).click();
      await until(() => titled(name));
      await window.told(name);
    }
    window.ended = true;
  })();
}"""
# Read past the app: what lies on the disk, not what it makes of it.
ON_DISK = """async () => {
  const texts = [];
  for (const { name } of await indexedDB.databases()) {
    const db = await new Promise((done, failed) => {
      const asked = indexedDB.open(name);
      asked.onsuccess = () => done(asked.result);
      asked.onerror = failed;
    });
    if (db.objectStoreNames.contains("entries")) {
      texts.push(...await new Promise((done, failed) => {
        const asked = db.transaction("entries").objectStore("entries").getAll();
        asked.onsuccess = () => done(asked.result.map((row) => row.text));
        asked.onerror = failed;
      }));
    }
    db.close();
  }
  return texts;
}"""


class Saver(Phone):
    """A phone whose pages can save by themselves. `told`: the names they have called saved."""

    def __init__(self, playwright: Playwright, folder: Path, server: Server) -> None:
        super().__init__(playwright, folder, server.address)
        self.server = server
        self.told: list[str] = []
        self.times = 0

    def start(self) -> Page:
        page = super().start()
        self.context.expose_function("told", lambda name: self.told.append(name))
        return page

    def first(self) -> Page:
        """Joins, and makes the car."""
        page = join(self, self.server)
        begin(page, "Coupe", "980 kg")
        in_sync(page)
        return page

    def saves(self, page: Page) -> None:
        self.times += 1
        page.evaluate(SAVING, f"{self.profile.parent.name} {self.times} job")

    def waits_for(self, more: int) -> None:
        """Until the pages have told of so many more."""
        enough, until = len(self.told) + more, time.monotonic() + MOST_SECONDS
        while len(self.told) < enough:
            assert time.monotonic() < until, f"the page saves no more: {self.page.inner_text('body')[:500]}"
            self.page.wait_for_timeout(2)

    def stops(self, *pages: Page) -> None:
        """The pages finish what they are at."""
        for page in pages:
            page.evaluate("window.enough = true")
            page.wait_for_function("() => window.ended", polling=50)  # a tab behind another draws no frames
            page.evaluate("window.enough = window.ended = false")

    def lost(self) -> list[str]:
        """What was called saved and is not on the disk."""
        here = names(json.loads(text) for text in self.page.evaluate(ON_DISK))
        return [name for name in self.told if name not in here]


def names(entries: Any) -> set[str]:
    return {str(entry["set"].get("name")) for entry in entries}


def shown(page: Page, told: list[str]) -> list[str]:
    """What was called saved and is not among the jobs on the screen."""
    page.evaluate("location.hash = '#/jobs'")
    expect(page.get_by_role("heading", name="Jobs", exact=True)).to_be_visible()
    if told:
        expect(page.get_by_text(told[-1], exact=True)).to_be_visible()
    words = set(page.locator(".row-name").all_inner_texts())
    return [name for name in told if name not in words]


def at_home(server: Server, told: list[str]) -> Outcome:
    """What of it is not in the home computer's journal, and what not in its figures."""
    with closing(sqlite3.connect(server.folder / "data" / "tarebook.sqlite3")) as plain:
        journal = names(json.loads(text) for (text,) in plain.execute("SELECT text FROM entry"))
    figures = {job["name"] for job in json.loads(server.run("export", "-"))["jobs"]}
    lost = [name for name in told if name not in journal]
    return Outcome(lost=lost, missing=[name for name in told if name not in figures])

/**
 * Put into the page before its own scripts, for the app as people get it has no door for a bench. `firstScreen` resolves with
 * the milliseconds from the start of the navigation until the car's weight was drawn, and until a tap on the trim was answered.
 */

// A frame's callback and then a task: by then the frame has been handed to the screen.
const drawn = (seen) =>
  new Promise((resolve) => {
    const look = () => {
      if (!seen()) return;
      watcher.disconnect();
      requestAnimationFrame(() => setTimeout(() => resolve(performance.now())));
    };
    const watcher = new MutationObserver(look);
    watcher.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
    look();
  });

const road = () => document.querySelector("input[type=radio][value=road]");

globalThis.firstScreen = (async () => {
  const weight = await drawn(() => document.querySelector(".weight-now .figure"));
  road().click();
  return { weight, tap: await drawn(() => road().checked) };
})();

/** How many entries the phone's own store holds. */
globalThis.entriesHeld = async () => {
  const { name } = (await indexedDB.databases()).find(({ name }) => /^tarebook-(?!session)/.test(name));
  const answer = (request) => new Promise((resolve) => (request.onsuccess = () => resolve(request.result)));
  const db = await answer(indexedDB.open(name));
  const count = await answer(db.transaction("entries").objectStore("entries").count());
  db.close();
  return count;
};

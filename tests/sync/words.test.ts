/** The words about where records are: never more than is known. */

import { describe, expect, it } from "vitest";

import { type Whereabouts, wordsFor } from "../../webapp/src/sync/words";

const HOME: Whereabouts = {
  waiting: 0,
  photosWaiting: 0,
  photoShare: 0,
  stuck: 0,
  photosStuck: 0,
  inBackup: false,
  lastHeard: "2026-05-02T10:00:00Z",
  failing: false,
  protected: true,
};

describe("what the phone says", () => {
  it.each<[string, Partial<Whereabouts>, string[]]>([
    ["everything is home", {}, ["On the home computer"]],
    ["everything is in a backup", { inBackup: true }, ["In a backup"]],
    ["the home computer was never heard", { lastHeard: null }, ["Not yet heard from the home computer"]],
    ["records wait", { waiting: 7 }, ["On this phone only (7)", "Deleting the app or its data destroys 7 records"]],
    [
      "a backup is older than what waits",
      { waiting: 1, inBackup: true },
      ["On this phone only (1)", "Deleting the app or its data destroys 1 record"],
    ],
    [
      "photos are going up",
      { photosWaiting: 3 },
      ["Keep open: 3 photos still going up", "Deleting the app or its data destroys 3 photos"],
    ],
    [
      "photos are half up",
      { photosWaiting: 3, photoShare: 0.409 },
      ["Keep open: 3 photos still going up, 40 % done", "Deleting the app or its data destroys 3 photos"],
    ],
    [
      "photos cannot go up",
      { photosWaiting: 3, failing: true },
      ["Photos on this phone only (3)", "Deleting the app or its data destroys 3 photos"],
    ],
    [
      "both wait",
      { waiting: 2, photosWaiting: 1 },
      [
        "On this phone only (2)",
        "Keep open: 1 photo still going up",
        "Deleting the app or its data destroys 2 records and 1 photo",
      ],
    ],
    [
      "one stands back",
      { waiting: 1, stuck: 1 },
      [
        "On this phone only (1)",
        "The home computer has not taken 1 record so far; export keeps everything",
        "Deleting the app or its data destroys 1 record",
      ],
    ],
    [
      "a photo is damaged",
      { photosStuck: 1 },
      ["On the home computer", "1 photo cannot go to the home computer and will stay here"],
    ],
    [
      "storage may be cleared",
      { protected: false },
      ["On the home computer", "Storage is not protected: install to the home screen"],
    ],
    ["the browser does not say", { protected: null }, ["On the home computer"]],
  ])("when %s", (_when, where, words) => expect(wordsFor({ ...HOME, ...where })).toEqual(words));
});

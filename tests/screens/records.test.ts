/** Records: what a file of everything carries of the photos, said before somebody relies on it. */
import { expect, test } from "vitest";
import { photoWords } from "../../webapp/src/screens/Records/photoWords";
import { countedBySize } from "../../webapp/src/store/takeout";

test("a photo kept in both sizes is one photo in full", () => {
  const keys = [
    ["a", "full"],
    ["a", "thumb"],
    ["b", "thumb"],
  ] as const;
  expect(countedBySize(keys)).toEqual({ full: 1, small: 1 });
});

test("what is only small, and what is not there at all, is said", () => {
  expect(photoWords({ full: 0, small: 0 }, 0)).toBe("There are no photos yet.");
  expect(photoWords({ full: 3, small: 0 }, 3)).toBe("Photos in the file: 3 in full.");
  expect(photoWords({ full: 3, small: 2 }, 7)).toBe(
    "Photos in the file: 3 in full, 2 only small, 2 not on this phone at all. The rest is on the home computer.",
  );
});

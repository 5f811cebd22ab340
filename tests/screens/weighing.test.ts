/** The trail of a weighing: all its looks in one line. */
import { expect, test } from "vitest";
import { shownWords } from "../../webapp/src/parts/weighing/shownWords";

test("a difference is said with both of its looks, the unit once where they share it", () => {
  const held = { method: "difference", shown: "82.4 kg", shown_empty: "75.1 kg" } as const;
  expect(shownWords(held)).toBe("82.4 − 75.1 kg");
  expect(shownWords({ ...held, shown_empty: "165 lb" })).toBe("82.4 kg − 165 lb");
  expect(shownWords({ ...held, shown: "181 lb 4 oz", shown_empty: "165 lb 3 oz" })).toBe("181 lb 4 oz − 165 lb 3 oz");
});

test("two ends are added, pieces are counted, and one look is itself", () => {
  expect(shownWords({ method: "ends", shown: "8.2 kg", shown_far: "9 kg" })).toBe("8.2 + 9 kg");
  expect(shownWords({ method: "batch", shown: "18 oz", pieces: 12 })).toBe("18 oz, 12 pieces");
  expect(shownWords({ method: "direct", shown: "6 3/8 oz" })).toBe("6 3/8 oz");
});

/**
 * Waits for the press that is under way to become a click.
 *
 * A press first takes the focus from a field and only then becomes a click, where it ends. What moves the page on losing
 * the focus (a keypad that closes) must wait that long, or the button slips away under the thumb and the click is lost.
 */

let isDown = false;
addEventListener("pointerdown", () => (isDown = true), { capture: true });
for (const end of ["pointerup", "pointercancel"]) addEventListener(end, () => (isDown = false), { capture: true });

/** Calls `then` once nothing is pressed and the click, if there was one, has been heard. */
export function afterPress(then: () => void): void {
  const soon = () => setTimeout(then);
  if (isDown) addEventListener("pointerup", soon, { capture: true, once: true });
  else soon();
}

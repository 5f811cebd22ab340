/** Brings the first field that keeps a form from being saved into sight, out of any closed words around it. */

const FIELDS = 'main :is([aria-invalid="true"], [data-needed])';

export function showFirstTrouble(): void {
  const field = document.querySelector<HTMLElement>(FIELDS);
  if (!field) return;
  for (let around = field.closest("details"); around; around = around.parentElement?.closest("details") ?? null) {
    around.open = true;
  }
  field.scrollIntoView({ block: "center" });
  // A thumb is not sent into a field: the keypad would come up over the reason.
  if (!matchMedia("(pointer: coarse)").matches) field.focus({ preventScroll: true });
}

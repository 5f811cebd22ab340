/** Whether anything of a part's weighing has been typed yet. */
import type { Picked } from "../controls/picking";

/** `id`: of the weighing it would become. */
export type PartTyped = {
  id?: string;
  of: Picked;
  shown: string;
  second: string;
  note: string;
  shots: readonly unknown[];
};

/** True when nothing worth keeping has been entered. */
export function isBlank(form: PartTyped): boolean {
  return (
    form.shown === "" && form.second === "" && form.note === "" && form.shots.length === 0 && form.of.text.trim() === ""
  );
}

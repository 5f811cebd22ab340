/** Whether anything of a part's weighing, or of a donor part's, has been typed yet. */
import { garage } from "../../garage/garage";
import type { Picked } from "../controls/picking";
import { nameOf } from "../words/naming";

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

/** `part`: of the record it would become. */
export type DonorTyped = Record<"part" | "name" | "shown" | "row" | "asking", string> & {
  insteadOf: Picked;
  shots: readonly unknown[];
};

/** A name taken from the part it would replace is not typed. */
export function isDonorBlank({ name, insteadOf, shown, row, asking, shots }: DonorTyped): boolean {
  const old = garage.value.one("part", insteadOf.id);
  const isTaken = name === (old ? nameOf(old) : "");
  return isTaken && ![shown, row, asking].some(Boolean) && shots.length === 0;
}

/** The photos of one record, and a way to add one: it is saved at once, as a record of its own. */
import { useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { garage } from "../../garage/garage";
import { save } from "../../garage/write";
import { TroubleNotice } from "../frame/Notice";
import { troubleOf } from "../frame/trouble";
import { PhotoStrip, type Shot, TakePhoto } from "./Photos";

/** Photos of any of the records, oldest first. */
export function photosOf(...records: string[]): { sha256: string; label: string }[] {
  return garage.value
    .of("photo")
    .filter(({ values }) => records.includes(values.of ?? ""))
    .map(({ values: { sha256 = "" } }, i) => ({ sha256, label: `${i + 1}` }));
}

export function RecordPhotos({ of, also = [] }: { of: string; also?: string[] }) {
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const add = (shot: Shot) =>
    save([], [{ of, ...shot }]).then(
      () => setTrouble(null),
      (error: unknown) => setTrouble(troubleOf(error)),
    );
  return (
    <div class="stack">
      <PhotoStrip photos={photosOf(of, ...also)} />
      <TakePhoto onShot={(shot) => void add(shot)} onTrouble={setTrouble} />
      <TroubleNotice trouble={trouble} />
    </div>
  );
}

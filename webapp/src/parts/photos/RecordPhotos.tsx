/** The photos seen at one record, and a way to add one: it is saved at once, as a record of its own. */
import { useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { save } from "../../garage/write";
import { hashOf } from "../../store/photo_rows";
import { TroubleNotice } from "../frame/Notice";
import { Section } from "../frame/Screen";
import { troubleOf } from "../frame/trouble";
import { AlreadyHere, PhotoStrip, type Shot, TakePhoto } from "./Photos";
import { photosAt, placesOf } from "./shown";

export function RecordPhotos({ of }: { of: string }) {
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const [isTwice, setTwice] = useState(false);
  const photos = photosAt(of);
  const add = async (shot: Shot) => {
    const known = placesOf(hashOf(shot.bytes)).some((place) => place.of === of);
    setTwice(known);
    if (!known) await save([], [{ of, ...shot }]).catch((error: unknown) => setTrouble(troubleOf(error)));
  };
  return (
    <Section title={photos.length ? "Photos" : "Photos: none yet"}>
      <div class="stack">
        <PhotoStrip photos={photos} />
        {isTwice && <AlreadyHere />}
        <TakePhoto onShot={(shot) => void add(shot)} onTrouble={setTrouble} />
        <TroubleNotice trouble={trouble} />
      </div>
    </Section>
  );
}

/** The way out: one file with everything, how it is taken in again, and which photos are in it. */
import { useEffect, useState } from "preact/hooks";
import { garage } from "../../garage/garage";
import { Rescue } from "../../parts/takeout/Rescue";
import { type PhotosInside, photosInside } from "../../store/takeout";
import { photoWords } from "./photoWords";

export function Export() {
  const known = new Set(garage.value.of("photo").map(({ values }) => values.sha256)).size;
  const [inside, setInside] = useState<PhotosInside | null>(null);
  useEffect(() => void photosInside().then(setInside, () => undefined), [known]);
  return (
    <div class="stack">
      <p>Every record on this phone, with the readings exactly as typed.</p>
      {inside && <p>{photoWords(inside, known)}</p>}
      <p>
        To take it in again, run <code>tarebook import FILE</code> on the home computer, with the file’s name.
      </p>
      <Rescue label="Export everything" />
    </div>
  );
}

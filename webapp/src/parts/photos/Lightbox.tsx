/** One photo in full, the records it is of, and the ways to move it to another or to delete it. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { garage } from "../../garage/garage";
import { deletion } from "../../garage/undo";
import { type Change, save } from "../../garage/write";
import { type Offer, type Picked, RecordPick } from "../controls/RecordPick";
import { Button } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { History } from "../history/History";
import { refName, sentenceCase } from "../words/naming";
import { addressOf, noteOf, offersFor } from "./moving";
import { placesOf } from "./shown";
import { usePhoto } from "./usePhoto";

type Props = { sha256: string; onClose: () => void };

export function Lightbox({ sha256, onClose }: Props) {
  const photo = usePhoto(sha256, "full");
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const places = placesOf(sha256);
  return (
    <dialog ref={dialog} class="lightbox" onClose={onClose} aria-label="Photo">
      <div class="lightbox-picture">
        {typeof photo === "string" ? <img src={photo} alt="The photo, full size" /> : <Missing why={photo} />}
      </div>
      <div class="lightbox-about">
        {places.map(({ of, photos }) => (
          <Of
            key={of}
            of={of}
            photos={photos.map(({ id }) => id)}
            sha256={sha256}
            isOnly={places.length === 1}
            onDone={onClose}
          />
        ))}
      </div>
      <button type="button" class="button lightbox-close" onClick={onClose}>
        Close
      </button>
    </dialog>
  );
}

function Missing({ why }: { why: AppError | null }) {
  return (
    <div class="stack">
      <p>This photo is not on this phone yet.</p>
      <TroubleNotice trouble={why} />
    </div>
  );
}

type OfProps = { of: string; photos: string[]; sha256: string; isOnly: boolean; onDone: () => void };

/** One record it is of. Done, it closes: the line that takes it back lies beneath. */
function Of({ of, photos, sha256, isOnly, onDone }: OfProps) {
  const [moving, setMoving] = useState(false);
  const saving = useSaving();
  const change = (changes: Change[]) => void saving.run(() => save(changes).then(onDone));
  return (
    <section class="stack" aria-label={refName(of)}>
      <Name of={of} />
      {moving ? (
        <MoveTo
          offers={offersFor(of, sha256)}
          onMove={(to) => change(photos.map((record) => ({ kind: "photo", record, set: { of: to } })))}
          onBack={() => setMoving(false)}
        />
      ) : (
        <div class="pair">
          <Button label="Move to…" disabled={saving.busy} onClick={() => setMoving(true)} />
          <Button
            label={isOnly ? "Delete photo" : "Delete it here"}
            disabled={saving.busy}
            onClick={() => change(photos.map((record) => deletion("photo", record)))}
          />
        </div>
      )}
      <TroubleNotice trouble={saving.trouble} />
      {photos.map((photo) => (
        <History key={photo} of={photo} />
      ))}
    </section>
  );
}

function Name({ of }: { of: string }) {
  const rec = garage.value.byId.get(of);
  const address = addressOf(of);
  const name = <strong>{sentenceCase(refName(of))}</strong>;
  return (
    <p>
      {address && address !== location.hash ? <a href={address}>{name}</a> : name}{" "}
      {rec && <span class="small quiet">{noteOf(rec)}</span>}
    </p>
  );
}

type Moving = { offers: readonly Offer[]; onMove: (to: string) => void; onBack: () => void };

function MoveTo({ offers, onMove, onBack }: Moving) {
  const [picked, setPicked] = useState<Picked>({ id: null, text: "" });
  return (
    <>
      <RecordPick
        label="Move to"
        offers={offers}
        value={picked}
        onValue={setPicked}
        hint="A job, a part, a weighing, a scale: tap one, or type its name."
      />
      <div class="pair">
        <Button label="Not now" onClick={onBack} />
        <Button look="main" label="Move it there" disabled={!picked.id} onClick={() => onMove(picked.id!)} />
      </div>
    </>
  );
}

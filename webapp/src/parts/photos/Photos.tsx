/** Photos of a record: taken, chosen, looked at. Bytes live in the phone's own store; what shows is a blob: address. */

import { useEffect, useRef, useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { type Found, photoUrl } from "../../garage/photos";
import { type Shrunk, shrink } from "../../store/shrink";
import { Button } from "../frame/Button";
import { Icon } from "../frame/Icon";
import { TroubleNotice } from "../frame/Notice";
import { troubleOf } from "../frame/trouble";

export type Shot = Shrunk;

type TakeProps = { onShot: (shot: Shot) => void; onTrouble: (trouble: AppError | null) => void };

export function TakePhoto({ onShot, onTrouble }: TakeProps) {
  const [busy, setBusy] = useState(false);
  const take = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    input.value = "";
    if (!file) return;
    setBusy(true);
    onTrouble(null); // what was wrong with the one before says nothing of this one
    try {
      onShot(await shrink(file));
    } catch (error) {
      onTrouble(troubleOf(error));
    } finally {
      setBusy(false);
    }
  };
  return (
    <div class="pair">
      <PickFile label={busy ? "Making it smaller…" : "Take a photo"} icon="camera" camera onPick={take} />
      <PickFile label="From the library" icon="picture" onPick={take} />
    </div>
  );
}

function PickFile({
  label,
  icon,
  camera,
  onPick,
}: {
  label: string;
  icon: "camera" | "picture";
  camera?: boolean;
  onPick: (input: HTMLInputElement) => void;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class="button" onClick={() => input.current?.click()}>
        <Icon name={icon} />
        {label}
      </button>
      <input
        ref={input}
        type="file"
        accept="image/*"
        capture={camera ? "environment" : undefined}
        hidden
        onChange={(event) => onPick(event.currentTarget)}
        data-photo={camera ? "camera" : "library"}
      />
    </>
  );
}

/** A photo not yet saved, with a way to drop it. */
export function ShotPreview({ shot, onDrop }: { shot: Shot; onDrop: () => void }) {
  const url = useObjectUrl(shot.bytes, shot.type);
  return (
    <div class="spread">
      {url && <img src={url} alt="The photo just taken" width="96" height="96" class="shot" />}
      <span class="small quiet num">{Math.round(shot.bytes.byteLength / 1000)} kB</span>
      <Button look="plain" label="Remove" onClick={onDrop} />
    </div>
  );
}

/** A blob: address of what is no file, for as long as it is shown. */
export function useObjectUrl(content: BlobPart, type: string): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([content], { type }));
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [content, type]);
  return url;
}

function usePhoto(sha256: string, size: "thumb" | "full"): Found {
  const [photo, setPhoto] = useState<Found>(null);
  useEffect(() => {
    let live = true;
    void photoUrl(sha256, size).then((found) => live && setPhoto(found));
    return () => {
      live = false;
    };
  }, [sha256, size]);
  return photo;
}

export function Thumb({ sha256 }: { sha256: string }) {
  const photo = usePhoto(sha256, "thumb");
  return typeof photo === "string" ? (
    <img class="thumb" src={photo} alt="" />
  ) : (
    <span class="thumb" aria-hidden="true" />
  );
}

export function PhotoStrip({ photos }: { photos: { sha256: string; label: string }[] }) {
  const [open, setOpen] = useState<string | null>(null);
  if (!photos.length) return null;
  return (
    <div class="photos">
      {photos.map((photo) => (
        <button
          type="button"
          key={photo.sha256}
          aria-label={`Look at photo: ${photo.label}`}
          onClick={() => setOpen(photo.sha256)}
        >
          <Thumb sha256={photo.sha256} />
        </button>
      ))}
      {open && <Lightbox sha256={open} onClose={() => setOpen(null)} />}
    </div>
  );
}

function Lightbox({ sha256, onClose }: { sha256: string; onClose: () => void }) {
  const photo = usePhoto(sha256, "full");
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} class="lightbox" onClose={onClose} aria-label="Photo">
      {typeof photo === "string" ? <img src={photo} alt="The photo, full size" /> : <Missing why={photo} />}
      <button type="button" onClick={onClose}>
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

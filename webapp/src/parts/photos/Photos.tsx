/** Photos of a record: taken, chosen, looked at. Bytes live in the phone's own store; what shows is a blob: address. */

import { useEffect, useRef, useState } from "preact/hooks";
import type { AppError } from "../../errors";
import type { Rec } from "../../garage/garage";
import { type Shrunk, shrink } from "../../store/shrink";
import { Button } from "../frame/Button";
import { Icon } from "../frame/Icon";
import { troubleOf } from "../frame/trouble";
import { refName } from "../words/naming";
import { Lightbox } from "./Lightbox";
import { usePhoto } from "./usePhoto";
import "./Photos.css";

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

/** The same picture twice on one record would only be in the way, and nothing is lost without it. */
export function AlreadyHere() {
  return (
    <p class="small" role="status">
      This photo is here already.
    </p>
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

export function Thumb({ sha256 = "" }: { sha256?: string }) {
  const photo = usePhoto(sha256, "thumb");
  return typeof photo === "string" ? (
    <img class="thumb" src={photo} alt="" />
  ) : (
    <span class="thumb" aria-hidden="true" />
  );
}

export function PhotoStrip({ photos }: { photos: readonly Rec<"photo">[] }) {
  const [open, setOpen] = useState<string | null>(null);
  if (!photos.length) return null;
  return (
    <div class="photos">
      {photos.map(({ id, values: { sha256 = "", of } }, at) => (
        <button
          type="button"
          key={id}
          aria-label={`Look at photo ${at + 1}, of ${refName(of)}`}
          onClick={() => setOpen(sha256)}
        >
          <Thumb sha256={sha256} />
        </button>
      ))}
      {open && <Lightbox sha256={open} onClose={() => setOpen(null)} />}
    </div>
  );
}

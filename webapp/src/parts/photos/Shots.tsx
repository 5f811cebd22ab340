/** The photos of a form not saved yet: each can be dropped, and another taken while there is room. */
import { useState } from "preact/hooks";
import type { AppError } from "../../errors";
import type { NewPhoto } from "../../garage/photos";
import { hashOf } from "../../store/photo_rows";
import { TroubleNotice } from "../frame/Notice";
import { AlreadyHere, type Shot, ShotPreview, TakePhoto } from "./Photos";

type With = { shots: Shot[] };
type Props = { form: With; change: (patch: With) => void; most?: number };

export function Shots({ form: { shots }, change, most = Infinity }: Props) {
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const [isTwice, setTwice] = useState(false);
  const add = (shot: Shot) => {
    const known = shots.some(({ bytes }) => hashOf(bytes) === hashOf(shot.bytes));
    setTwice(known);
    if (!known) change({ shots: [...shots, shot] });
  };
  return (
    <>
      {shots.map((shot, i) => (
        <ShotPreview key={i} shot={shot} onDrop={() => change({ shots: shots.filter((each) => each !== shot) })} />
      ))}
      {isTwice && <AlreadyHere />}
      {shots.length < most && <TakePhoto onShot={add} onTrouble={setTrouble} />}
      <TroubleNotice trouble={trouble} />
    </>
  );
}

/** As they are saved with the record they are of. */
export function shotsOf(of: string, { shots }: With): NewPhoto[] {
  return shots.map((shot) => ({ of, ...shot }));
}

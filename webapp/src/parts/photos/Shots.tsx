/** The photos of a form not saved yet: each can be dropped, and another taken while there is room. */
import { useState } from "preact/hooks";
import type { AppError } from "../../errors";
import type { NewPhoto } from "../../garage/photos";
import { TroubleNotice } from "../frame/Notice";
import { type Shot, ShotPreview, TakePhoto } from "./Photos";

type With = { shots: Shot[] };
type Props = { form: With; change: (patch: With) => void; most?: number };

export function Shots({ form: { shots }, change, most = Infinity }: Props) {
  const [trouble, setTrouble] = useState<AppError | null>(null);
  return (
    <>
      {shots.map((shot, i) => (
        <ShotPreview key={i} shot={shot} onDrop={() => change({ shots: shots.filter((each) => each !== shot) })} />
      ))}
      {shots.length < most && (
        <TakePhoto onShot={(shot) => change({ shots: [...shots, shot] })} onTrouble={setTrouble} />
      )}
      <TroubleNotice trouble={trouble} />
    </>
  );
}

/** As they are saved with the record they are of. */
export function shotsOf(of: string, { shots }: With): NewPhoto[] {
  return shots.map((shot) => ({ of, ...shot }));
}

/** A button that saves at once; what kept it from that stands above it. */
import { Button, type Look } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";

type Props = { label: string; look?: Look; disabled?: boolean; onSave: () => Promise<unknown> };

export function SaveButton({ label, look = "wide", disabled = false, onSave }: Props) {
  const { trouble, busy, run } = useSaving();
  return (
    <>
      <TroubleNotice trouble={trouble} />
      <Button look={look} label={label} disabled={busy || disabled} onClick={() => void run(onSave)} />
    </>
  );
}

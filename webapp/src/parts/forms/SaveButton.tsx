/** A button that saves at once; what kept it from that stands above it. */
import type { ComponentChildren } from "preact";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "./saving";

type Props = { onSave: () => Promise<void>; look?: string; disabled?: boolean; children: ComponentChildren };

export function SaveButton({ onSave, look = "button wide", disabled = false, children }: Props) {
  const { trouble, busy, run } = useSaving();
  return (
    <>
      <TroubleNotice trouble={trouble} />
      <button type="button" class={look} disabled={busy || disabled} onClick={() => void run(onSave)}>
        {children}
      </button>
    </>
  );
}

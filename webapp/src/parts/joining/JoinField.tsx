/** Joining by what the home computer shows: its square code scanned, or its short code or link typed. */

import { useEffect, useState } from "preact/hooks";
import { session } from "../../garage/session";
import { place } from "../../route";
import { TextField } from "../controls/Field";
import { Button } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { isHomeComputer } from "../words/whereabouts";
import { join, joining } from "./join";
import { bareCode, codeIn } from "./pairingCode";
import { hasCamera, ScanCode } from "./ScanCode";

export function JoinField({ follow = false }: { follow?: boolean }) {
  const [text, setText] = useState("");
  const { busy, trouble } = joining.value;
  const code = codeIn(text) ?? bareCode(text);
  const isScannable = hasCamera() && !isHomeComputer();
  // A link followed while the app is open changes only the address, which `place` tells of.
  const followed = follow && place.value.path.length ? codeIn(location.hash) : null;
  useEffect(() => {
    if (followed) void join(followed);
  }, [followed]);
  return (
    <>
      {isScannable && <ScanCode onCode={(scanned) => void join(scanned)} />}
      <TextField
        label={isHomeComputer() ? "Pairing link or code" : "Or type the code"}
        value={text}
        onValue={setText}
        most={400}
        hint={isHomeComputer() ? "The whole link, or the code at its end." : "8 letters and digits, or the whole link."}
      />
      <TroubleNotice trouble={trouble ?? session.value.trouble ?? null} />
      <Button
        look={isScannable ? "wide" : "main"}
        label={busy ? "Joining…" : "Join"}
        disabled={busy || !code}
        onClick={() => code && void join(code)}
      />
    </>
  );
}

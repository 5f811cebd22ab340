/** On the home computer: a code for a phone to scan or type, good once. */

import { useEffect, useState } from "preact/hooks";
import type { Invitation } from "../../generated/routes";
import { Button } from "../../parts/frame/Button";
import { Notice, TroubleNotice } from "../../parts/frame/Notice";
import { useSaving } from "../../parts/frame/saving";
import { useObjectUrl } from "../../parts/photos/Photos";
import { askHome } from "./askHome";

export function AddPhone() {
  const [invitation, setInvitation] = useState<Invitation | null>(null);
  const inviting = useSaving();
  const invite = () => inviting.run(async () => setInvitation(await askHome("POST /pair/invitations", {})));
  return (
    <div class="stack">
      {invitation ? (
        <Shown key={invitation.code} {...invitation} onOver={() => setInvitation(null)} />
      ) : (
        <p>A code works once, for five minutes. The phone then waits until you say yes here.</p>
      )}
      <TroubleNotice trouble={inviting.trouble} />
      <Button
        look={invitation ? "wide" : "main"}
        label={invitation ? "Show a fresh code" : "Add a phone"}
        disabled={inviting.busy}
        onClick={() => void invite()}
      />
    </div>
  );
}

function Shown({ link, code, svg, seconds, onOver }: Invitation & { onOver: () => void }) {
  const picture = useObjectUrl(svg, "image/svg+xml");
  const minutes = useMinutes(seconds, onOver);
  return (
    <Notice>
      <ol class="by-hand">
        <li>
          On the phone, open <strong class="address">{new URL(link).origin}</strong>. The first time, begin at the door
          page, whose address <code>tarebook serve --lan</code> prints: it makes the phone trust this computer.
        </li>
        <li>In Tarebook on the phone, scan this square or type the code.</li>
      </ol>
      <div class="invitation">
        {picture && <img src={picture} alt="The square code for the phone" width="220" height="220" />}
        <p>
          <span class="small quiet">Code to type</span>
          <br />
          <strong class="short-code num">{code}</strong>
          <br />
          <span class="small quiet">{minutes}</span>
        </p>
      </div>
    </Notice>
  );
}

/** How long the code is good, in words; counted here, for the two clocks may differ. */
function useMinutes(seconds: number, onOver: () => void): string {
  const [left, setLeft] = useState(seconds);
  useEffect(() => {
    const over = performance.now() + seconds * 1000;
    const timer = setInterval(() => setLeft((over - performance.now()) / 1000), 1000);
    return () => clearInterval(timer);
  }, [seconds]);
  useEffect(() => {
    if (left <= 0) onOver();
  }, [left]);
  return left > 60 ? `Good for ${Math.ceil(left / 60)} minutes` : "Good for less than a minute";
}

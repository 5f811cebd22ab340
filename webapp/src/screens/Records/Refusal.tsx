/** Why the last try did not get through, and where to go because of it. */

import type { AppError } from "../../errors";
import { ButtonLink } from "../../parts/frame/Button";
import { TroubleNotice } from "../../parts/frame/Notice";
import { to } from "../../route";

export function Refusal({ refusal }: { refusal: AppError | null }) {
  const code = refusal?.code;
  return (
    <>
      <TroubleNotice trouble={refusal} />
      {(code === "revoked" || code === "unpaired") && <Way href={to("devices")}>Join again</Way>}
      {code === "app_older" && <Way href={to("devices")}>Look for the new version</Way>}
      {code === "unreachable" && location.protocol === "https:" && <IsItTrusted />}
    </>
  );
}

function Way({ href, children }: { href: string; children: string }) {
  return <ButtonLink look="wide" label={children} href={href} />;
}

/** A page cannot tell a home computer that is away from one whose certificate the phone no longer believes. */
function IsItTrusted() {
  return (
    <p class="small">
      If it is on, and this phone at home: open the door page, whose address <code>tarebook serve --lan</code> prints.
      It says whether the phone still trusts the home computer. A wrong date on either of them is enough to end that.
    </p>
  );
}

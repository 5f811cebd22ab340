/** What the core warns of, in the sentences of the error table. */
import type { Warned } from "../../core/garage/records";
import { describe } from "../../errors";
import "../../laterErrors";
import { Notice } from "./Notice";

export function Warnings({ of }: { of: readonly Warned[] }) {
  if (!of.length) return null;
  return (
    <Notice sort="caution">
      {of.map(({ code, data }, i) => {
        const said = describe(code, data);
        return (
          <p key={i} class="small">
            <strong>{said.sentence}</strong> {said.do}
          </p>
        );
      })}
    </Notice>
  );
}

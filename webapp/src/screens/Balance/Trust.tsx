/** What the figures take on trust, and which parts each is about, so that the right one can be measured. */
import type { Warned } from "../../core/garage/records";
import { describe } from "../../errors";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";
import { partsOf } from "./reasons";

export function Trust({ of }: { of: readonly Warned[] }) {
  if (!of.length) return null;
  return (
    <Section title="Taken on trust">
      {of.map((warning, i) => (
        <About key={i} warning={warning} />
      ))}
    </Section>
  );
}

function About({ warning }: { warning: Warned }) {
  const said = describe(warning.code, warning.data);
  const parts = partsOf(warning);
  return (
    <div>
      <p class="small">
        <strong>{said.sentence}</strong> {said.do}
      </p>
      {parts.length > 0 && (
        <Disclosure title={parts.length === 1 ? refName(parts[0]) : `Which: ${parts.length} parts`}>
          <div>
            {parts.map((part) => (
              <Row key={part} name={refName(part)} href={to("part", part)} />
            ))}
          </div>
        </Disclosure>
      )}
    </div>
  );
}

/** What official weigh-ins were foretold to show, and what they showed: how far the tool's word is to be trusted. */
import { foretoldSentence, scoreSentence } from "../../core/standing/sentences";
import type { Standing } from "../../core/standing/standing";
import { massUnit } from "../../garage/units";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { to } from "../../route";
import { weighInName } from "./weighInName";

export function ForetoldAndRead({ history }: Pick<Standing, "history">) {
  const score = scoreSentence(history);
  if (!score) return null;
  return (
    <Section title="Predicted and read" aside={<span class="brass num">{score.text}</span>}>
      <div>
        {history.toReversed().map(({ weigh_in, foretold }) => {
          const note = foretold && `${foretoldSentence(foretold, massUnit()).text}.`;
          return (
            note && <Row key={weigh_in} name={weighInName(weigh_in)} note={note} href={to("weigh-in", weigh_in)} />
          );
        })}
      </div>
      <p class="small quiet">
        What official scales should show was noted before each weigh-in. Inside: the two differ by no more than their ±
        allow.
      </p>
    </Section>
  );
}

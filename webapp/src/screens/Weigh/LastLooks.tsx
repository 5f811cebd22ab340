/** The last few looks at a scale, parts and whole car alike, newest first; each leads to its trail. */
import { say } from "../../answers";
import { garage, type Rec } from "../../garage/garage";
import { Row } from "../../parts/figures/Row";
import { replacedIn } from "../../parts/forms/corrected";
import { Section } from "../../parts/frame/Screen";
import { totalWords } from "../../parts/weighIn/totalWords";
import { readOne } from "../../parts/weighing/readOne";
import { shownWords } from "../../parts/weighing/shownWords";
import { momentOf, sayMoment } from "../../parts/words/moments";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";
import { newestLooks } from "./newestLooks";

const SHOWN = 8;

export function LastLooks() {
  const now = garage.value;
  const replaced = [...replacedIn("weighing"), ...replacedIn("weigh_in")];
  const looks = newestLooks([...now.of("weighing"), ...now.of("weigh_in")], SHOWN, replaced);
  return (
    <Section title="Weighed last">
      {looks.length ? (
        looks.map((rec) => <Look key={rec.id} rec={rec} />)
      ) : (
        <p class="quiet">Nothing yet. Any scale will do: what it can tell is worked out from its steps.</p>
      )}
    </Section>
  );
}

function Look({ rec }: { rec: Rec<"weighing"> | Rec<"weigh_in"> }) {
  const when = sayMoment(momentOf(rec));
  if (rec.kind === "weigh_in") {
    return (
      <Row
        name="The whole car"
        note={`${when}${rec.values.official ? ", official" : ""}`}
        value={totalWords(rec)}
        href={to("weigh-in", rec.id)}
      />
    );
  }
  const { reading } = readOne({ id: rec.id, ...rec.values });
  const { of, what = "Something" } = rec.values;
  const shown = shownWords(rec.values);
  return (
    <Row
      name={of ? refName(of) : what}
      note={`showed ${shown}, ${when}`}
      value={reading ? say(reading.mass) : shown}
      href={to("weighing", rec.id)}
    />
  );
}

/**
 * Where the weight is: what stands on which wheels, where the centre of gravity lies, and every weight moved at its place in the car.
 *
 * Words first, then the drawing, then the figures of every state. A weight on the drawing is tapped to read it, and moved only after
 * a button says so: a thumb that scrolls never shifts anything.
 */
import { useMemo, useState } from "preact/hooks";
import { book, known, stand } from "../../answers";
import { unitOf } from "../../garage/units";
import { TrimChoice } from "../../parts/controls/TrimChoice";
import { CentreClose } from "../../parts/drawing/CentreClose";
import { newMover } from "../../parts/drawing/mover";
import type { Spot } from "../../parts/drawing/view";
import { useDraft } from "../../parts/forms/useDraft";
import { Screen } from "../../parts/frame/Screen";
import { to } from "../../route";
import { AfterJobs } from "./AfterJobs";
import { Changes } from "./Changes";
import { Corners } from "./Corners";
import { InWords } from "./InWords";
import { Looking } from "./Looking";
import { Onward } from "./Onward";
import { Placing } from "./Placing";
import { aboutCar } from "./reasons";
import { States } from "./States";
import { Trust } from "./Trust";
import { statesOf, tell } from "./told";
import "./Balance.css";

/** What was chosen here, kept should the page be killed. */
type Asked = { jobs: string[] | null };

export function Balance() {
  const { form: asked, change } = useDraft<Asked>("balance", () => ({ jobs: null }));
  const jobs = asked?.jobs ?? null;
  const told = useMemo(() => tell(book.value, known.value, jobs, stand.value), [book.value, known.value, jobs]);
  const [placing, setPlacing] = useState<string | null>(null);
  const [closeUp] = useState(() => newMover<Record<string, Spot>>());
  const mark = told.marks.find(({ key }) => key === placing) ?? null;
  const close = <CentreClose states={statesOf(told)} unit={unitOf("length")} mover={closeUp} />;
  const { balance } = told;
  return (
    <Screen title="Where the weight is" back={to("car")}>
      <div class="stack balance">
        <TrimChoice />
        <InWords told={told} />
        {mark ? (
          <Placing key={mark.key} told={told} mark={mark} closeUp={closeUp} onDone={() => setPlacing(null)}>
            {close}
          </Placing>
        ) : (
          <Looking told={told} onPlace={setPlacing}>
            {close}
          </Looking>
        )}
        <States balance={balance} />
        <Changes balance={balance} />
        <Corners balance={balance} />
        <AfterJobs balance={balance} jobs={jobs} onJobs={(ids) => change({ jobs: ids })} />
        <Onward balance={balance} />
        <Trust of={[...aboutCar(book.value.warnings), ...balance.warnings]} />
      </div>
    </Screen>
  );
}

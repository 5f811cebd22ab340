/** What would lower the doubt: worked out once the screen stands, by a file of its own. */

import { Loaded } from "../../parts/frame/Loaded";
import { Section } from "../../parts/frame/Screen";

const load = async () => (await import("./Lowerings")).Lowerings;

export function Surer() {
  return (
    <Section title="What would make it surer">
      <Loaded load={load} draw={(Lowerings) => <Lowerings />} />
    </Section>
  );
}

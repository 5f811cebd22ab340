/** Below what one came to see: where the weight comes from, and what is open. A file of its own, as the first screen's stays small. */
import { Open } from "./Open";
import { StageTotals } from "./StageTotals";
import { WeighIns } from "./WeighIns";
import { WhereWeight } from "./WhereWeight";

export function Below() {
  return (
    <div class="two-columns">
      <div>
        <StageTotals />
        <WhereWeight />
        <WeighIns />
      </div>
      <Open />
    </div>
  );
}

/** The car's weight against the laps: a brass line in its band of doubt, the minimum below, the worst moment ringed. */
import { minimumWords, say } from "../../answers";
import type { FuelRun } from "../../core/fuelRun/fuelRun";
import { showInHand } from "../../core/numbers/shown";
import { expanded } from "../../core/numbers/uncertain";
import { massUnit } from "../../garage/units";
import { drawnOf, HEIGHT, through, WIDTH } from "./drawing";

const EDGE = 12;

export function RunDrawing({ run, label }: { run: FuelRun; label: string }) {
  const drawn = drawnOf(run);
  const [first, last] = [run.laps[0]?.weight, run.laps.at(-1)?.weight];
  if (!drawn || !first || !last) return null;
  const judged = run.laps[run.worst ?? -1]?.judged;
  const isUnder = (judged?.margin.value ?? 0) < 0;
  // The weight comes down from the upper left: words of a level stand where it is not.
  const isHigh = (y: number) => y < (drawn.line[0]!.y + drawn.line.at(-1)!.y) / 2;
  const end = run.runs_dry ? `lap ${run.runs_dry}, dry` : `flag, lap ${run.laps.length - 1}`;
  return (
    <figure class={isUnder ? "run-drawing is-under" : "run-drawing"}>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
        <path class="band" d={`${through(drawn.band)} Z`} />
        {drawn.minimum !== null && (
          <Level
            y={drawn.minimum}
            name="least"
            words={`minimum ${minimumWords.value ?? ""}`}
            atRight={isHigh(drawn.minimum)}
            below
          />
        )}
        {drawn.inHand !== null && judged && (
          <Level
            y={drawn.inHand}
            name="keep"
            words={`keep ${showInHand(judged.in_hand, massUnit(), expanded(judged.margin))} in hand`}
            atRight={isHigh(drawn.inHand)}
          />
        )}
        <path class="weight" d={through(drawn.line)} />
        {drawn.worst && <circle class="worst" cx={drawn.worst.x} cy={drawn.worst.y} r="6" />}
        <text class="figure-text" x={EDGE} y="16">
          {say(first)}
        </text>
        <text class="figure-text" x={WIDTH - EDGE} y="16" text-anchor="end">
          {say(last)}
        </text>
        <text x={EDGE} y={HEIGHT - 6}>
          start
        </text>
        <text x={WIDTH - EDGE} y={HEIGHT - 6} text-anchor="end">
          {end}
        </text>
      </svg>
      <figcaption class="small quiet">
        The band is how sure the weight is, 19 times in 20.{drawn.worst && " The ring is the moment that decides."}
        {drawn.isFar && " The minimum lies far below this drawing."}
      </figcaption>
    </figure>
  );
}

type LevelProps = { y: number; name: string; words: string; atRight: boolean; below?: boolean };

/** A line across with its words on it, below it for the minimum so that the two never meet. */
function Level({ y, name, words, atRight, below = false }: LevelProps) {
  const [x, anchor] = atRight ? [WIDTH - EDGE - 2, "end"] : [EDGE + 2, "start"];
  return (
    <g class={name}>
      <path d={`M${EDGE} ${y} H${WIDTH - EDGE}`} />
      <text x={x} text-anchor={anchor} y={below ? y + 15 : y - 5}>
        {words}
      </text>
    </g>
  );
}

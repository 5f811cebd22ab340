/**
 * Draws an outline by tapping its corners: a tap adds one, a drag moves one, each snaps to a step that is said.
 *
 * The table of corners below it holds the same corners as text, for a keyboard, a screen reader and odd sizes.
 */

import { useState } from "preact/hooks";
import type { Warned } from "../../core/garage/records";
import type { CornerText } from "../../core/sheet/sheetCorners";
import { unitOf } from "../../garage/units";
import { Choice } from "../../parts/controls/Choice";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Button } from "../../parts/frame/Button";
import type { Spot } from "../../parts/sheet/geometry";
import { cornerAt, EDGE, FIELDS, fieldFor, SIDE, SPAN, STEPS, scaleOf, snapped, spotsOf, toPad } from "./pad";
import { useCorners } from "./useCorners";
import { troubleWords } from "./worked";
import "./Pad.css";

type Props = {
  corners: readonly CornerText[];
  onCorners: (corners: CornerText[]) => void;
  /** The outline around a hole, in metres. */
  around?: readonly Spot[];
  trouble: Warned | null;
};

export function Pad({ corners, onCorners, around = [], trouble }: Props) {
  const unit = unitOf("length");
  const spots = spotsOf(corners, unit);
  const [field, setField] = useState(() => fieldFor([...spots, ...around], unit));
  const [step, setStep] = useState(STEPS[unit]![2]!);
  const scale = scaleOf(field, unit);
  const hand = useCorners({
    corners,
    onCorners,
    snap: (spot) => snapped(spot, scale, unit, step),
    find: (spot) => cornerAt(spot, spots, scale),
  });
  const press = (event: PointerEvent) => {
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    hand.press(spotOf(event));
  };
  return (
    <div class="stack">
      <p class="small" aria-live="polite">
        {hand.held === null ? "Tap to set a corner; drag one to move it." : cornerWords(hand.held, corners[hand.held]!)}
      </p>
      <svg
        class="pad"
        viewBox={`0 0 ${SIDE} ${SIDE}`}
        role="img"
        aria-label={`Field to draw on, ${field} ${unit} wide, with ${corners.length} corners`}
        onPointerDown={press}
        onPointerMove={(event) => hand.move(spotOf(event))}
        onPointerUp={hand.release}
        onPointerCancel={hand.release}
      >
        <Grid field={field} />
        {around.length > 0 && (
          <path
            class="around"
            d={pathThrough(
              around.map((spot) => toPad(spot, scale)),
              true,
            )}
          />
        )}
        <Outline spots={spots} scale={scale} trouble={trouble} held={hand.held} />
      </svg>
      {trouble && (
        <p class="trouble" role="status">
          {troubleWords(trouble)}
        </p>
      )}
      <div class="pair">
        <Button label="Undo" disabled={!hand.undo} onClick={hand.undo ?? undefined} />
        <Button
          label={hand.last === null ? "Take out a corner" : `Take out corner ${hand.last + 1}`}
          disabled={hand.last === null}
          onClick={() => hand.takeOut(hand.last!)}
        />
      </div>
      <Disclosure title={`Snaps to ${step} ${unit}; the field is ${field} ${unit} wide`}>
        <Choice
          label={`Corners snap to, ${unit}`}
          value={step}
          options={STEPS[unit]!.map((value) => ({ value, label: value }))}
          onValue={setStep}
        />
        <Choice
          label={`Width of the field, ${unit}`}
          value={String(field)}
          options={FIELDS[unit]!.map((value) => ({ value: String(value), label: String(value) }))}
          onValue={(value) => setField(Number(value))}
        />
      </Disclosure>
    </div>
  );
}

/** Where a pointer is, in the drawing's units. */
function spotOf(event: PointerEvent): Spot {
  const frame = (event.currentTarget as Element).getBoundingClientRect();
  return [((event.clientX - frame.left) / frame.width) * SIDE, ((event.clientY - frame.top) / frame.height) * SIDE];
}

function cornerWords(at: number, [across, up]: CornerText): string {
  return `Corner ${at + 1}: ${across} across, ${up} up`;
}

function Grid({ field }: { field: number }) {
  const lines = Array.from({ length: 11 }, (_, tenth) => EDGE + (SPAN * tenth) / 10);
  const [low, high] = [lines[0]!, lines[10]!];
  return (
    <g class="grid">
      {lines.map((x) => (
        <path key={x} d={`M${x} ${SIDE - low}V${SIDE - high}M${low} ${SIDE - x}H${high}`} />
      ))}
      {[0, 5, 10].map((tenth) => (
        <g key={tenth}>
          <text x={within(lines[tenth]!)} y={SIDE - 6}>
            {(field * tenth) / 10}
          </text>
          {tenth > 0 && (
            <text transform={`translate(15 ${within(SIDE - lines[tenth]!)}) rotate(-90)`}>{(field * tenth) / 10}</text>
          )}
        </g>
      ))}
    </g>
  );
}

type OutlineProps = { spots: readonly (Spot | null)[]; scale: number; trouble: Warned | null; held: number | null };

function Outline({ spots, scale, trouble, held }: OutlineProps) {
  const known = spots.map((spot) => spot && toPad(spot, scale));
  const line = known.filter((spot) => spot !== null);
  const [first, latest] = [line[0], line.at(-1)];
  return (
    <>
      <path class="drawn" d={pathThrough(line, false)} />
      {line.length > 2 && <path class="closing" d={pathThrough([latest!, first!], false)} />}
      {trouble?.code === "sheet_crosses" && <path class="crossing" d={crossed(known, trouble)} />}
      {known.map(
        (spot, at) =>
          spot && <Corner key={at} spot={spot} number={at + 1} away={outward(spot, line)} isHeld={at === held} />,
      )}
    </>
  );
}

function Corner({ spot: [x, y], number, away, isHeld }: { spot: Spot; number: number; away: Spot; isHeld: boolean }) {
  return (
    <g class="corner">
      <circle cx={x} cy={y} r={isHeld ? 12 : 7} />
      <text x={within(x + 16 * away[0])} y={within(y + 16 * away[1])}>
        {number}
      </text>
    </g>
  );
}

/** So far from the edge that a number there is not cut off. */
function within(place: number): number {
  return Math.min(Math.max(place, 10), SIDE - 18);
}

/** The way from the middle of all corners out past this one, so that its number is clear of the lines. */
function outward([x, y]: Spot, line: readonly Spot[]): Spot {
  const [middleX, middleY] = ([0, 1] as const).map(
    (axis) => line.reduce((sum, spot) => sum + spot[axis], 0) / line.length,
  ) as [number, number];
  const [dx, dy] = [x - middleX, y - middleY];
  const far = Math.hypot(dx, dy);
  return far < 1 ? [0.7, -0.7] : [dx / far, dy / far];
}

function crossed(known: readonly (Spot | null)[], { data }: Warned): string {
  return [data.side, data.other]
    .map((number) => [known[Number(number) - 1], known[Number(number) % known.length]].filter((spot) => !!spot))
    .map((side) => pathThrough(side, false))
    .join("");
}

function pathThrough(spots: readonly Spot[], closed: boolean): string {
  return spots.length ? `M${spots.map(([x, y]) => `${x} ${y}`).join("L")}${closed ? "Z" : ""}` : "";
}

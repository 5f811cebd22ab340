/** Where on the car? One tap on the drawn car, or on what the name or the job says of it; nobody has to answer. */
import { useMemo } from "preact/hooks";
import { book } from "../../answers";
import { garage } from "../../garage/garage";
import { type Change, save } from "../../garage/write";
import { Button } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { Section } from "../frame/Screen";
import { useSaving } from "../frame/saving";
import { nameOf, refName, sentenceCase } from "../words/naming";
import { CarBody } from "./CarBody";
import { shapeOf } from "./shape";
import { topView } from "./view";
import { FOLLOWS, placing, type Zone, zonesNamed } from "./zones";
import "./drawing.css";
import "./WhereOnCar.css";

/** As drawn from above: the middle from nose to tail, and what lies to each side. */
const MIDDLE: readonly Zone[] = ["nose", "engine bay", "bulkhead", "dash", "cabin front", "cabin rear", "boot", "tail"];
const LEFT: readonly (readonly [zone: Zone, row: number, rows: number])[] = [
  ["front wheels", 2, 1],
  ["left door", 4, 2],
  ["rear wheels", 7, 1],
];
const RIGHT: typeof LEFT = [
  ["underneath front", 2, 1],
  ["right door", 4, 2],
  ["underneath rear", 7, 1],
];
const LEVELS: readonly Zone[] = ["roof", "glass", "floor"];
const TYPICAL = 2.5; // m; of a car whose wheelbase nobody has measured: common practice, no source

/** `parts`: those that sit at one place, such as the old and the new of a swap; a part that has a zone keeps it. */
export function WhereOnCar({ parts }: { parts: readonly string[] }) {
  const saving = useSaving();
  const open = parts.flatMap((id) => garage.value.one("part", id) ?? []).filter(({ values }) => !values.zone);
  const shape = useMemo(() => shapeOf(book.value.car, TYPICAL)!, [book.value.car]);
  const view = useMemo(() => topView(shape), [shape]);
  if (!open.length) return null;
  const put = (zone: Zone) =>
    void saving.run(() =>
      save(open.map((part): Change => ({ kind: "part", record: part.id, set: placing(zone, part.values) }))),
    );
  const beside = besideOf(parts);
  const named = zonesNamed(nameOf(open[0]!)).filter((zone) => zone !== beside?.zone);
  const tap = (zone: Zone, style: Record<string, number | string>) => (
    <button key={zone} type="button" class="zone" style={style} disabled={saving.busy} onClick={() => put(zone)}>
      {sentenceCase(zone).replace("neath", "\u00ADneath")}
    </button>
  );
  return (
    <Section title="Where on the car?">
      <div class="stack">
        {beside && (
          <Button
            look="wide"
            label={`${sentenceCase(beside.zone)}, as ${refName(beside.part)}`}
            onClick={() => put(beside.zone)}
          />
        )}
        {named.length > 0 && (
          <div class="pair">
            {named.map((zone) => (
              <Button key={zone} label={sentenceCase(zone)} onClick={() => put(zone)} />
            ))}
          </div>
        )}
        <TroubleNotice trouble={saving.trouble} />
        <div class="zones" role="group" aria-label="The car from above, front up">
          <svg class="car-view" viewBox={`0 0 ${view.width} ${view.height}`} aria-hidden="true">
            <CarBody shape={shape} view={view} />
          </svg>
          {MIDDLE.map((zone, at) => tap(zone, { gridColumn: 2, gridRow: at + 1 }))}
          {[LEFT, RIGHT].map((side, at) =>
            side.map(([zone, row, rows]) => tap(zone, { gridColumn: 1 + 2 * at, gridRow: `${row} / span ${rows}` })),
          )}
        </div>
        <div class="zones-levels">{LEVELS.map((zone) => tap(zone, {}))}</div>
        <p class="small quiet">Skip it if you like; it only says where the weight is. {FOLLOWS}</p>
      </div>
    </Section>
  );
}

/** What the part came with: the one it takes the place of, or the first part of a job that has a zone. */
function besideOf(parts: readonly string[]): { part: string; zone: Zone } | null {
  const lines = garage.value.of("job_part");
  const mine = new Set(lines.filter(({ values }) => parts.includes(values.part ?? "")).map(({ values }) => values.job));
  const old = parts.map((part) => garage.value.one("part", part)?.values.instead_of);
  const others = [
    ...old,
    ...parts,
    ...lines.filter(({ values }) => mine.has(values.job)).map(({ values }) => values.part),
  ];
  for (const part of others) {
    const zone = garage.value.one("part", part)?.values.zone;
    if (part && zone) return { part, zone };
  }
  return null;
}

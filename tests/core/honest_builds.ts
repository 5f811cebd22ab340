/**
 * Simulated builds whose truth is made here: parts, what was known of each beforehand, and what honest displays showed.
 *
 * Nothing of the product is used but its dialect. Spreads, as people have them (common practice, no source): guesses are
 * off by 30 %, quotes by 10 % (standard deviations of the ratio), what replaces a part is 10-75 % lighter, the two sides
 * of a car differ by 6 %, a second weighing is on another scale and sometimes has the bolts with it.
 */

export type Random = () => number;
/** One reading: what the scale showed, the part, and how its mass was known before; `kg`: what was on the scale, truly. */
export type Look = { id: string; of: string; how: How; kg: number; digits: string; unit: Unit; scale: string };
export type How = "guessed" | "quoted" | "worked out" | "twin" | "alike" | "second weighing" | "nothing";
export type Unit = "kg" | "g" | "lb" | "oz";
type Plain = Record<string, unknown> & { id: string };
export type Build = { lists: Record<string, Plain[]>; looks: Look[] };

/** One unit in kg: the international pound of 1959 (NIST SP 811, B.8), its sixteenth, and the metric ones. */
export const KG: Readonly<Record<Unit, number>> = { kg: 1, g: 0.001, lb: 0.45359237, oz: 0.45359237 / 16 };
type Scale = { id: string; kind: string; unit: Unit; division: string; step: number; places: number; most: number };
const SCALES: readonly Scale[] = [
  { id: "s-kitchen-g", kind: "kitchen", unit: "g", division: "1 g", step: 1, places: 0, most: 5 },
  { id: "s-kitchen-oz", kind: "kitchen", unit: "oz", division: "0.1 oz", step: 0.1, places: 1, most: 5 },
  { id: "s-hook-kg", kind: "hanging", unit: "kg", division: "0.01 kg", step: 0.01, places: 2, most: 150 },
  { id: "s-hook-lb", kind: "hanging", unit: "lb", division: "0.1 lb", step: 0.1, places: 1, most: 150 },
];
const HOWS: readonly How[] = ["guessed", "quoted", "worked out", "twin", "alike", "second weighing", "nothing"];

/** A factor about one with this standard deviation of its logarithm. */
function about(random: Random, spread: number): number {
  const normal = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return Math.exp(spread * normal);
}

/** So many parts, each known in one way before its weighing. */
export function honestBuild(random: Random, parts: number): Build {
  const build: Build = { lists: { scales: [...scales()], parts: [], weighings: [] }, looks: [] };
  const gains = new Map(SCALES.map(({ id }) => [id, about(random, 0.005)]));
  for (let n = 0; n < parts; n++) {
    const how = HOWS[Math.floor(random() * HOWS.length)] as How;
    const kg = 0.08 * (30 / 0.08) ** random();
    add(build, `p${n}`, how, kg, random, gains);
  }
  return build;
}

function* scales(): Generator<Plain> {
  for (const { id, kind, unit, division } of SCALES) yield { id, kind, unit, division, name: id };
}

function add(build: Build, id: string, how: How, kg: number, random: Random, gains: ReadonlyMap<string, number>): void {
  const { parts, weighings } = build.lists as { parts: Plain[]; weighings: Plain[] };
  const part: Plain = { id, name: `Part ${id}`, zone: "nose" };
  const show = (of: string, mass: number) => {
    const fit = SCALES.filter(({ most, step, unit }) => mass < most && mass > 20 * step * KG[unit]);
    const scale = fit[Math.floor(random() * fit.length)] as Scale;
    const count = Math.round((mass * (gains.get(scale.id) as number)) / KG[scale.unit] / scale.step);
    const look = {
      id: `w-${of}-${weighings.length}`,
      of,
      how,
      kg: mass,
      digits: (count * scale.step).toFixed(scale.places),
    };
    return { ...look, unit: scale.unit, scale: scale.id };
  };
  const keep = ({ id: own, of, digits, unit, scale }: Look) =>
    weighings.push({ id: own, of, method: "direct", shown: `${digits} ${unit}`, scale });
  const claim = (basis: string, spread: number) => {
    part.claim = `${(kg * about(random, spread)).toFixed(3)} kg`;
    part.claim_basis = basis;
  };
  const before = (other: Plain, mass: number) => {
    parts.push(other);
    keep(show(other.id, mass));
  };
  if (how === "guessed") claim("guessed", 0.3);
  if (how === "quoted") claim("quoted", 0.1);
  if (how === "worked out") claim("worked_out", 0.05);
  if (how === "twin") {
    before({ id: `${id}-old`, name: `Old ${id}`, zone: "nose" }, kg / (0.25 + 0.65 * random()));
    part.instead_of = `${id}-old`;
  }
  if (how === "alike") {
    part.name = `Left ${id}`;
    before({ id: `${id}-other`, name: `Right ${id}`, zone: "nose" }, kg * about(random, 0.06));
  }
  if (how === "second weighing") keep(show(id, kg * (random() < 0.25 ? 1 + 0.06 * random() : 1)));
  parts.push(part);
  const look = show(id, kg);
  keep(look);
  build.looks.push(look);
}

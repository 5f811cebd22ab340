/**
 * Sheet stock: what a piece will weigh before it is cut.
 *
 * Mass = area × thickness × density. Each has a range and the mass carries all of them as named sources: every length as
 * far as its last digit, the thickness by what such sheet may really be, the density by its material. Pieces of one
 * material share its density, and pieces sold as one thickness share that, so that a sum of pieces is no surer than
 * its sheet. An outline that crosses itself is no piece and is refused, and so is a hole that cannot be in it
 * (`core/sheet/sheetOutline`).
 */

import "../../laterErrors";
import { type Warned, warned } from "../garage/records";
import type { Quantity } from "../numbers/quantity";
import { compare, ratio, toNumber } from "../numbers/ratio";
import {
  divide,
  multiply,
  rectangular,
  resolution,
  type Uncertain,
  uncertain,
  weightedSum,
} from "../numbers/uncertain";
import type { Density } from "../wholeCar/fuel";
import { onGrid, type Spot, twiceArea } from "./polygon";
import type { Corner } from "./sheetCorners";
import { outlineTrouble, type Shape } from "./sheetOutline";
import {
  CONVENTION,
  INCH,
  LEGAL_OUNCES,
  LEGAL_SHARE,
  MAKERS_INCHES,
  MATERIALS,
  type Material,
  OUNCES_FT2,
} from "./sheetStock";

const THICKEST = ratio(1n, 10n); // m; whatever is thicker is no sheet
const LEAST = 0.0001; // kg; what is lighter is a slip of a unit
const ALIKE = 1e-3; // of the mass: a table that lists no more than this above it says the same

/**
 * One kind of piece. Holes that are polygons lie where they are drawn, on the outline's own axes.
 *
 * `density`: instead of the material's. `thickness`: as sold, or as `measured`; or `gauge`: table ("msg", "ussg")
 * and number. `within`: how far any cut may be off (± m); without it the last digit typed stands in.
 */
export type Piece = {
  readonly id: string;
  readonly material: string;
  readonly outline: Shape;
  readonly holes: readonly Shape[];
  readonly density: Density | null;
  readonly thickness: Quantity | null;
  readonly measured: boolean;
  readonly gauge: readonly [string, number] | null;
  readonly within: Quantity | null;
};

/** One piece, in m², m, kg/m³ and kg. `listed`: the mass a gauge table gives for it, where there is one. */
export type SheetMass = {
  readonly area: Uncertain;
  readonly thickness: Uncertain;
  readonly density: Uncertain;
  readonly mass: Uncertain;
  readonly listed: number | null;
  readonly warnings: readonly Warned[];
};

/** How much more a gauge table lists than comes out here, as a share; null where it says the same. */
export function listedOver({ mass, listed }: SheetMass): number | null {
  const over = listed === null ? 0 : listed / mass.value - 1;
  return over > ALIKE ? over : null;
}

/** What the piece comes to, or why it comes to nothing. */
export function sheet(piece: Piece): SheetMass | Warned {
  const trouble = stockTrouble(piece) ?? outlineTrouble([piece.outline, ...piece.holes]);
  if (trouble) return trouble;
  const area = areaOf(piece);
  if (area.value <= 0) return warned("sheet_holes_too_large");
  const density = densityOf(piece);
  const [perArea, thickness] = perAreaOf(piece, density);
  const mass = multiply(area, perArea);
  if (mass.value < LEAST) return warned("sheet_small");
  const listed = listedOf(piece);
  return {
    area,
    thickness,
    density,
    mass,
    listed: listed === null ? null : area.value * listed,
    warnings: warningsOf(piece),
  };
}

function stockTrouble({ density, material, gauge, thickness }: Piece): Warned | null {
  if (density === null && !MATERIALS.has(material)) return warned("sheet_material_unknown", { material });
  if (density !== null && !(density.low > 0 && density.low <= density.high)) return warned("sheet_density_range");
  if (gauge === null) return thicknessTrouble(thickness);
  const [table, number] = gauge;
  if (material !== "steel") return warned("sheet_gauge_not_steel", { material });
  const known = (table === "msg" || table === "ussg") && LEGAL_OUNCES.has(number);
  return known ? null : warned("sheet_gauge_unknown", { gauge: number, table });
}

function thicknessTrouble(thickness: Quantity | null): Warned | null {
  if (!thickness) return warned("sheet_no_thickness");
  return compare(thickness.exact, THICKEST) > 0 ? warned("sheet_thick", { text: thickness.reads }) : null;
}

function areaOf(piece: Piece): Uncertain {
  const outline = shapeArea(piece.outline, piece, "outline");
  const holes = piece.holes.map((hole, at) => shapeArea(hole, piece, `hole${at + 1}`));
  return weightedSum([outline, ...holes], [1, ...piece.holes.map(({ count }) => -count)]);
}

function shapeArea(shape: Shape, piece: Piece, name: string): Uncertain {
  if (shape.form === "polygon") return polygonArea(shape, piece, name);
  const source = `cut:${piece.id}:${name}`;
  const [first, second] = shape.sizes as [Quantity, Quantity];
  if (shape.form === "circle") {
    const across = first.value;
    const part = 0.5 * Math.PI * across * doubt(first, piece);
    return uncertain(0.25 * Math.PI * across * across, { [`${source}:across`]: part });
  }
  const width = uncertain(first.value, { [`${source}:width`]: doubt(first, piece) });
  const height = uncertain(second.value, { [`${source}:height`]: doubt(second, piece) });
  return multiply(width, height);
}

/** Each coordinate is a reading of its own: ∂A/∂x_i = (y_i+1 − y_i−1)/2, ∂A/∂y_i = (x_i−1 − x_i+1)/2. */
function polygonArea({ corners }: Shape, piece: Piece, name: string): Uncertain {
  const { spots, steps } = onGrid([corners.map(([x, y]) => [x.exact, y.exact] as const)]);
  const twice = twiceArea(spots[0] as Spot[]);
  const half = twice > 0n ? 0.5 : -0.5;
  const sources: Record<string, number> = {};
  for (const [at, [x, y]] of corners.entries()) {
    const [beforeX, beforeY] = corners.at(at - 1) as Corner;
    const [afterX, afterY] = corners[(at + 1) % corners.length] as Corner;
    const source = `cut:${piece.id}:${name}:${at + 1}`;
    sources[`${source}x`] = half * (afterY.value - beforeY.value) * doubt(x, piece);
    sources[`${source}y`] = half * (beforeX.value - afterX.value) * doubt(y, piece);
  }
  return uncertain(toNumber(ratio(twice > 0n ? twice : -twice, 2n * steps * steps)), sources);
}

function doubt(size: Quantity, { within }: Piece): number {
  return within ? rectangular(within.value) : resolution(size.last_digit);
}

function densityOf({ id, material, density }: Piece): Uncertain {
  const { low, high } = density ?? (MATERIALS.get(material) as Material).density;
  return uncertain(0.5 * (low + high), { [`density:${density ? id : material}`]: rectangular(0.5 * (high - low)) });
}

/** Mass of a square metre, and thickness. Sheet of the legal gauge is sold by weight: its thickness follows. */
function perAreaOf(piece: Piece, density: Uncertain): [Uncertain, Uncertain] {
  if (piece.gauge?.[0] === "ussg") {
    const weight = (LEGAL_OUNCES.get(piece.gauge[1]) as number) * OUNCES_FT2;
    const perArea = uncertain(weight, { [`gauge:ussg:${piece.gauge[1]}`]: weight * rectangular(LEGAL_SHARE) });
    return [perArea, divide(perArea, density)];
  }
  const thickness = thicknessOf(piece);
  return [multiply(thickness, density), thickness];
}

function thicknessOf({ id, material, thickness, measured, gauge }: Piece): Uncertain {
  const typed = thickness as Quantity; // a piece with neither it nor a gauge has trouble
  if (!gauge && measured) return uncertain(typed.value, { [`callipers:${id}`]: resolution(typed.last_digit) });
  const [sold, name] = gauge
    ? [(MAKERS_INCHES.get(gauge[1]) as number) * INCH, `msg ${gauge[1]}`]
    : [typed.value, typed.reads];
  const [low, high] = sharesOf(material);
  const halfWidth = 0.5 * (high - low) * sold;
  return uncertain(0.5 * (low + high) * sold, { [`thickness:${material}:${name}`]: rectangular(halfWidth) });
}

/** How thin and how thick it may really be; a material nobody knows is taken as rolled metal is. */
function sharesOf(material: string): [number, number] {
  const { thinnest, thickest } = MATERIALS.get(material) ?? (MATERIALS.get("steel") as Material);
  return [thinnest, thickest];
}

/** kg/m² that a table of the gauge prints. */
function listedOf({ gauge }: Piece): number | null {
  if (gauge === null) return null;
  const [table, number] = gauge;
  if (table === "ussg") return (LEGAL_OUNCES.get(number) as number) * OUNCES_FT2;
  return (MAKERS_INCHES.get(number) as number) * INCH * CONVENTION;
}

function warningsOf({ gauge, measured }: Piece): Warned[] {
  if (gauge) return [warned(gauge[0] === "msg" ? "sheet_gauge_convention" : "sheet_gauge_legal")];
  return measured ? [] : [warned("sheet_as_sold")];
}

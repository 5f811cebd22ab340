/**
 * What a worked-out piece is written down as: the claim of a part, so that it counts until somebody weighs it.
 *
 * A claim is a rectangle: a value and how far it may be off. The piece's doubt is a standard deviation u, so the
 * half-width is √3 u, the rectangle that has the same u; to it comes what the claim lost in being rounded, and then it
 * is rounded up. So what is written down never claims to be surer than what was worked out.
 */

import { readMass } from "../numbers/quantity";
import { toNumber } from "../numbers/ratio";
import { showClaim, showGuard } from "../numbers/shown";
import { showArea } from "../numbers/shownLater";
import { u } from "../numbers/uncertain";
import type { Piece, SheetMass } from "./sheet";
import { MATERIALS } from "./sheetStock";

/** Fields of a part, as typed: `claim` and `claim_within` in a unit of mass, `claim_from` in words. */
export type Claim = { readonly claim: string; readonly claim_within: string; readonly claim_from: string };

const FINER = 10; // a claim is kept to this part of what it is sure to

/** The claim for a part that is this piece. */
export function claimOf(piece: Piece, found: SheetMass, massUnit: string, lengthUnit: string): Claim {
  const halfWidth = Math.sqrt(3) * u(found.mass);
  const claim = showClaim(found.mass.value, massUnit, halfWidth / FINER);
  const lost = Math.abs(toNumber(readMass(claim).exact) - found.mass.value);
  const within = halfWidth + lost;
  return {
    claim,
    claim_within: showGuard(within, massUnit, within / FINER),
    claim_from: `${stockWords(piece)}, ${showArea(found.area.value, lengthUnit)}`,
  };
}

/** What it is cut from: "1.5 mm aluminium", "20 gauge steel". */
export function stockWords({ material, gauge, thickness }: Piece): string {
  const name = MATERIALS.get(material)?.name ?? (material.trim() || "sheet");
  return `${gauge ? `${gauge[1]} gauge` : (thickness?.reads ?? "")} ${name}`.trim();
}

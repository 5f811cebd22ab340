/** What the vectors of core/sheet (with the rooms about it, and workedOut) run in TypeScript. */

import { readGarage } from "../../webapp/src/core/garage/garage";
import { type SheetMass, sheet } from "../../webapp/src/core/sheet/sheet";
import { claimOf } from "../../webapp/src/core/sheet/sheetClaim";
import { readCorners } from "../../webapp/src/core/sheet/sheetCorners";
import { pieceOf, readPiece } from "../../webapp/src/core/sheet/sheetPiece";
import * as stock from "../../webapp/src/core/sheet/sheetStock";
import { type Mass, masses } from "../../webapp/src/core/weighing/weighing";
import { against, againstSentence } from "../../webapp/src/core/weighing/workedOut";
import { plain } from "../plain";
import type { Claims } from "../vectors";

function tables(): object {
  return {
    materials: Object.fromEntries(stock.MATERIALS),
    legal_ounces: Object.fromEntries(stock.LEGAL_OUNCES),
    makers_inches: Object.fromEntries(stock.MAKERS_INCHES),
    constants: [stock.OUNCES_FT2, stock.CONVENTION, stock.LEGAL_SHARE],
  };
}

/** Every sheet of a garage, as it is read from the records. */
function ofRecords(given: Record<string, unknown>): unknown {
  const garage = readGarage(given);
  const sheets = [...garage.sheets.values()].map((each) => [
    each.id,
    sheet(pieceOf(each, garage.holes_of.get(each.id))),
  ]);
  return plain({ sheets: Object.fromEntries(sheets), warnings: garage.warnings });
}

function againstEach(given: { garage: Record<string, unknown>; unit: string }): object {
  const garage = readGarage(given.garage);
  const known = masses(garage);
  const found = [...garage.parts.values()].map((part) => {
    const each = against(part, known.of.get(part.id) as Mass);
    return [part.id, each && { ...(plain(each) as object), said: againstSentence(each, given.unit) }];
  });
  return Object.fromEntries(found);
}

export const claims: Claims = {
  "sheet.sheet": (given) => plain(sheet(readPiece(given))),
  "sheet_piece.of_records": ofRecords,
  "sheet_corners.read_corners": ({ text }) => plain(readCorners(text)),
  "sheet_claim.claim_of": ({ piece, mass_unit: mass, length_unit: length }) => {
    const read = readPiece(piece);
    return claimOf(read, sheet(read) as SheetMass, mass, length);
  },
  "sheet_stock.tables": tables,
  "worked_out.against": againstEach,
};

/** What the vectors of core/sheet (with sheetStock and polygon) run in TypeScript. */

import { sheet } from "../../webapp/src/core/sheet";
import { readPiece } from "../../webapp/src/core/sheetPiece";
import * as stock from "../../webapp/src/core/sheetStock";
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

export const claims: Claims = { "sheet.sheet": (given) => plain(sheet(readPiece(given))), "sheet_stock.tables": tables };

/** The usual cautions for cutting sheet, by material: common practice, no source; the tool's maker and the law go first. */
import { CAUTIONS } from "../../parts/words/cautions";

const CUTTING = "Clamp the sheet and keep the guards on; eye, ear and hand protection as the tool's maker says.";
const FIBRE =
  "Cutting it makes dust that stays in lungs: a mask for fine dust, suction or water, no compressed air, and out of doors.";
const WOOD = "Wood dust harms lungs and burns: suction and a dust mask.";
const FIRE =
  "Its chips and dust burn, and water feeds the fire: no sparks, sweep up dry, sand or a class D extinguisher at hand.";
const LEAD = "Lead dust and fumes are poison: snips, no saw, sander or flame; gloves, and wash before eating.";
const UNKNOWN =
  "What it gives off when cut is not known here: read its maker's sheet first, and treat the dust as harmful to lungs.";
const WINDOW = "Where it replaces a window, the rule book and local law decide whether it may.";

const OF: Readonly<Record<string, string>> = {
  carbon_laminate: FIBRE,
  glass_laminate: FIBRE,
  softwood_plywood: WOOD,
  birch_plywood: WOOD,
  magnesium: FIRE,
  titanium: FIRE,
  lead: LEAD,
  polycarbonate: WINDOW,
  acrylic: WINDOW,
  glass: WINDOW,
};

/** What to mind before this is cut, in the order to be read. */
export function cautionsFor(material: string): string[] {
  const own = OF[material] ?? (material ? null : UNKNOWN);
  return [CUTTING, CAUTIONS["glass and edges"], ...(own ? [own] : [])];
}

/** Which sheet a part was worked out from. */
import { garage, type Rec } from "../../garage/garage";

/** The sheet a part has, the first where two phones made one each. */
export function sheetOf(part: string): Rec<"sheet"> | undefined {
  return garage.value.of("sheet").find((sheet) => sheet.values.part === part);
}

/** A sheet the part has besides this one. */
export function otherSheet(part: string, sheet: string): Rec<"sheet"> | null {
  const found = sheetOf(part);
  return found && found.id !== sheet ? found : null;
}

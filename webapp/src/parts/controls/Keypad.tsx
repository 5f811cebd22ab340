/**
 * The keypad for gloves: a ruled sheet of keys, none narrower or lower than 64 px, wherever a quantity is typed.
 *
 * It writes into whatever owns it through `onKey`; a real keyboard writes into the same field beside it. Keys never
 * take the focus, so the field keeps its caret and the phone's own keyboard stays away.
 */
import "./Keypad.css";
import { Icon } from "../frame/Icon";
import type { Key } from "./typing";

type Props = {
  /** The words for units, as they are written into the text: at most four. */
  units: readonly string[];
  /** The unit the number has now, written or understood. */
  unit: string | null;
  fractions: boolean;
  onKey: (key: Key) => void;
};

const ROWS = [
  ["7", "8", "9"],
  ["4", "5", "6"],
  ["1", "2", "3"],
  [".", "0", "erase"],
];
const COLUMN_FRACTIONS = ["1/2", "1/4", "3/4", "1/8"];
const LAST_ROW: Key[] = [
  ...["3/8", "5/8", "7/8"].map((text): Key => ({ sort: "fraction", text })),
  { sort: "write", text: " " },
  { sort: "write", text: "/" },
];

/** The keys in reading order; null is an empty place on the sheet. */
function sheet(units: readonly string[], fractions: boolean): (Key | null)[] {
  const rows = ROWS.flatMap((row, i): (Key | null)[] => {
    const digits = row.map((text): Key => (text === "erase" ? { sort: "erase" } : { sort: "write", text }));
    const unit: Key | null = units[i] ? { sort: "unit", text: units[i] } : null;
    return [...digits, unit, ...(fractions ? [{ sort: "fraction", text: COLUMN_FRACTIONS[i]! } as const] : [])];
  });
  return fractions ? [...rows, ...LAST_ROW] : rows;
}

export function Keypad({ units, unit, fractions, onKey }: Props) {
  return (
    <div
      class={fractions ? "keypad with-fractions" : "keypad"}
      role="group"
      aria-label="Keypad"
      onMouseDown={(event) => event.preventDefault()}
    >
      {sheet(units, fractions).map((key, i) =>
        key ? (
          <KeyCap key={i} of={key} unit={unit} onKey={onKey} />
        ) : (
          <span key={i} class="key blank" aria-hidden="true" />
        ),
      )}
    </div>
  );
}

function KeyCap({ of, unit, onKey }: { of: Key; unit: string | null; onKey: (key: Key) => void }) {
  const isSide = of.sort === "unit" || of.sort === "fraction" || (of.sort === "write" && of.text === " ");
  return (
    <button
      type="button"
      class={isSide ? "key side" : "key"}
      tabIndex={-1}
      aria-label={spoken(of)}
      aria-pressed={of.sort === "unit" ? of.text === unit : undefined}
      onClick={() => onKey(of)}
    >
      {of.sort === "erase" ? <Icon name="erase" /> : of.text === " " ? "space" : of.text}
    </button>
  );
}

const SIGNS: Record<string, string> = { ".": "Point", "/": "Over", " ": "Space" };
const BELOW: Record<string, [one: string, many: string]> = {
  "2": ["a half", "halves"],
  "4": ["a quarter", "quarters"],
  "8": ["an eighth", "eighths"],
};

/** What a screen reader says where the cap would be read badly: a fraction with what stands on it, to be called by. */
function spoken(key: Key): string | undefined {
  if (key.sort === "erase") return "Erase";
  if (key.sort !== "fraction") return SIGNS[key.text];
  const [above, below] = key.text.split("/") as [string, string];
  return `${key.text}, ${above === "1" ? BELOW[below]![0] : `${above} ${BELOW[below]![1]}`}`;
}

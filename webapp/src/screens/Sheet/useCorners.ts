/** Corners under a finger: a press adds or takes hold of one, a move drags it, and every step can be undone. */
import { useRef, useState } from "preact/hooks";
import type { CornerText } from "../../core/sheet/sheetCorners";
import type { Spot } from "../../parts/sheet/geometry";

type Corners = readonly CornerText[];
type Given = {
  corners: Corners;
  onCorners: (corners: CornerText[]) => void;
  /** Where a finger's spot lies, as text; and which corner is under it. */
  snap: (spot: Spot) => CornerText;
  find: (spot: Spot) => number | null;
};

export function useCorners({ corners, onCorners, snap, find }: Given) {
  const [held, setHeld] = useState<number | null>(null);
  const [last, setLast] = useState<number | null>(null);
  const before = useRef<Corners[]>([]);
  const putting = (at: number, corner: CornerText) => [...corners.slice(0, at), corner, ...corners.slice(at + 1)];
  const press = (spot: Spot) => {
    before.current.push(corners);
    const at = find(spot) ?? corners.length;
    if (at === corners.length) onCorners(putting(at, snap(spot)));
    setHeld(at);
    setLast(at);
  };
  const move = (spot: Spot) => {
    if (held !== null && held < corners.length) onCorners(putting(held, snap(spot)));
  };
  const release = () => {
    setHeld(null);
    if (before.current.at(-1) === corners) before.current.pop(); // only touched: there is nothing to undo
  };
  const undo = () => {
    const was = before.current.pop();
    if (was) onCorners([...was]);
    setLast(null);
  };
  const takeOut = (at: number) => {
    before.current.push(corners);
    onCorners(corners.filter((_, place) => place !== at));
    setLast(null);
  };
  const isThere = (at: number | null) => (at !== null && at < corners.length ? at : null);
  return {
    held: isThere(held),
    last: isThere(last),
    press,
    move,
    release,
    undo: before.current.length ? undo : null,
    takeOut,
  };
}

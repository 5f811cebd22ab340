/** Records in a list, one of them open as a form in its place; below it the way to a new one. */

import { Fragment, type VNode } from "preact";
import { useRef, useState } from "preact/hooks";
import type { KindName } from "../../journal/kinds";
import type { Rec } from "../../journal/types";
import { Button } from "../frame/Button";

type Props<K extends KindName> = {
  of: readonly Rec<K>[];
  row: (rec: Rec<K>, onTap: () => void) => VNode;
  form: (id: string, onDone: () => void) => VNode;
  add: string;
};

export function OpenList<K extends KindName>({ of, row, form, add }: Props<K>) {
  const [open, setOpen] = useState<string | null>(null);
  const before = useRef<readonly string[]>([]);
  const close = () => setOpen(null);
  const begin = () => {
    before.current = of.map((rec) => rec.id);
    setOpen("new");
  };
  // A new record keeps its first field by itself: its row waits until its form is closed.
  const listed = open === "new" ? of.filter((rec) => before.current.includes(rec.id)) : of;
  return (
    <>
      {listed.map((rec) => (
        <Fragment key={rec.id}>{open === rec.id ? form(rec.id, close) : row(rec, () => setOpen(rec.id))}</Fragment>
      ))}
      {open === "new" ? form("new", close) : <Button look="wide" label={add} onClick={begin} />}
    </>
  );
}

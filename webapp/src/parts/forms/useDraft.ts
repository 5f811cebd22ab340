/**
 * A form that survives the page being killed (the camera does that): every change is kept on the phone, photos' bytes
 * too, and comes back when the screen opens again.
 */
import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { drafts } from "../../garage/drafts";

export type Draft<T> = {
  /** Null until the phone's store has answered. */
  form: T | null;
  change: (patch: Partial<T>) => void;
  /** For `save`, which drops the draft in the transaction that saves the form. */
  name: string;
  drop: () => Promise<void>;
  /** Whether it was begun earlier. */
  resumed: boolean;
};

/**
 * `start` makes the empty form; what was kept under `name` is laid over it, unless `isDone` says it has been saved. One that
 * nobody has touched begins again whenever `by`, what it begins with, is another.
 */
export function useDraft<T extends object>(
  name: string,
  start: () => T,
  isDone: (kept: T) => boolean = () => false,
  by: unknown = null,
): Draft<T> {
  const [form, setForm] = useState<T | null>(null);
  const latest = useRef<T | null>(null);
  const resumed = useRef(false);
  const touched = useRef(false);
  const begin = useRef(start);
  begin.current = start;

  useEffect(() => {
    let live = true;
    const open = (kept: T | null) => {
      if (!live) return;
      resumed.current = !!kept && !isDone(kept);
      touched.current = resumed.current;
      latest.current = { ...begin.current(), ...(resumed.current ? kept : {}) };
      setForm(latest.current);
    };
    drafts.load<T>(name).then(open, () => open(null));
    return () => {
      live = false;
    };
  }, [name]);

  useEffect(() => {
    if (!latest.current || touched.current) return;
    latest.current = begin.current();
    setForm(latest.current);
  }, [by]);

  const change = useCallback(
    (patch: Partial<T>) => {
      touched.current = true;
      latest.current = { ...(latest.current ?? start()), ...patch };
      setForm(latest.current);
      // A draft that cannot be kept must not stop the weighing itself; saving will say what is wrong with the store.
      drafts.keep(name, latest.current).catch(() => undefined);
    },
    [name],
  );

  return { form, change, name, drop: () => drafts.drop(name), resumed: resumed.current };
}

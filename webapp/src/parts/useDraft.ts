/**
 * A form that survives the page being killed (the camera does that): every change is kept on the phone, photos' bytes
 * too, and comes back when the screen opens again.
 */
import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { drafts } from "../store/drafts";

const PAUSE_MS = 150;

export type Draft<T> = {
  /** Null until the phone's store has answered. */
  form: T | null;
  change: (patch: Partial<T>) => void;
  drop: () => Promise<void>;
};

/** `start` makes the empty form; what was kept under `name` is laid over it, unless `isDone` says it has been saved. */
export function useDraft<T extends object>(name: string, start: () => T, isDone: (kept: T) => boolean = () => false): Draft<T> {
  const [form, setForm] = useState<T | null>(null);
  const latest = useRef<T | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);

  const flush = useCallback(() => {
    if (timer.current === null) return;
    clearTimeout(timer.current);
    timer.current = null;
    // A draft that cannot be kept must not stop the weighing itself; saving will say what is wrong with the store.
    if (latest.current) drafts.keep(name, latest.current).catch(() => undefined);
  }, [name]);

  useEffect(() => {
    let live = true;
    const open = (kept: T | null) => {
      if (!live) return;
      latest.current = { ...start(), ...(kept && !isDone(kept) ? kept : {}) };
      setForm(latest.current);
    };
    drafts.load<T>(name).then(open, () => open(null));
    document.addEventListener("visibilitychange", flush);
    return () => {
      live = false;
      document.removeEventListener("visibilitychange", flush);
      flush();
    };
  }, [name, flush]);

  const change = useCallback((patch: Partial<T>) => {
    latest.current = { ...(latest.current ?? start()), ...patch };
    setForm(latest.current);
    timer.current ??= setTimeout(flush, PAUSE_MS);
  }, [flush]);

  const drop = useCallback(async () => {
    if (timer.current !== null) clearTimeout(timer.current);
    timer.current = null;
    await drafts.drop(name);
  }, [name]);

  return { form, change, drop };
}

/**
 * Tells whoever draws a moving thing where it is now, once a frame: they set an attribute, and nothing is drawn anew.
 */
import { useEffect, useRef } from "preact/hooks";
import type { Spot } from "./view";

export type Mover<T = Spot> = {
  move: (to: T) => void;
  /** Returns what ends it. */
  follow: (listener: (to: T) => void) => () => void;
};

export function newMover<T = Spot>(): Mover<T> {
  const listeners = new Set<(to: T) => void>();
  return {
    move: (to) => {
      for (const listener of listeners) listener(to);
    },
    follow: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** An element that follows a mover: `set` puts it where it is, straight into its attributes. */
export function useFollowing<E extends Element, T>(mover: Mover<T> | null, set: (element: E, to: T) => void) {
  const element = useRef<E>(null);
  const latest = useRef(set);
  latest.current = set;
  useEffect(() => mover?.follow((to) => element.current && latest.current(element.current, to)), [mover]);
  return element;
}

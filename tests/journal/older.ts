/** This app as it was before it knew some fields. */

import { type Field, KINDS } from "../../webapp/src/journal/kinds";

/** Forgets fields, by kind, until the function given back is called. */
export function forget(unknown: Readonly<Record<string, readonly string[]>>): () => void {
  const known = Object.entries(unknown).map(([kind, names]) => {
    const fields = KINDS[kind]!.fields as Record<string, Field>;
    const whole = { ...fields };
    for (const name of names) delete fields[name];
    return () => Object.assign(fields, whole);
  });
  return () => {
    for (const know of known) know();
  };
}

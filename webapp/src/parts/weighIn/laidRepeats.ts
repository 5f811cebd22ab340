/** The repeats of a weighing or weigh-in, and what was left out of them, as plain records of one that is laid over it. */
import { book, type Lists, lists, type Plain } from "../../answers";

/** `name`: under which it is laid; the repeats' own names follow from it, so that none of them is there twice. */
export function laidRepeats(id: string, name: string): Lists {
  const named = (of: string) => (of === id ? name : `${of}~${name}`);
  const of = (kind: "repeats" | "omissions", ids: readonly string[]) =>
    (lists.value[kind] ?? []).filter((each) => ids.includes(each.id) || each.of === id);
  const repeats = of("repeats", book.value.repeats_of.get(id)?.map((each) => each.id) ?? []);
  const among = [id, ...repeats.map((each) => each.id)];
  const omissions = among.flatMap((each) => book.value.omissions_of.get(each) ?? []);
  const left: Plain[] = omissions.map((each) => ({ id: named(each.id), of: named(each.of), reading: each.reading }));
  return {
    repeats: repeats.map((each) => ({ ...each, id: named(each.id), of: name, replaces: null })),
    omissions: left,
  };
}

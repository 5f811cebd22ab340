/**
 * A form over one record: what is being typed, what differs from the record as it was shown, and saving just that.
 *
 * The heads of the record are taken when the form opens, so that a change another phone made meanwhile is seen as a conflict and
 * never overwritten. What is half typed is kept as a draft: the page may be killed at any time.
 */
import { useEffect, useRef, useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { deletion } from "../../garage/acts";
import { drafts } from "../../garage/drafts";
import { garage } from "../../garage/garage";
import type { NewPhoto } from "../../garage/photos";
import { newId, save } from "../../garage/write";
import type { Changes, KindName, Values } from "../../journal/kinds";
import type { FieldOf, Value, ValuesOf } from "../../journal/types";
import { startOf } from "../words/fieldWords";
import { troubleOf } from "./trouble";
import { unreadable } from "./unreadable";

type Fields = Record<string, Value>;

/** What a field's control needs of a form, over a record or a draft. Of any kind of record, when none is named. */
export type Filled<K extends string = string> = {
  kind: K;
  values: ValuesOf<K>;
  text(field: FieldOf<K>): string;
  set<N extends FieldOf<K> & keyof ValuesOf<K>>(field: N, value: ValuesOf<K>[N] | null): void;
};

/** A draft whose keys are named as the fields of a kind, for the controls of those fields. */
export function filled<K extends KindName, D extends object>(kind: K, draft: D, change: (patch: Partial<D>) => void) {
  const values = draft as unknown as ValuesOf<K>;
  const text = (field: string) => String((draft as Fields)[field] ?? "");
  const set = (field: string, value: Value) => change({ [field]: value } as Partial<D>);
  return { kind, values, text, set } as Filled<K>;
}

/** The fields of a record that is made in one go and not kept as a draft. */
export function useFilled<K extends KindName>(kind: K, start: Values<K>): Filled<K> {
  const [values, setValues] = useState(start);
  return filled(kind, values, (patch) => setValues((now) => ({ ...now, ...patch })));
}

export type Form<K extends string = string> = Filled<K> & {
  id: string;
  isNew: boolean;
  changed: boolean;
  /** What was typed and cannot be read, with what to type; null when all can. */
  unreadable: string | null;
  /** Saves what differs; resolves to the record's id, or null when it could not (the trouble is then shown). */
  save: (photos?: NewPhoto[]) => Promise<string | null>;
  remove: () => Promise<boolean>;
  trouble: AppError | null;
  saved: boolean;
};

/** `base`: the record's heads when typing began, so that a form reopened later still knows what it had seen. */
type Kept = { id: string; typed: Fields; base: string[] };

const same = (a: Value | undefined, b: Value | undefined) => JSON.stringify(a ?? null) === JSON.stringify(b ?? null);

/** `begun`: what a new record begins with, beside what its kind says. */
export function useForm<K extends KindName>(kind: K, given: string | null, begun: Changes<K> = {}): Form<K> {
  const defaults = { ...startOf(kind), ...begun } as Fields;
  const unnamed = !given || given === "new";
  const [id, setId] = useState(() => (unnamed ? newId() : given));
  const shown = useRef(garage.value.byId.get(id));
  const isNew = !shown.current;
  const draftName = `form:${kind}:${unnamed ? "new" : id}`;
  const base = useRef<string[] | null>(null);
  const latest = useRef<Fields>({}); // several fields may be set in one tap, before the next drawing
  const [typed, setTyped] = useState<Fields>({});
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const [saved, setSaved] = useState(false);

  useEffect(() => {
    void drafts.load<Kept>(draftName).then((kept) => {
      const isSaved = unnamed && kept && garage.value.byId.has(kept.id); // killed between saving and dropping the draft
      if (!kept || isSaved) return;
      latest.current = { ...kept.typed, ...latest.current };
      base.current = kept.base;
      setId(kept.id);
      setTyped(latest.current);
    });
  }, [draftName, unnamed]);

  if (!Object.keys(typed).length) shown.current = garage.value.byId.get(id) ?? shown.current;
  const before: Fields = shown.current?.values ?? {};
  const values: Fields = { ...(isNew ? defaults : before), ...typed };
  const changed = Object.keys(typed).some((field) => !same(typed[field], isNew ? defaults[field] : before[field]));

  const set = (field: string, value: Value) => {
    latest.current = { ...latest.current, [field]: value === "" ? null : value };
    setTyped(latest.current);
    setSaved(false);
    base.current ??= shown.current?.heads ?? [];
    void drafts.keep(draftName, { id, typed: latest.current, base: base.current } satisfies Kept);
  };

  const write = async (fields: Fields, photos: NewPhoto[]): Promise<boolean> => {
    try {
      await save([{ kind, record: id, set: fields, base: base.current ?? shown.current?.heads ?? [] }], photos);
      await drafts.drop(draftName);
      shown.current = garage.value.byId.get(id);
      base.current = null;
      latest.current = {};
      setTyped({});
      setTrouble(null);
      setSaved(true);
      return true;
    } catch (error) {
      setTrouble(troubleOf(error));
      return false;
    }
  };

  return {
    kind,
    id,
    isNew,
    values: values as ValuesOf<K>,
    text: (field) => String(values[field] ?? ""),
    set: set as Form<K>["set"],
    changed,
    unreadable: unreadable(kind, typed),
    save: async (photos = []) => {
      // What was set in this very tap is not in `typed` yet.
      const now: Fields = { ...(isNew ? defaults : before), ...latest.current };
      const fields = Object.fromEntries(Object.entries(now).filter(([field, value]) => !same(value, before[field])));
      if (!Object.keys(fields).length && !photos.length) return id;
      return (await write(fields, photos)) ? id : null;
    },
    remove: () => write(deletion(kind, id).set, []),
    trouble,
    saved,
  };
}

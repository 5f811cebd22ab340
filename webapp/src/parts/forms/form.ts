/**
 * A form over one record. A readable field is kept when the thumb leaves it, and when the page goes; there is no Save.
 *
 * The heads of the record are taken when a field is first touched, so that a change another phone made meanwhile is seen
 * as a conflict and never overwritten. What cannot be read, or is asked about, stays in its field beside the value that
 * counts, and is no entry; as it is kept as a draft, the page may be killed at any time. A fact, which is set once, waits
 * for its Save as a whole.
 */
import { useEffect, useRef, useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { drafts } from "../../garage/drafts";
import { garage } from "../../garage/garage";
import type { NewPhoto } from "../../garage/photos";
import { deletion } from "../../garage/undo";
import { newId, save } from "../../garage/write";
import { type Changes, KINDS, type KindName, type Values } from "../../journal/kinds";
import type { FieldOf, Value, ValuesOf } from "../../journal/types";
import { afterPress } from "../controls/afterPress";
import { troubleOf } from "../frame/trouble";
import { startOf } from "../words/fieldWords";
import { type Fields, ready, same, type Typed, valuesOf } from "./keeping";
import { begunBefore, draftNameOf, type Kept, thisPage } from "./newDraft";
import { type Unkept, unkeptIn, unreadable } from "./unreadable";

/** What a field's control needs of a form, over a record or a draft. Of any kind of record, when none is named. */
export type Filled<K extends string = string> = {
  kind: K;
  /** Of the record it is over, if any. */
  id?: string;
  values: ValuesOf<K>;
  text(field: FieldOf<K>): string;
  set<N extends FieldOf<K> & keyof ValuesOf<K>>(field: N, value: ValuesOf<K>[N] | null): void;
  /** Why what stands in a field does not count, what does instead, and the ways out; null when it counts. */
  unkept?(field: FieldOf<K>): (Unkept & { counts: Value; keep: () => void; drop: () => void }) | null;
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
  /** A fact's form waits for its Save; any other keeps what it can by itself. */
  isFact: boolean;
  /** Whether something stands in a field that does not count (yet). */
  changed: boolean;
  /** What was typed and cannot be read, with what to type; null when all can. */
  unreadable: string | null;
  /** Keeps what can be kept now; resolves to the record's id, or null while there is no record (the trouble is shown). */
  save: (photos?: NewPhoto[]) => Promise<string | null>;
  remove: () => Promise<boolean>;
  trouble: AppError | null;
  saved: boolean;
};

/** `begun`: what a new record begins with, beside what its kind says. */
export function useForm<K extends KindName>(kind: K, given: string | null, begun: Changes<K> = {}): Form<K> {
  const isFact = KINDS[kind]!.fact === true;
  const defaults = { ...startOf(kind), ...begun } as Fields;
  const unnamed = !given || given === "new";
  const [id, setId] = useState(() => (unnamed ? newId() : given));
  const typed = useRef<Typed>({}); // several fields may be set in one tap, before the next drawing
  const [, draw] = useState(0);
  const touched = useRef<string[] | null>(null);
  const keeping = useRef<Promise<unknown>>(Promise.resolve());
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const [saved, setSaved] = useState(false);

  const record = garage.value.byId.get(id);
  const isNew = !record;
  const before: Fields = record?.values ?? {};
  const beginning = isNew ? defaults : before;

  const put = (next: Typed) => {
    typed.current = next;
    draw((times) => times + 1);
  };

  // What was begun as new goes by its record's own name once that is there: by that it is opened again.
  const draftName = () => draftNameOf(kind, id, !garage.peek().byId.has(id));
  const keepDraft = () => {
    if (Object.keys(typed.current).length === 0) return drafts.drop(draftName());
    return drafts.keep(draftName(), { id, typed: typed.current, page: thisPage() } satisfies Kept);
  };

  const set = (field: string, value: Value) => {
    const base = typed.current[field]?.base ?? touched.current ?? headsOf(id);
    put({ ...typed.current, [field]: { value: value === "" ? null : value, base } });
    setSaved(false);
    keepDraft().catch(nothing);
    if (!isFact && !isTyping()) afterPress(() => void leave());
  };

  /** One save at a time: a field left while another is being written waits for it. */
  const leave = (photos: NewPhoto[] = [], all = false): Promise<string | null> => {
    const mine = keeping.current.then(() => keep(photos, all));
    keeping.current = mine.catch(() => undefined);
    return mine;
  };

  const keep = async (photos: NewPhoto[], all: boolean): Promise<string | null> => {
    const now = typed.current;
    const isThere = garage.value.byId.has(id);
    if (Object.keys(now).length === 0 && photos.length === 0 && !all) return isThere ? id : null;
    const groups = ready(kind, now, { before: garage.value.byId.get(id)?.values ?? {}, defaults, isThere, all });
    if (!groups) return null;
    const named = draftName();
    try {
      const changes = groups.filter(({ set: fields }) => Object.keys(fields).length > 0);
      for (const { set: fields, base } of changes) await save([{ kind, record: id, set: fields, base }]);
      if (photos.length > 0) await save([], photos);
      forget(
        now,
        groups.flatMap((group) => group.names),
      );
      if (draftName() !== named) drafts.drop(named).catch(nothing);
      setTrouble(null);
      setSaved(true);
      return garage.value.byId.has(id) ? id : null;
    } catch (error) {
      setTrouble(troubleOf(error));
      return null;
    }
  };

  /** What was kept is typed no more, unless it has been typed in again since. */
  const forget = (then: Typed, names: string[]) => {
    const isDone = (name: string) => names.includes(name) && same(then[name]!.value, typed.current[name]?.value);
    put(Object.fromEntries(Object.entries(typed.current).filter(([name]) => !isDone(name))));
    touched.current = null;
    keepDraft().catch(nothing); // not waited for: the next field left is not to wait for the draft of one being typed
  };

  const drop = (field: string) => {
    const { [field]: _, ...others } = typed.current;
    put(others);
    keepDraft().catch(nothing);
  };

  useEffect(() => {
    const wanted = unnamed ? begunBefore(kind) : drafts.load<Kept>(draftNameOf(kind, id, false));
    void wanted.then((kept) => {
      if (!kept || Array.isArray((kept as { base?: unknown }).base)) return; // of an app that kept it otherwise
      if (unnamed && Object.keys(typed.current).length > 0) return; // something new was begun meanwhile
      setId(kept.id);
      put({ ...kept.typed, ...typed.current });
      if (!unnamed && !isFact) void latest.current(); // the page went under the thumb: what can be read is kept
    }, nothing); // a store that is not open is said by the whole screen
  }, [kind, unnamed, unnamed ? null : id]);

  const latest = useRef(leave);
  latest.current = leave;
  useEffect(() => {
    if (isFact) return;
    const onLeave = () => void latest.current();
    const onFocus = () => {
      touched.current = headsOf(id);
    };
    const onHide = () => document.visibilityState === "hidden" && onLeave();
    document.addEventListener("focusout", onLeave);
    document.addEventListener("focusin", onFocus);
    document.addEventListener("visibilitychange", onHide);
    return () => {
      document.removeEventListener("focusout", onLeave);
      document.removeEventListener("focusin", onFocus);
      document.removeEventListener("visibilitychange", onHide);
      onLeave(); // the page goes on to another screen
    };
  }, [id, isFact]);

  const values: Fields = { ...beginning, ...valuesOf(typed.current) };
  const unkept = (field: string) => {
    const each = typed.current[field];
    const why = each && !same(each.value, beginning[field]) ? unkeptIn(kind, field, each) : null;
    const asTyped = () => {
      put({ ...typed.current, [field]: { ...each!, asked: true } });
      void leave();
    };
    return why && { ...why, counts: beginning[field] ?? null, keep: asTyped, drop: () => drop(field) };
  };
  return {
    kind,
    id,
    isNew,
    isFact,
    values: values as ValuesOf<K>,
    text: (field) => String(values[field] ?? ""),
    set: set as Form<K>["set"],
    unkept: isFact ? undefined : unkept,
    changed: Object.keys(typed.current).some((field) => !same(typed.current[field]!.value, beginning[field])),
    unreadable: unreadable(kind, valuesOf(typed.current)),
    save: (photos = []) => leave(photos, isFact),
    remove: async () => {
      try {
        await save([{ ...deletion(kind, id), base: headsOf(id) }]);
        drafts.drop(draftName()).catch(nothing);
        put({});
        return true;
      } catch (error) {
        setTrouble(troubleOf(error));
        return false;
      }
    },
    trouble,
    saved,
  };
}

const nothing = () => undefined;

function headsOf(id: string): string[] {
  return garage.peek().byId.get(id)?.heads ?? [];
}

/** Whether the thumb is in a field of text, so that what is set is not all of it yet. */
function isTyping(): boolean {
  return document.activeElement?.matches("textarea, input:not([type=radio], [type=checkbox])") ?? false;
}

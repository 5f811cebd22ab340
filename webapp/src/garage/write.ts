/** Saving: a list of changes becomes entries, checked, and written in one strict transaction. */

import { AppError } from "../errors";
import { utf8Length } from "../journal/bytes";
import { lacksRequired, misfitting } from "../journal/check";
import { MOST_BYTES } from "../journal/entry";
import { idMaker } from "../journal/ids";
import { KINDS, SCHEMA, TABLE } from "../journal/kinds";
import type { Entry, Rec, Value } from "../journal/types";
import { addPending, type Fresh } from "../store/entries";
import { opened } from "../store/opened";
import { hashOf, type PhotoToKeep } from "../store/photo_rows";
import { type LiveGarage, live } from "./garage";
import type { NewPhoto } from "./photos";
import { type Saved, tellSaved } from "./saves";

export type { NewPhoto } from "./photos";

const PHOTO_MOST = TABLE.photo.fields.size.most;

/**
 * One change to one record. Without `record` a new one is made; without `base` the record's heads of now are taken.
 * `exact`: it has seen its base and nothing else, not even what this page wrote.
 */
export type Change = { kind: string; record?: string; set: Record<string, Value>; base?: string[]; exact?: true };

/** A new id, UUIDv7: for a record that photos or other changes of the same save must name. */
export const newId: () => string = idMaker(Date.now, (bytes) => crypto.getRandomValues(bytes));

/** A device's hand in a garage: all its saves, one after the other. `writer` is new with every page load. */
export class Writer {
  private readonly writer = newId();
  private n = 0;
  private last: Promise<unknown> = Promise.resolve();
  /** This page's own latest entry on a record: what it wrote itself, it has seen. */
  private readonly own = new Map<string, string>();

  constructor(
    private readonly live: LiveGarage,
    private readonly device: string,
    private readonly now: () => Date = () => new Date(),
  ) {}

  save(changes: Change[], photos: NewPhoto[] = [], draft?: string): Promise<Saved> {
    const mine = this.last.catch(() => undefined).then(() => this.saveNow(changes, photos, draft));
    this.last = mine;
    return mine;
  }

  private async saveNow(changes: Change[], photos: NewPhoto[], draft?: string): Promise<Saved> {
    photos.forEach(checkPhoto);
    const kept = photos.map(({ bytes, type }): PhotoToKeep => ({ sha256: hashOf(bytes), bytes, type }));
    const all = [...changes, ...photos.map((photo, at) => photoChange(photo, kept[at]!.sha256))];
    const heads = new Map<string, string[]>();
    const made_at = this.now().toISOString();
    const entries = all.map((change) => this.entry(change, heads, made_at));
    const written = await addPending(this.live.store, entries.map(textOf), kept, draft);
    for (const entry of entries) this.own.set(entry.record, entry.id);
    await this.live.took(written);
    const records = entries.slice(0, changes.length).map((entry) => entry.record);
    return { records, entries: entries.map((entry) => entry.id) };
  }

  /** `heads`: what records of this save stand at, once its earlier entries are written. */
  private entry(change: Change, heads: Map<string, string[]>, made_at: string): Entry {
    const record = change.record ?? newId();
    const known = this.live.garage.peek().byId.get(record);
    check(change, known, heads.has(record));
    const id = newId();
    const base = change.exact ? change.base! : (heads.get(record) ?? this.base(change, record, known));
    heads.set(record, [id]);
    const photos = change.kind === "photo" && change.set.sha256 ? [change.set.sha256 as string] : [];
    const { device, writer } = this;
    return {
      id,
      device,
      writer,
      n: ++this.n,
      kind: change.kind,
      record,
      set: change.set,
      base,
      photos,
      made_at,
      schema: SCHEMA,
    };
  }

  private base(change: Change, record: string, known: Rec | undefined): string[] {
    const own = this.own.get(record);
    const shown = change.base ?? known?.heads ?? [];
    return own === undefined || shown.includes(own) ? [...shown] : [...shown, own];
  }
}

/** Throws what is certain to be set aside later, while the person can still correct it. */
function check(change: Change, known: Rec | undefined, begun: boolean): void {
  const { kind, set } = change;
  if (!Object.hasOwn(KINDS, kind)) throw new AppError("not_savable", { kind, field: "kind" });
  const wrong = misfitting(kind, set) ?? (known || begun ? null : lacksRequired(kind, set));
  if (wrong !== null) throw new AppError("not_savable", { kind, field: wrong });
  if (known && known.kind !== kind) throw new AppError("not_savable", { kind, field: "kind" });
  const edits = Object.keys(set).some((field) => field !== "deleted");
  if ((known || begun) && KINDS[kind]!.fact && edits) throw new AppError("fact", { kind });
}

/** A photo too large to be sent, or empty, is refused before anything is called saved. */
function checkPhoto({ bytes }: NewPhoto): void {
  if (bytes.byteLength > PHOTO_MOST) throw new AppError("photo_too_large", { most: PHOTO_MOST });
  if (bytes.byteLength === 0) throw new AppError("photo_truncated");
}

function photoChange(photo: NewPhoto, sha256: string): Change {
  const { of, bytes, type, width, height } = photo;
  return { kind: "photo", set: { of, sha256, size: bytes.byteLength, type, width, height } };
}

function textOf(entry: Entry): Fresh {
  const text = JSON.stringify(entry);
  if (utf8Length(text) > MOST_BYTES) throw new AppError("entry_too_large", { most: MOST_BYTES });
  return { id: entry.id, text };
}

let writer: { live: LiveGarage; device: string; writer: Writer } | null = null;

function currentWriter(): Writer {
  const device = opened.value?.device;
  if (!live.value || device === undefined) throw new AppError("garage_not_open");
  if (writer?.live !== live.value || writer.device !== device) {
    writer = { live: live.value, device, writer: new Writer(live.value, device) };
  }
  return writer.writer;
}

/**
 * Saves changes and photos together: all or none. Resolves with the record id of each change, in order, and only after
 * the transaction's complete event; `garage` then shows them. A `draft` named goes in the same transaction, so that a
 * killed page never brings back a form that was saved. Rejects with AppError.
 */
export async function save(changes: Change[], photos: NewPhoto[] = [], draft?: string): Promise<string[]> {
  return (await saveAll(changes, photos, draft)).records;
}

async function saveAll(changes: Change[], photos: NewPhoto[], draft?: string): Promise<Saved> {
  const saving = currentWriter();
  const withdrawn = draft === undefined ? null : opened.value!.drafts.withdraw(draft);
  try {
    const saved = await saving.save(changes, photos, draft);
    tellSaved(saved);
    return saved;
  } catch (error) {
    withdrawn?.putBack();
    throw error;
  }
}

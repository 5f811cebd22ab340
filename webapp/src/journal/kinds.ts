/** The kinds of record as types: all made of the one table, which `server/tarebook/journal/kinds` declares. */

import { SCHEMA, TABLE } from "../generated/kinds";

export { SCHEMA, TABLE };

export type FieldType =
  | ("text" | "mass" | "length" | "volume" | "money" | "hours" | "fraction" | "count" | "flag" | "choice")
  | ("choices" | "ref" | "refs" | "moment" | "hash" | "integer");

/** `sign`: zero or more when nothing is said. `kept`: the core computes nothing with it. `hangs`: see `hanging`. */
export type Field = {
  readonly type: FieldType;
  readonly of?: readonly string[];
  readonly most?: number;
  readonly required?: true;
  readonly hangs?: true;
  readonly kept?: true;
  readonly sign?: "positive" | "any";
  readonly likely?: readonly [least: string, most: string];
};

export type Kind = {
  readonly fact?: true;
  readonly kept?: true;
  /** What one and several are called, where not by its name and an s. */
  readonly words?: readonly [one: string, many: string];
  readonly fields: Readonly<Record<string, Field>>;
};

/** What forms and lists say of a field (`generated/fields`); `words`: what its choices are called. */
export type Told = {
  readonly label?: string;
  readonly hint?: string;
  readonly words?: Readonly<Record<string, string>>;
  readonly none?: string;
  readonly sides?: readonly [minus: string, plus: string];
  readonly unit?: "percent" | "day";
  readonly start?: string;
  readonly word?: string;
};

export const KINDS: Readonly<Record<string, Kind>> = TABLE;

type Table = typeof TABLE;
export type KindName = keyof Table;
export type FieldsOf<K extends KindName> = Table[K]["fields"];
export type FieldName<K extends KindName> = keyof FieldsOf<K> & string;

/** What the journal holds of a field: what is typed is a text. */
export type ValueOf<F> = F extends { type: "flag" }
  ? boolean
  : F extends { type: "count" | "integer" }
    ? number
    : F extends { type: "refs" }
      ? string[]
      : F extends { type: "choices"; of: readonly (infer C)[] }
        ? C[]
        : F extends { type: "choice"; of: readonly (infer C)[] }
          ? C
          : string;

/** A record's values; a field that nobody filled is not there. */
export type Values<K extends KindName> = { [N in FieldName<K>]?: ValueOf<FieldsOf<K>[N]> };

/** What is set of a record in one go; null clears a field. */
export type Changes<K extends KindName> = { [N in FieldName<K>]?: Values<K>[N] | null };

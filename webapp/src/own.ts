/** Looking up in a table by a name from outside: an entry may say `toString`, which every object has by inheritance. */

/** What the table itself has under the name. */
export function own<V>(table: Readonly<Record<string, V>>, name: string): V | undefined {
  return Object.hasOwn(table, name) ? table[name] : undefined;
}

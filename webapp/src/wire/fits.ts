/** Whether an answer is what its type says: the compiler holds a shape to the type, and `fits` the answer to the shape. */

/** Each value as `typeof` names it, with a "?" where it may be null; of a list, what each item is. */
export type Shape<T> = T extends readonly (infer Item)[]
  ? readonly [Shape<Item>]
  : T extends object
    ? { readonly [Name in keyof T]-?: null extends T[Name] ? `${Sort<NonNullable<T[Name]>>}?` : Shape<T[Name]> }
    : Sort<T>;
type Sort<T> = [T] extends [boolean] ? "boolean" : [T] extends [number] ? "number" : "string";

export function fits<T>(value: unknown, shape: Shape<T>): value is T {
  return holds(value, shape);
}

function holds(value: unknown, shape: unknown): boolean {
  if (typeof shape === "string") return shape.startsWith(typeof value) || (value === null && shape.endsWith("?"));
  if (Array.isArray(shape)) return Array.isArray(value) && value.every((each) => holds(each, shape[0]));
  const named = new Map(Object.entries(value ?? {}));
  return Object.entries(shape ?? {}).every(([name, part]) => holds(named.get(name), part));
}

/** How a mass is known, in words. */
export function basisWord(basis: string | null | undefined): string {
  return basis?.replace("_", " ") ?? "no weight yet";
}

/** How a mass is known, in words. */
const WORDS: Record<string, string> = {
  weighed: "weighed",
  worked_out: "worked out",
  quoted: "quoted",
  guessed: "guessed",
};

export function basisWord(basis: string | null | undefined): string {
  return basis ? (WORDS[basis] ?? basis) : "no weight yet";
}

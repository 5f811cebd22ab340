/** Every word the phone says about where its records are. Never more than is known: "home" only after it came back. */

export type Whereabouts = {
  /** Entries and photos not known to be on the home computer. */
  waiting: number;
  photosWaiting: number;
  /** How much of them is over there already: 0 to 1. */
  photoShare: number;
  /** Records the home computer would not take so far, among those waiting. */
  stuck: number;
  /** Photos that are damaged here, or that the home computer refused for good. */
  photosStuck: number;
  /** Everything this phone holds is in a verified backup of the home computer. */
  inBackup: boolean;
  /** When the home computer last answered; null: never. */
  lastHeard: string | null;
  /** The last try did not get through, or was refused; why is said apart. */
  failing: boolean;
  /** Whether the browser has promised to keep the storage; null: it will not say. */
  protected: boolean | null;
};

/** The first of the words is the one line shown on every screen. */
export function wordsFor(where: Whereabouts): string[] {
  return [
    headline(where),
    where.waiting > 0 && where.photosWaiting > 0 ? photosGoing(where) : null,
    where.stuck > 0
      ? `The home computer has not taken ${count(where.stuck, "record")} so far; export keeps everything`
      : null,
    where.photosStuck > 0
      ? `${count(where.photosStuck, "photo")} cannot go to the home computer and will stay here`
      : null,
    destroyed(where),
    where.protected === false ? "Storage is not protected: install to the home screen" : null,
  ].filter((words): words is string => words !== null);
}

function headline(where: Whereabouts): string {
  if (where.waiting > 0) return `On this phone only (${where.waiting})`;
  if (where.photosWaiting > 0) return photosGoing(where);
  if (where.lastHeard === null) return "Not yet heard from the home computer";
  return where.inBackup ? "In a backup" : "On the home computer";
}

function photosGoing({ photosWaiting, photoShare, failing }: Whereabouts): string {
  if (failing) return `Photos on this phone only (${photosWaiting})`;
  const gone = photoShare > 0 ? `, ${Math.floor(photoShare * 100)} % done` : "";
  return `Keep open: ${count(photosWaiting, "photo")} still going up${gone}`;
}

function destroyed({ waiting, photosWaiting }: Whereabouts): string | null {
  const lost = [waiting > 0 && count(waiting, "record"), photosWaiting > 0 && count(photosWaiting, "photo")].filter(
    Boolean,
  );
  return lost.length > 0 ? `Deleting the app or its data destroys ${lost.join(" and ")}` : null;
}

function count(number: number, thing: string): string {
  return `${number} ${thing}${number === 1 ? "" : "s"}`;
}

/** Half-filled forms of the open garage. */
import { opened } from "../store/opened";

/** The open garage's drafts. Values may hold ArrayBuffers. Without an open garage there is nothing to load or keep. */
export const drafts = {
  async load<T>(name: string): Promise<T | null> {
    return (await opened.value?.drafts.load<T>(name)) ?? null;
  },
  /** Resolves when this value, or a later one in its place, is on the disk; rejects with AppError. */
  async keep(name: string, value: unknown): Promise<void> {
    await opened.value?.drafts.keep(name, value);
  },
  async drop(name: string): Promise<void> {
    await opened.value?.drafts.drop(name);
  },
  /** The names of all that is kept. */
  async names(): Promise<string[]> {
    return (await opened.value?.drafts.names()) ?? [];
  },
};

/** Half-filled forms, kept so that a page killed by the camera comes back as it was. */

export const drafts = {
  async load<T>(name: string): Promise<T | null> {
    throw new Error(`not filled yet: ${name}`);
  },
  async keep(name: string, value: unknown): Promise<void> {
    throw new Error(`not filled yet: ${name} ${typeof value}`);
  },
  async drop(name: string): Promise<void> {
    throw new Error(`not filled yet: ${name}`);
  },
};

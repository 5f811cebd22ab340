/** Opens the phone's store and sets sync going. main.tsx calls it once. */

export async function startPhone(): Promise<void> {}

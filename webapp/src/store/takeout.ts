/** Everything on the phone as one file. */

export async function exportAll(): Promise<Blob> {
  throw new Error("not filled yet");
}

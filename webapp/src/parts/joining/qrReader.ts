/** Reads QR codes: by the browser where it can, else by a reader of our own, which is fetched only then. */

export type QrReader = { detect: (image: ImageBitmapSource) => Promise<{ rawValue: string }[]> };

type Detector = {
  new (options: { formats: "qr_code"[] }): QrReader;
  getSupportedFormats: () => Promise<readonly string[]>;
};

const formats: "qr_code"[] = ["qr_code"];

export async function openReader(): Promise<QrReader> {
  const own = (globalThis as { BarcodeDetector?: Detector }).BarcodeDetector;
  // Some browsers have the class and nothing behind it.
  const known: readonly string[] = (await own?.getSupportedFormats().catch(() => null)) ?? [];
  if (own && known.includes("qr_code")) return new own({ formats });
  const { BarcodeDetector } = await import("qr/decode.js");
  return new BarcodeDetector({ formats });
}

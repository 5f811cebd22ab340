/** Gives a file to the person: by the phone's share sheet where there is one, else as a download. Answers in words. */

export async function handOver(blob: Blob): Promise<string> {
  const file = new File([blob], fileName(), { type: blob.type || "application/octet-stream" });
  if (underShareSheet(file)) {
    try {
      await navigator.share({ files: [file], title: file.name });
      return "Handed over. Keep it where the phone's loss does not reach it.";
    } catch (error) {
      // Closing the share sheet is no failure, but nothing was handed over either: fall through to the download.
      if (!(error instanceof DOMException)) throw error;
    }
  }
  download(file);
  return `Downloaded as ${file.name}.`;
}

function underShareSheet(file: File): boolean {
  return matchMedia("(pointer: coarse)").matches && navigator.canShare?.({ files: [file] }) === true;
}

function fileName(): string {
  return `tarebook-${new Date().toISOString().slice(0, 16).replaceAll(":", "")}.json`;
}

function download(file: File): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = url;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** The camera, looking for the square code the home computer shows. Frames are read here and go nowhere. */
import { Button } from "../frame/Button";
import "./ScanCode.css";
import type { RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { Icon } from "../frame/Icon";
import { Notice } from "../frame/Notice";
import { codeIn } from "./pairingCode";
import { openReader } from "./qrReader";

const EVERY = 200;

/** Whether this browser lets a page look through the camera at all. */
export function hasCamera(): boolean {
  return Boolean(navigator.mediaDevices?.getUserMedia);
}

export function ScanCode({ onCode }: { onCode: (code: string) => void }) {
  const [open, setOpen] = useState(false);
  if (!open)
    return (
      <button type="button" class="button main" onClick={() => setOpen(true)}>
        <Icon name="camera" />
        Scan the square code
      </button>
    );
  return <Viewfinder onCode={onCode} onClose={() => setOpen(false)} />;
}

function Viewfinder({ onCode, onClose }: { onCode: (code: string) => void; onClose: () => void }) {
  const video = useRef<HTMLVideoElement>(null);
  const [words, setWords] = useState("Opening the camera…");
  const [trouble, setTrouble] = useState(false);
  useEffect(() => look(video, { onCode, onWords: setWords, onTrouble: () => setTrouble(true) }), []);
  if (trouble) return <NoCamera onClose={onClose} />;
  return (
    <div class="stack">
      <video ref={video} class="viewfinder" muted playsInline aria-label="What the camera sees" />
      <p role="status">{words}</p>
      <Button label="Close the camera" onClick={onClose} />
    </div>
  );
}

function NoCamera({ onClose }: { onClose: () => void }) {
  return (
    <Notice sort="caution">
      <p role="alert">
        <strong>The camera cannot be used here.</strong> Allow it in the browser's settings for this page, or type the
        code.
      </p>
      <Button label="Good" onClick={onClose} />
    </Notice>
  );
}

type Told = { onCode: (code: string) => void; onWords: (words: string) => void; onTrouble: () => void };

/** Looks until a code is found or the returned function is called; the camera's light then goes out. */
function look(video: RefObject<HTMLVideoElement | null>, told: Told): () => void {
  let isOver = false;
  let stream: MediaStream | null = null;
  const stop = (): void => {
    isOver = true;
    for (const track of stream?.getTracks() ?? []) track.stop();
  };
  const run = async (): Promise<void> => {
    stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" }, audio: false });
    const screen = video.current;
    if (isOver || !screen) return stop();
    screen.srcObject = stream;
    await screen.play();
    told.onWords("Hold the phone so that the whole square is in the picture.");
    const code = await find(screen, () => isOver, told.onWords);
    stop();
    if (code !== null) told.onCode(code);
  };
  run().catch(() => {
    if (!isOver) told.onTrouble();
    stop();
  });
  return stop;
}

async function find(screen: HTMLVideoElement, isOver: () => boolean, onWords: Told["onWords"]): Promise<string | null> {
  const reader = await openReader();
  while (!isOver()) {
    const found = await reader.detect(screen);
    const code = found.map(({ rawValue }) => codeIn(rawValue)).find((each) => each !== null);
    if (code) return code;
    if (found.length > 0) onWords("That is another code. Look for the one Tarebook shows.");
    await new Promise((resolve) => setTimeout(resolve, EVERY));
  }
  return null;
}

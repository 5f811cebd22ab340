/**
 * A finger that places a mark: a tap puts it under the fingertip; once it slides, the mark stands above it and can be seen.
 *
 * However many moves the browser reports, the mark is moved once a frame.
 */
import { useRef } from "preact/hooks";
import type { Mover } from "./mover";
import type { Spot, View } from "./view";

const SLID = 8; // CSS pixels a tap may tremble
const ABOVE = 44; // CSS pixels above a fingertip

/** `spot`: where it stands. `onDrop`: where it was put, once. */
export type Placing = { spot: Spot; mover: Mover; onDrop: (to: Spot, view: View) => void };

type Finger = { id: number; x: number; y: number; box: DOMRect; above: number; slid: boolean; to: Spot; frame: number };

function spotUnder(finger: Finger, view: View, from: Spot, x: number, y: number): Spot {
  const { box, above, slid } = finger;
  const zoom = box.width / view.width;
  const within = (value: number, most: number) => Math.min(Math.max(value, 0), most);
  const u = within((x - box.left) / zoom, view.width);
  const v = within((y - box.top - (slid ? above : 0)) / zoom, view.height);
  return view.toSpot(u, v, from);
}

/** What the ground under the car listens to while something is placed. */
export function useDragging(view: View, { spot, mover, onDrop }: Placing) {
  const finger = useRef<Finger | null>(null);

  const onPointerDown = (event: PointerEvent) => {
    if (finger.current || !(event.currentTarget instanceof SVGElement)) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const box = event.currentTarget.ownerSVGElement!.getBoundingClientRect();
    const above = event.pointerType === "mouse" ? 0 : ABOVE;
    finger.current = {
      id: event.pointerId,
      x: event.clientX,
      y: event.clientY,
      box,
      above,
      slid: false,
      to: spot,
      frame: 0,
    };
  };

  const onPointerMove = ({ pointerId, clientX, clientY }: PointerEvent) => {
    const at = finger.current;
    if (at?.id !== pointerId) return;
    at.slid ||= Math.hypot(clientX - at.x, clientY - at.y) > SLID;
    if (!at.slid) return;
    at.to = spotUnder(at, view, spot, clientX, clientY);
    at.frame ||= requestAnimationFrame(() => {
      at.frame = 0;
      mover.move(at.to);
    });
  };

  const end = ({ pointerId, clientX, clientY }: PointerEvent, isMeant: boolean) => {
    const at = finger.current;
    if (at?.id !== pointerId) return;
    finger.current = null;
    cancelAnimationFrame(at.frame);
    const to = isMeant ? spotUnder(at, view, spot, clientX, clientY) : spot;
    mover.move(to);
    if (isMeant) onDrop(to, view);
  };

  return {
    onPointerDown,
    onPointerMove,
    onPointerUp: (event: PointerEvent) => end(event, true),
    onPointerCancel: (event: PointerEvent) => end(event, false),
    onTouchMove: (event: TouchEvent) => event.preventDefault(), // touch-action does not reach into a drawing everywhere
  };
}

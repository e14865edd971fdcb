// Zoom and pan of a bench: one factor and one shift over a picture that fits,
// never smaller than fitting and never dragged off it, so that nothing gets
// lost. Wheel, pinch and drag all come through here; buttons and keys too.
import type { RefObject } from "preact";
import { useEffect } from "preact/hooks";

/** A point at x of the fitting picture stands at x times by plus dx, in px. */
export interface Zoom { by: number; dx: number; dy: number }

export const whole: Zoom = { by: 1, dx: 0, dy: 0 };
const MOST = 40;

const clamp = (x: number, least: number, most: number) => Math.max(least, Math.min(most, x));

/** Zooms by a factor about the place x, y of a box so wide and high. */
export function zoomAbout(z: Zoom, f: number, x: number, y: number, width: number, height: number): Zoom {
  const by = clamp(z.by * f, 1, MOST), g = by / z.by;
  return within({ by, dx: x - (x - z.dx) * g, dy: y - (y - z.dy) * g }, width, height);
}

export function panned(z: Zoom, x: number, y: number, width: number, height: number): Zoom {
  return within({ by: z.by, dx: z.dx + x, dy: z.dy + y }, width, height);
}

function within(z: Zoom, width: number, height: number): Zoom {
  return { by: z.by, dx: clamp(z.dx, width * (1 - z.by), 0), dy: clamp(z.dy, height * (1 - z.by), 0) };
}

interface Hands {
  get: () => Zoom;
  put: (z: Zoom) => void;
  /** Whether one pointer that goes down here may pan; two always zoom. */
  pans: (e: PointerEvent) => boolean;
  /** Two fingers are down: whatever one of them began is off. */
  pinching?: () => void;
}

/** Hangs wheel, pinch and drag on a box. */
export function useHands(box: RefObject<HTMLElement | null>, hands: Hands): void {
  useEffect(() => {
    const el = box.current!;
    const down = new Map<number, [number, number]>();
    let pan = false;
    const put = (z: Zoom) => hands.put(z);
    const wheel = (e: WheelEvent) => {
      const page = document.documentElement;
      if (!e.ctrlKey && !e.metaKey && page.scrollHeight > page.clientHeight + 1) return; // the page itself scrolls
      e.preventDefault();
      const b = el.getBoundingClientRect();
      put(zoomAbout(hands.get(), Math.exp(-clamp(e.deltaY, -120, 120) / 300), e.clientX - b.left, e.clientY - b.top, b.width, b.height));
    };
    const start = (e: PointerEvent) => {
      if (e.button !== 0) return;
      down.set(e.pointerId, [e.clientX, e.clientY]);
      if (down.size === 2) hands.pinching?.();
      pan = down.size === 1 && hands.pans(e);
    };
    const move = (e: PointerEvent) => {
      const was = down.get(e.pointerId);
      if (!was) return;
      const b = el.getBoundingClientRect(), at: [number, number] = [e.clientX, e.clientY];
      if (down.size === 1 && pan) put(panned(hands.get(), at[0] - was[0], at[1] - was[1], b.width, b.height));
      if (down.size === 2) {
        const other = [...down.entries()].find(([id]) => id !== e.pointerId)![1];
        const span = (p: [number, number]) => Math.hypot(p[0] - other[0], p[1] - other[1]);
        const z = zoomAbout(hands.get(), span(was) > 10 ? span(at) / span(was) : 1, (at[0] + other[0]) / 2 - b.left, (at[1] + other[1]) / 2 - b.top, b.width, b.height);
        put(panned(z, (at[0] - was[0]) / 2, (at[1] - was[1]) / 2, b.width, b.height));
      }
      down.set(e.pointerId, at);
    };
    const end = (e: PointerEvent) => { down.delete(e.pointerId); };
    el.addEventListener("wheel", wheel, { passive: false });
    el.addEventListener("pointerdown", start);
    addEventListener("pointermove", move);
    addEventListener("pointerup", end);
    addEventListener("pointercancel", end);
    return () => {
      el.removeEventListener("wheel", wheel);
      el.removeEventListener("pointerdown", start);
      removeEventListener("pointermove", move);
      removeEventListener("pointerup", end);
      removeEventListener("pointercancel", end);
    };
  }, []);
}

/** The keys of a bench: plus, minus, 0, and arrows to pan; true when it was one. */
export function zoomKey(e: KeyboardEvent, z: Zoom, width: number, height: number, put: (z: Zoom) => void, about?: [number, number]): boolean {
  const [x, y] = about ?? [width / 2, height / 2];
  switch (e.key) {
    case "+": case "=": put(zoomAbout(z, 1.5, x, y, width, height)); return true;
    case "-": put(zoomAbout(z, 1 / 1.5, x, y, width, height)); return true;
    case "0": put(whole); return true;
  }
  return false;
}

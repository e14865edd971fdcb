// A move of the pointer, told before the frame. Browsers hold moves back until a
// frame begins, and what the core then plans is drawn in the frame after it. Where
// a browser also tells them as they come (pointerrawupdate, in Chromium), a drag
// takes those for which the core is free: their plan is mostly there when the frame
// begins, a frame earlier. The move that is told with the frame comes all the same,
// and changes nothing where it is the same place.
import { coreOf } from "./state";

/** Tells early of the moves that element has captured, until what is returned is called. */
export function early(element: Element, move: (e: PointerEvent) => void): () => void {
  const raw = (e: Event) => { if (coreOf().free) move(e as PointerEvent); };
  element.addEventListener("pointerrawupdate", raw);
  return () => element.removeEventListener("pointerrawupdate", raw);
}

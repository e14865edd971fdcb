// The two buttons beside a number that make it 1 less or more: what a drag on the
// drawing does, by clicks alone. By keys the field and the drawing have it, so Tab
// passes them by.
import { useRef } from "preact/hooks";

export interface Nudge {
  words: [string, string];
  least?: number;
  most?: number;
  /** From where an empty field begins. */
  start?: number;
}

/** Makes the buttons of a number: which way by, its sign. A click passes the new
 *  number to put; leaving a button ends what its clicks began. */
export function useNudge(nudge: Nudge | undefined, value: number | null, put: (x: number) => void, ended?: () => void) {
  const from = value ?? nudge?.start ?? 0, least = nudge?.least ?? -Infinity, most = nudge?.most ?? Infinity;
  const at = useRef(from); // clicks may come faster than the page is drawn
  at.current = from;
  const step = (by: number) => put(at.current = Math.min(most, Math.max(least, Math.round((at.current + by) * 1000) / 1000)));
  return (by: number, sign: string) => nudge && (
    <button
      type="button" class="small nudge" tabIndex={-1} aria-label={nudge.words[by < 0 ? 0 : 1]} disabled={by < 0 ? from <= least : from >= most}
      onClick={() => step(by)} onBlur={ended}
    >{sign}</button>
  );
}

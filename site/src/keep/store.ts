// The versions that the browser keeps, each under a key of its own that tells
// its pot, time and tab. No tab ever writes what another wrote, so two open at
// once cannot overwrite one another. A convenience: browsers may refuse it, share
// it between files or throw it away, so that every access may fail and the saved
// file is the truth.
import { surplus } from "./thin";

/** What is told of a version without reading it. */
export interface Entry { key: string; pot: string; at: number; tab: string }

/** What is kept of a version. Words are the verdict as it was said. */
export interface Kept {
  text: string; name: string;
  verdict: string; words: string;
  /** It was saved to a file; it came from one, a link or a sample as it is. */
  saved: boolean; given: boolean;
}

const MARK = "moldwright.kept.";
/** Pots that are kept; beyond that the one that was left alone longest goes. */
const POTS = 24;

const parse = (key: string): Entry | null => {
  const m = /^moldwright\.kept\.(\w+)\.(\w+)\.(\w+)$/.exec(key);
  return m && { key, pot: m[1]!, at: parseInt(m[2]!, 36), tab: m[3]! };
};

export const isKept = (key: string): Entry | null => parse(key);

/** Every version, newest first; undefined where the browser refuses. */
export function entries(): Entry[] | undefined {
  try {
    return Object.keys(localStorage).map(parse).filter((e) => e !== null).sort((a, b) => b.at - a.at);
  } catch {
    return undefined;
  }
}

export function read({ key }: Entry): Kept | null {
  try {
    return JSON.parse(localStorage.getItem(key) ?? "null") as Kept | null;
  } catch {
    return null;
  }
}

export function drop(es: readonly { key: string }[]): void {
  try {
    for (const e of es) localStorage.removeItem(e.key);
  } catch {
    // then it stays
  }
}

/** Writes a text under a key; where the room is used up, versions go that are
 *  worth least beside that pot. False where the browser refuses. */
export function put(key: string, text: string, pot: string | null): boolean {
  for (;;) {
    try {
      localStorage.setItem(key, text);
      return true;
    } catch {
      const least = leastWorth(pot);
      if (!least) return false;
      drop(least);
    }
  }
}

/** Keeps a version, and thins what is kept. Null where the browser refuses. */
export function write(pot: string, tab: string, at: number, kept: Kept): Entry | null {
  const e: Entry = { key: `${MARK}${pot}.${at.toString(36)}.${tab}`, pot, at, tab };
  const text = JSON.stringify(kept);
  if (!put(e.key, text, pot)) return null;
  const all = entries() ?? [];
  drop(surplus(all.filter((o) => o.pot === pot), at));
  for (const old of [...new Set(all.map((o) => o.pot))].slice(POTS)) drop(all.filter((o) => o.pot === old));
  return e;
}

/** What goes first when there is no room: the oldest version that is not the
 *  newest of its pot, then, for a pot, the newest of the one left alone longest. */
function leastWorth(pot: string | null): Entry[] | null {
  const all = entries() ?? [], seen = new Set<string>(), older: Entry[] = [];
  for (const e of all) {
    if (seen.has(e.pot)) older.push(e);
    seen.add(e.pot);
  }
  const last = older.at(-1) ?? (pot === null ? undefined : all.filter((e) => e.pot !== pot).at(-1));
  return last ? [last] : null;
}

// What the browser keeps of a class between visits: exercises under way and sets
// in the making. Each stands under a key of its own that tells its kind, row and
// tab, so that two tabs never write what the other wrote: a row is one student's
// exercise or one set. A tab that goes on with what another left writes it under
// its own name and takes the other away; one that is still at it puts it back.
// As with the job a convenience that may fail; the saved files are the truth.
import { drop, put } from "../keep/store";
import { fresh, me, rename, returns } from "../keep/tab";
import type { Session } from "./room";
import type { ClassSet } from "./types";

export type KeptSession = Omit<Session, "questions" | "practice"> & { inside: boolean };
interface Kinds { exercise: KeptSession; class: ClassSet }
type Kind = keyof Kinds;

/** One that is kept, with the time it was written, ms. */
export interface Kept<K extends Kind> { key: string; row: string; tab: string; at: number; what: Kinds[K] }

/** How many of each kind stay; beyond that the oldest goes. */
const MOST = 24;

const sound: { [K in Kind]: (v: Kinds[K]) => boolean } = {
  exercise: (s) => Array.isArray(s.set?.questions) && Array.isArray(s.work) && typeof s.student === "string",
  class: (s) => s.format === "moldwright-class" && Array.isArray(s.questions),
};

/** The row that this tab writes, of each kind, and the key that it took it from. */
const rows: { [K in Kind]: { row: string; from: string } } = { exercise: { row: fresh(), from: "" }, class: { row: fresh(), from: "" } };

/** What is written from here on goes into a row: that of one that is kept, or a new one. */
export const beginRow = (kind: Kind, old: Kept<Kind> | null): void => { rows[kind] = { row: old?.row ?? fresh(), from: old?.key ?? "" }; };

const keyOf = (kind: Kind): string => `moldwright.${kind}.${rows[kind].row}.${me()}`;

const parse = (kind: Kind, key: string) => {
  const m = /^moldwright\.(\w+)\.(\w+)\.(\w+)$/.exec(key);
  return m && m[1] === kind ? { key, row: m[2]!, tab: m[3]! } : null;
};

/** All of a kind, newest first; none where the browser refuses. */
export function kept<K extends Kind>(kind: K): Kept<K>[] {
  const found: Kept<K>[] = [];
  try {
    for (const key of Object.keys(localStorage)) {
      const e = parse(kind, key);
      const v = e && read<K>(key);
      if (e && v && Number.isFinite(v.at) && v.what && sound[kind](v.what)) found.push({ ...e, ...v });
    }
  } catch {
    return [];
  }
  return found.sort((a, b) => b.at - a.at);
}

function read<K extends Kind>(key: string): { at: number; what: Kinds[K] } | null {
  try {
    return JSON.parse(localStorage.getItem(key) ?? "null") as { at: number; what: Kinds[K] } | null;
  } catch {
    return null;
  }
}

/** What stands under the one key that each kind once had becomes a row of no tab. */
function takeUp(): void {
  try {
    for (const kind of ["exercise", "class"] as const) {
      const key = `moldwright.${kind}`, what = JSON.parse(localStorage.getItem(key) ?? "null");
      if (what && sound[kind](what) && put(`${key}.${fresh()}.${fresh()}`, JSON.stringify({ at: Date.now(), what }), null)) drop([{ key }]);
    }
  } catch {
    // it stays where it is
  }
}
takeUp();

/** What this tab goes on with: after a reload its own, on a new visit the newest. */
export function own<K extends Kind>(kind: K): Kept<K> | undefined {
  const all = kept(kind);
  return returns ? all.find((e) => e.tab === me()) : all[0];
}

/** Keeps what stands in the row of this tab; false where the browser refuses. */
function keep<K extends Kind>(kind: K, what: Kinds[K]): boolean {
  const key = keyOf(kind), { from } = rows[kind], all = kept(kind);
  const at = Math.max(Date.now(), 1 + (all.find((e) => e.tab === me())?.at ?? 0));
  if (!put(key, JSON.stringify({ at, what }), null)) return false;
  rows[kind].from = key;
  drop(all.filter((e) => e.key !== key).filter((e, i) => e.key === from || i >= MOST - 1));
  return true;
}

/** Keeps an exercise; one that has no name yet, or is a teacher's trial, is not kept. */
export function keepSession(s: Session | null, inside: boolean): boolean {
  if (!s || s.trial || !s.student) return true;
  const { questions: _, practice: __, ...rest } = s;
  return keep("exercise", { ...rest, inside });
}

export const keepSet = (s: ClassSet): boolean => keep("class", s);

/** Sets that can be taken back: each once, without the one on the panel. */
export function otherSets(now: ClassSet): Kept<"class">[] {
  const seen = new Set([JSON.stringify(now)]);
  return kept("class").filter((e) => {
    const text = JSON.stringify(e.what);
    if (!e.what.questions.length || seen.has(text)) return false;
    seen.add(text);
    return e.key !== keyOf("class");
  });
}

/** Calls when another tab has changed what is kept. A copy of a tab writes under
 *  the name of the one it was copied from: that one takes another name. What this
 *  tab holds is then kept again, as it is where another has taken it away. */
export function onOthers(changed: () => void, again: (kind: Kind) => void): void {
  addEventListener("storage", (e) => {
    for (const kind of ["exercise", "class"] as const) {
      if (e.key === null || !parse(kind, e.key)) continue;
      if (parse(kind, e.key)?.tab === me() && e.newValue !== null) {
        rename();
        again(kind);
      } else if (e.key === keyOf(kind) && e.newValue === null) again(kind);
      changed();
    }
  });
}

// Keeps the job on the bench a moment after each change, and at once when the
// page is left. Each pot that is opened begins a row of versions of its own; undo
// goes back into the row that the job belongs to.
import type { Job } from "../contract";
import { canonical } from "../canonical";
import { drop, type Entry, entries, isKept, type Kept, read, write } from "./store";
import { fresh, me, rename, returns } from "./tab";

const REST = 400;

/** What the page knows of the job on the bench. */
export interface Bench { job: Job; verdict: string; words: string; saved: boolean; given: boolean }

let look: () => Bench;
let refused: () => void;
let timer = 0;
let pot = fresh();
let last: { key: string; text: string; saved: boolean; words: string } | null = null;
const rowOf = new WeakMap<Job, string>();
const hear = new Set<() => void>();

/** Starts keeping; bench tells the job, refuse hears that the browser keeps nothing. */
export function keepFrom(bench: () => Bench, refuse: () => void): void {
  look = bench;
  refused = refuse;
  addEventListener("pagehide", keepNow);
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "hidden") keepNow(); });
  addEventListener("storage", (e) => {
    const other = e.key === null ? null : isKept(e.key);
    if (other && e.newValue !== null && other.tab === me()) {
      // a copy of this tab has written under its name
      rename();
      last = null;
      keepSoon();
    }
    for (const f of hear) f();
  });
}

/** Calls when what is kept has changed, here or in another tab; gives the way to stop. */
export function onKept(f: () => void): () => void {
  hear.add(f);
  return () => hear.delete(f);
}

/** The row that a job belongs to from here on: a new one, or that of a version. */
export function begins(job: Job, row: string | null): void {
  // a pot that was only looked at leaves nothing behind
  const es = (entries() ?? []).filter((e) => e.pot === pot);
  if (es.length && es.every((e) => e.tab === me() && read(e)?.given)) drop(es);
  pot = row ?? fresh();
  rowOf.set(job, pot);
}

/** The job has changed: it is kept once it has rested. */
export function keepSoon(): void {
  clearTimeout(timer);
  timer = window.setTimeout(keepNow, REST);
}

/** A verdict has come: a version that was kept without one takes it up. */
export function keepWords(): void { if (last?.words === "") keepSoon(); }

/** Keeps the job now, unless it is kept as it stands. */
export function keepNow(): void {
  if (!timer) return; // nothing has changed since
  clearTimeout(timer);
  timer = 0;
  const { job, verdict, words, saved, given } = look();
  pot = rowOf.get(job) ?? pot;
  rowOf.set(job, pot);
  const text = canonical(job);
  if (last?.text === text && last.saved === saved && last.words === words) return;
  const at = Math.max(Date.now(), 1 + Math.max(0, ...(entries() ?? []).filter((e) => e.pot === pot && e.tab === me()).map((e) => e.at)));
  const same = last?.text === text ? last.key : null;
  const kept: Kept = { text, name: job.name, verdict, words, saved, given };
  const e = write(pot, me(), at, kept);
  if (!e) return refused();
  if (same) drop([{ key: same }]); // the same job, now with its verdict or saved
  last = { key: e.key, text, saved, words };
  for (const f of hear) f();
}

export interface Found { entry: Entry; kept: Kept }

/** What the page may open on: this tab's own last job, then the newest of any,
 *  newest first; undefined where the browser keeps nothing. */
export function left(): Found[] | undefined {
  const es = entries();
  if (!es) return undefined;
  const own = returns ? es.find((e) => e.tab === me()) : undefined;
  const all = own ? [own, ...es.filter((e) => e !== own)] : es;
  const found: Found[] = [];
  for (const entry of all) {
    const kept = read(entry);
    if (kept && typeof kept.text === "string") found.push({ entry, kept });
    if (found.length === 4) break;
  }
  return found;
}

/** All that is kept, by pot, the pot on the bench first; newest first in each. */
export function pots(): { pot: string; here: boolean; versions: Found[] }[] {
  const rows = new Map<string, Found[]>();
  for (const entry of entries() ?? []) {
    const kept = read(entry);
    if (!kept || typeof kept.text !== "string") continue;
    rows.set(entry.pot, [...(rows.get(entry.pot) ?? []), { entry, kept }]);
  }
  return [...rows].map(([p, versions]) => ({ pot: p, here: p === pot, versions })).sort((a, b) => Number(b.here) - Number(a.here));
}

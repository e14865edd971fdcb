// The page's one state and the few ways to change it: edit the job, undo, redo,
// open another. Each change is sent to the core, and the plan that comes back is
// kept with the job it belongs to, so that what is shown is never said of
// another job.
import { canonical } from "./canonical";
import type { Core, Progress } from "./core";
import type { Fault, Job, Plan } from "./contract";
import { nodesOf } from "./editor/surface";
import { whole, type Zoom } from "./editor/zoom";
import { History, type Said } from "./history";
import { firstLook, type Look } from "./look";
import { begins, type Found, keepFrom, keepNow, keepSoon, keepWords } from "./keep/autosave";
import type { Svg } from "./trace/svg";
import type { Behind, Tracing } from "./trace/tracing";
import { w } from "./words";
import type { From } from "./words/from";

export type Tab = "form" | "release" | "parts" | "tooling" | "casting" | "sheets" | "class";

export interface State {
  job: Job;
  /** The job is complete, and may be edited. */
  ready: boolean;
  plan: Plan | null;
  /** The job that plan is of, and the last job that the core has answered,
   *  with a plan or with faults; another than job while it works. */
  planned: Job | null;
  answered: Job | null;
  /** What the core has against the job; empty where there is a plan. */
  faults: Fault[];
  progress: Progress | null;
  slow: boolean;
  tab: Tab;
  /** Index of the selected node: of form.inner where inside, else of form.outer. */
  node: number | null;
  inside: boolean;
  /** Name of the part that the Release panel looks at. */
  part: string | null;
  look: Look;
  /** Bytes of the job as last saved to a file, and as it came from a link or a
   *  sample, from which it can be had again. */
  saved: string | null;
  given: string | null;
  /** A damaged job of which something could be read, before it is taken or left. */
  damaged: Damaged | null;
  /** How near the drawing is looked at, and whether a dragged node snaps. */
  zoom: Zoom;
  snap: boolean;
  /** The picture that is traced, the one behind the profile, and the drawing
   *  whose lines are chosen from. */
  trace: Tracing | null;
  behind: Behind | null;
  svg: Svg | null;
  storage: boolean;
  /** The last file that was handed to the browser. */
  handed: { name: string } | null;
  toast: { words: string; undo: boolean } | null;
  /** Text that waits in the box for rows, and its faults. */
  rows: { text: string; units: string; across: string; open: boolean; faults: Fault[] };
}

export interface Damaged { from: From; fault: Fault; job: Job; notes: Fault[] }

let state: State;
let history: History;
let core: Core;
let draw: () => void = () => {};
let drawn = false;
let toastTimer = 0;

export const now = (): State => state;
export const steps = (): History => history;
export const coreOf = (): Core => core;

/** Starts with the first of what is left of earlier visits that reads as a job,
 *  or else with the sample, which is complete, and with its plan where that is at
 *  hand. The core completes the others, since an older one may lack keys that are
 *  saved now. A version that does not read stays among the kept. */
export async function begin(left: Found[] | undefined, job: Job, plan: (() => Promise<Plan>) | null, c: Core, render: () => void): Promise<void> {
  core = c;
  draw = render;
  history = new History(job);
  state = {
    job, ready: false, plan: null, planned: null, answered: null, faults: [], progress: null, slow: false,
    tab: "form", node: null, inside: false, part: null, look: firstLook, saved: null, given: null, damaged: null, zoom: whole, snap: true, trace: null, behind: null, svg: null, handed: null, storage: left !== undefined, toast: null,
    rows: { text: "", units: "", across: "radius", open: false, faults: [] },
  };
  keepFrom(bench, () => { if (state.storage) { set({ storage: false }); say(w.keep.full); } });
  for (const v of left ?? []) {
    const a = await core.ask("read", { kind: "job", text: v.kept.text });
    const reply = a && parse<{ job: Job }>(a.reply);
    if (!reply) return;
    if (!("error" in reply)) return onBench(reply.job, v);
    if (v === left![0]) say(w.keep.unread(v.kept.name || w.keep.nameless, reply.error.message));
  }
  if (plan && !left?.length) return onBench(job, undefined, await plan());
  // the panels are drawn while the core starts, not while the page is still being read
  if (document.readyState === "loading") await new Promise((read) => document.addEventListener("DOMContentLoaded", read, { once: true }));
  onBench(job);
}

function onBench(job: Job, v?: Found, plan?: Plan): void {
  history = new History(job);
  begins(job, v?.entry.pot ?? null);
  const bytes = canonical(job);
  set({ job, ready: true, saved: v?.kept.saved ? bytes : null, given: !v || v.kept.given ? bytes : null, ...(plan && { plan, planned: job, answered: job }) });
  replan();
}

/** The job on the bench, as it is kept. */
function bench() {
  const { job, plan, planned, saved, given } = state, text = canonical(job);
  const verdict = plan && planned === job ? plan.schemes.find((s) => s.id === plan.chosen)?.verdict ?? "" : "";
  return { job, verdict, words: verdict && plan ? plan.verdict : "", saved: saved === text, given: given === text };
}

/** Whether the job stands in no file, and cannot be had again as it is. */
export const unsaved = (): boolean => {
  const text = canonical(state.job);
  return text !== state.saved && text !== state.given;
};

/** Changes the state and draws once before the next frame. */
export function set(patch: Partial<State>): void {
  state = { ...state, ...patch };
  if (drawn) return;
  drawn = true;
  requestAnimationFrame(() => { drawn = false; draw(); });
}

/** Changes what the panels look at. */
export function lookAt(patch: Partial<Look>): void { set({ look: { ...state.look, ...patch } }); }

/** Brings into view, once it is drawn, what was asked for: on a phone drawing and panels stand below one another. */
export function reveal(selector: ".drawing" | ".panels"): void {
  if (!matchMedia("(max-width: 56.25em)").matches) return;
  requestAnimationFrame(() => document.querySelector(selector)?.scrollIntoView({ block: selector === ".panels" ? "start" : "nearest" }));
}

/** Says something in passing; with undo, how to take it back. It stays as long as
 *  it takes to read slowly, and while a pointer or the keyboard is on it. */
export function say(words: string, undo = false): void {
  const over = () => {
    if (document.querySelector(".toast:is(:hover, :focus-within)")) toastTimer = window.setTimeout(over, 2000);
    else set({ toast: null });
  };
  clearTimeout(toastTimer);
  toastTimer = window.setTimeout(over, Math.max(8000, 120 * words.length));
  set({ toast: { words: undo ? words.charAt(0).toUpperCase() + words.slice(1) : words, undo } }); // the name of a step begins small
}

/** Changes the job: one step of undo, named by words; steps with the same tag
 *  run together until settle. */
export function edit(words: Said, tag: string, change: (j: Job) => void): void {
  const job = structuredClone(state.job);
  change(job);
  if (canonical(job) === canonical(state.job)) return;
  history.push(job, words, tag);
  take(job);
}

/** Ends the step under way. */
export function settle(): void { history.close(); }

/** Makes a change that was offered: a step of undo of its own, told with the way
 *  back, and brought into view. */
export function make(words: Said, change: (j: Job) => void): void {
  edit(words, "", change);
  settle();
  say(words(), true);
  reveal(".drawing");
}

/** Where another job comes from: a file, a link or a sample that still has it, or
 *  a version or a rescue that only this page holds. */
export type Origin = "file" | "given" | "kept";

/** Puts another job in place of this one; undo brings the old one back. Row is
 *  the row of kept versions that it goes on. False where it is the same job. */
export function replace(job: Job, words: Said, origin: Origin, row: string | null = null): boolean {
  const bytes = canonical(job);
  if (bytes === canonical(state.job)) {
    set(origin === "file" ? { saved: bytes } : origin === "given" ? { given: bytes } : {});
    return false;
  }
  keepNow();
  begins(job, row);
  history.push(job, words, "");
  history.close();
  set({ node: null, part: null, look: firstLook, zoom: whole, svg: null, saved: origin === "file" ? bytes : null, given: origin === "given" ? bytes : null });
  take(job);
  return true;
}

export function undo(): void {
  const words = history.back;
  if (words === null) return;
  history.undo();
  take(history.job);
  say(w.undone(words));
}

export function redo(): void {
  const words = history.forth;
  if (words === null) return;
  history.redo();
  take(history.job);
  say(w.redone(words));
}

function take(job: Job): void {
  const node = state.node !== null && state.node < nodesOf(job, state.inside).length ? state.node : null;
  set({ job, node });
  keepSoon();
  replan();
}

/** The language has changed: what the core has said is asked for anew. */
export function anew(): void {
  clearTimeout(toastTimer);
  set({ toast: null, rows: { ...state.rows, faults: [] } });
  if (!state.ready) return;
  set({ answered: null });
  lookAt({ near: null });
  replan();
}

/** Asks for the plan again, after one that was stopped or that failed. */
export function tryAgain(): void {
  set({ answered: null, faults: [] });
  replan();
}

/** Whether a fault says nothing against the job, so that trying again may help. */
export const mayPass = (f: Fault | undefined): boolean => f?.code === "stopped" || f?.code === "internal";

function replan(): void {
  const job = state.job;
  void core.ask("plan", { job }).then((a) => {
    if (a === null) return;
    const reply = parse<Plan>(a.reply), newest = state.job === job;
    if ("error" in reply) {
      if (newest) set({ answered: job, faults: faults(reply) });
      return;
    }
    // one that a newer job has overtaken is drawn too, lest nothing moves under a fast hand
    set({ plan: reply, planned: job, ...(newest ? { answered: job, faults: [] } : {}) });
    if (newest) keepWords();
  });
}

export interface Refusal { error: Fault; errors?: Fault[] }

/** A reply as a value, or what the core has against the request. */
export function parse<T extends object>(reply: string): T | Refusal {
  return JSON.parse(reply) as T | Refusal;
}

/** Every fault of a refusal, the first first. */
export const faults = (r: Refusal): Fault[] => r.errors ?? [r.error];

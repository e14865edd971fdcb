// The page's one state and the few ways to change it: edit the job, undo, redo,
// open another. Each change is sent to the core, and the plan that comes back is
// kept with the job it belongs to, so that what is shown is never said of
// another job.
import type { Core, Progress } from "./core";
import type { Fault, Job, Plan } from "./contract";
import { whole, type Zoom } from "./editor/zoom";
import { History } from "./history";
import { firstLook, type Look } from "./look";
import { canonical, keep, setAside } from "./storage";
import type { Svg } from "./trace/svg";
import type { Behind, Tracing } from "./trace/tracing";
import { w } from "./words";

export type Tab = "form" | "release" | "parts" | "tooling" | "casting" | "sheets" | "class";

export interface State {
  job: Job;
  /** The core runs and has completed the job. */
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
  /** Index of the selected node of form.outer. */
  node: number | null;
  /** Name of the part that the Release panel looks at. */
  part: string | null;
  look: Look;
  /** Bytes of the job as last saved to a file. */
  saved: string | null;
  /** How near the drawing is looked at, and whether a dragged node snaps. */
  zoom: Zoom;
  snap: boolean;
  /** The picture that is traced, the one behind the profile, and the drawing
   *  whose lines are chosen from. */
  trace: Tracing | null;
  behind: Behind | null;
  svg: Svg | null;
  storage: boolean;
  toast: { words: string; undo: boolean } | null;
  /** Text that waits in the box for rows, and its faults. */
  rows: { text: string; units: string; across: string; open: boolean; faults: Fault[] };
}

let state: State;
let history: History;
let core: Core;
let draw: () => void = () => {};
let drawn = false;
let slowTimer = 0;
let toastTimer = 0;

export const now = (): State => state;
export const steps = (): History => history;
export const coreOf = (): Core => core;

/** Starts with the first of the texts that reads as a job. The core completes
 *  it, since an older one may lack keys that are saved now. A text that does not
 *  read is set aside, not lost. */
export async function begin(texts: string[], storage: boolean, c: Core, render: () => void): Promise<void> {
  core = c;
  draw = render;
  const job = JSON.parse(texts[texts.length - 1]!) as Job;
  history = new History(job);
  state = {
    job, ready: false, plan: null, planned: null, answered: null, faults: [], progress: null, slow: false,
    tab: "form", node: null, part: null, look: firstLook, saved: null, zoom: whole, snap: true, trace: null, behind: null, svg: null, storage, toast: null,
    rows: { text: "", units: "", across: "radius", open: false, faults: [] },
  };
  for (const text of texts) {
    const a = await core.ask("read", { kind: "job", text });
    const reply = a && parse<{ job: Job }>(a.reply);
    if (!reply) return;
    if (!("error" in reply)) {
      history = new History(reply.job);
      set({ job: reply.job, ready: true });
      return replan();
    }
    setAside(text);
    say(w.notKept(reply.error.message));
    if (text === texts[texts.length - 1]) set({ faults: faults(reply) });
  }
}

/** Changes the state and draws once before the next frame. */
export function set(patch: Partial<State>): void {
  state = { ...state, ...patch };
  if (drawn) return;
  drawn = true;
  requestAnimationFrame(() => { drawn = false; draw(); });
}

/** Changes what the panels look at. */
export function lookAt(patch: Partial<Look>): void { set({ look: { ...state.look, ...patch } }); }

/** Says something in passing; with undo, how to take it back. */
export function say(words: string, undo = false): void {
  clearTimeout(toastTimer);
  toastTimer = window.setTimeout(() => set({ toast: null }), 8000);
  set({ toast: { words, undo } });
}

/** Changes the job: one step of undo, named by words; steps with the same tag
 *  run together until settle. */
export function edit(words: string, tag: string, change: (j: Job) => void): void {
  const job = structuredClone(state.job);
  change(job);
  if (canonical(job) === canonical(state.job)) return;
  history.push(job, words, tag);
  take(job);
}

/** Ends the step under way. */
export function settle(): void { history.close(); }

/** Puts another job in place of this one; undo brings the old one back. */
export function replace(job: Job, words: string, saved: boolean): void {
  history.push(job, words, "");
  history.close();
  set({ node: null, part: null, look: firstLook, zoom: whole, saved: saved ? canonical(job) : null });
  take(job);
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
  const node = state.node !== null && state.node < job.form.outer.length ? state.node : null;
  set({ job, node });
  if (state.storage && !keep(job)) set({ storage: false });
  replan();
}

function replan(): void {
  const job = state.job;
  if (!slowTimer) slowTimer = window.setTimeout(() => set({ slow: true }), 400);
  void core.ask("plan", { job }).then((a) => {
    if (a === null || state.job !== job) return;
    clearTimeout(slowTimer);
    slowTimer = 0;
    const reply = parse<Plan>(a.reply);
    if ("error" in reply) set({ answered: job, faults: faults(reply), slow: false });
    else set({ plan: reply, planned: job, answered: job, faults: [], slow: false });
  });
}

export interface Refusal { error: Fault; errors?: Fault[] }

/** A reply as a value, or what the core has against the request. */
export function parse<T extends object>(reply: string): T | Refusal {
  return JSON.parse(reply) as T | Refusal;
}

/** Every fault of a refusal, the first first. */
export const faults = (r: Refusal): Fault[] => r.errors ?? [r.error];

// The guided first job: which step it is at, and how each step notices, from the
// state of the page alone, that it has been done. Every step is done with the
// real controls; the pot that was on the bench waits to be brought back.
import type { Job } from "../contract";
import { entries } from "../keep/store";
import { samples } from "../samples";
import { lookAt, now, replace, set, type State, type Tab } from "../state";
import { canonical } from "../canonical";
import { chosen } from "../verdict";
import { w } from "../words";

export interface Guide {
  at: number;
  /** The step has been done; it waits for Next. */
  done: boolean;
  /** The job that was on the bench, and the page as the step began. */
  before: Job; saved: boolean;
  from: State;
  /** All steps are behind, or it was left with another pot on the bench. */
  ended: "over" | "left" | null;
}

const potOf = samples[1]!;

interface Step {
  id: keyof typeof w.guide.steps;
  /** What it points at, nearest first: the first that is on the page. */
  at: string[];
  tab: Tab | null;
  done: (s: State, from: State) => boolean;
}

const onePart = ({ plan }: State) => !!plan && plan.chosen === "one" && chosen(plan).verdict === "clear";

export const steps: readonly Step[] = [
  { id: "pot", tab: null, at: [`.samples[open] [data-pot="${potOf.name}"]`, "[data-point=samples]"], done: (s) => s.job.name === potOf.name && onePart(s) },
  { id: "move", tab: null, at: [".drawing .node.rim", ".views button:first-child"], done: (s, from) => s.job !== from.job && !!s.plan && s.plan.chosen !== "one" },
  { id: "free", tab: "release", at: ["[data-point=near-one]", ".near"], done: onePart },
  { id: "apart", tab: "parts", at: ["#apart"], done: (s) => s.tab === "parts" && !!s.plan && s.look.apart >= s.plan.order.length },
  { id: "tooling", tab: "tooling", at: ["#tab-tooling"], done: (s) => s.tab === "tooling" },
  { id: "wall", tab: "casting", at: [".field:has([data-term=wall]) input"], done: (s, from) => s.job.clay.wall !== from.job.clay.wall },
  { id: "sheet", tab: "sheets", at: ["#tabpanel .actions .primary"], done: (s, from) => s.handed !== from.handed && /\.(pdf|svg)$/.test(s.handed?.name ?? "") },
  { id: "save", tab: null, at: ["[data-point=save]"], done: (s, from) => s.handed !== from.handed && s.saved === canonical(s.job) },
];

let guide: Guide | null = null;
let offered = entries()?.length === 0 && !location.hash;

export const guided = (): Guide | null => guide;
export const offering = (): boolean => offered && !guide;

function put(next: Guide | null): void {
  guide = next;
  set({});
}

export function refuse(): void {
  offered = false;
  set({});
}

export function start(): void {
  offered = false;
  const s = now();
  lookAt({ space: false, table: false });
  put({ at: 0, done: false, before: s.job, saved: s.saved === canonical(s.job), from: s, ended: null });
}

/** Looks whether the step has been done; called whenever the page is drawn. */
export function notice(): void {
  const s = now();
  if (!guide || guide.done || guide.ended || s.answered !== s.job || s.faults.length) return;
  if (steps[guide.at]!.done(s, guide.from)) put({ ...guide, done: true });
}

/** On to the next step that is not done already. */
export function next(): void {
  if (!guide) return;
  const s = now(), rest = steps.findIndex((step, i) => i > guide!.at && !step.done(s, s));
  if (rest > 0) put({ ...guide, at: rest, done: false, from: s });
  else end("over");
}

/** Ends it, or asks which pot shall stay where another one is on the bench. */
export function end(ended: "over" | "left"): void {
  if (!guide) return;
  put(ended === "left" && now().job === guide.before ? null : { ...guide, ended });
}

export const close = (): void => put(null);

export function bringBack(): void {
  if (!guide) return;
  const { before, saved } = guide;
  guide = null;
  replace(before, () => w.guide.broughtBack, saved ? "file" : "kept");
}

/** What the step points at, if it is on the page: the control, or the way to it. */
export function pointed(): Element | null {
  if (!guide || guide.done || guide.ended) return null;
  const { at, tab } = steps[guide.at]!;
  if (tab && now().tab !== tab) return document.getElementById(`tab-${tab}`);
  for (const a of at) {
    const el = document.querySelector(a);
    if (el) return el;
  }
  return null;
}

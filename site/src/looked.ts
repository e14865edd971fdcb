// Which wall the Release panel and the drawing look at: what one part holds,
// under its own pull, or the whole wall under one of the three pulls. Where a
// scheme holds the whole wall under that pull, its part carries the figures.
import type { Part, Plan, Scheme, Verdict } from "./contract";
import type { Pull } from "./look";
import { now } from "./state";
import { held, pullOf } from "./view";

export interface Looked {
  pull: Pull;
  /** Pieces of the contour, from and to. */
  from: number; to: number;
  /** The part that is judged on just this wall, if there is one. */
  part: Part | null;
}

/** The scheme with one part that holds the whole wall under a pull. */
const alone: Record<Pull, string> = { 0: "one", 1: "", 2: "sides2" };

/** The part that is looked at: the one chosen, else the one that lets go worst. */
export function partOf(scheme: Scheme, name: string | null): Part {
  const worst = (v: Verdict) => scheme.parts.find((p) => p.verdict === v);
  return scheme.parts.find((p) => p.name === name) ?? worst("catches") ?? worst("rubs") ?? scheme.parts[0]!;
}

export function looked(plan: Plan, scheme: Scheme): Looked {
  const { look, part: name } = now();
  if (look.pull !== null) {
    const part = plan.schemes.find((s) => s.id === alone[look.pull!])?.parts[0] ?? null;
    return { pull: look.pull, from: 0, to: plan.drawing.stretches.length, part };
  }
  const part = partOf(scheme, name);
  const [from, to] = held(plan, part);
  return { pull: pullOf(part), from, to, part };
}

/** The line that is looked at, and the draft of its pieces; of a core the inner surface. */
export function walled(plan: Plan, { part, from, to, pull }: Looked) {
  const { contour, stretches, inner, innerDraft } = plan.drawing;
  if (part?.name === "core" && innerDraft) return { line: inner, draft: (i: number) => innerDraft[i]!, from: 0, to: innerDraft.length, core: true };
  return { line: contour, draft: (i: number) => stretches[i]!.draft[pull], from, to, core: false };
}

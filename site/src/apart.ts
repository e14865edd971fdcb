// How far each part has moved when the mold is taken apart step by step in the
// computed order, each along its pull, and where that ends: at the first part
// that is held. A held part does not move, and nothing after it does.
import type { Part, Plan, Scheme } from "./contract";
import type { Look } from "./look";

export interface Apart {
  /** The share of its way that each part has gone, by name. */
  gone: Map<string, number>;
  /** The part that is moving, or the one that is held; null when closed or done. */
  part: Part | null;
  step: number;
  /** The catch that holds it: the deepest. */
  stuck: { depth: number; blockedAtZ: number } | null;
}

export function apart(plan: Plan, scheme: Scheme, look: Pick<Look, "apart" | "body">): Apart {
  const out: Apart = { gone: new Map(), part: null, step: 0, stuck: null };
  for (const [i, name] of plan.order.entries()) {
    const part = scheme.parts.find((p) => p.name === name), go = Math.min(Math.max(look.apart - i, 0), 1);
    if (!part || go === 0) break;
    out.part = part;
    out.step = i + 1;
    const held = part.catches
      .map((c) => ({ depth: look.body === "cast" ? c.clayDepth : c.depth, blockedAtZ: c.blockedAtZ, forgiven: look.body === "cast" && c.clayForgives }))
      .filter((c) => !c.forgiven).sort((a, b) => b.depth - a.depth)[0];
    if (held) {
      out.stuck = held;
      break;
    }
    out.gone.set(name, go);
  }
  return out;
}

/** How far a part moves in all, in mm: so that it stands clear of the pot. */
export function way(part: Part, high: number, wide: number): number {
  return part.pull[2] === 0 ? 0.9 * wide : 0.75 * high;
}

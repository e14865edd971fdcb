// Which line of the form a node stands on: its outer surface, or the inner one of
// its own that a pot cast solid has. Nodes of the inner one are called by the letter
// of the core, which forms it: K1, K2 and so on.
import type { At, Job, Node, Plan } from "../contract";
import { hundredth } from "../numbers";
import { seat, unseat } from "../view";

export const nodesOf = (j: Job, inside: boolean): Node[] => (inside ? j.form.inner ?? [] : j.form.outer);
/** The planned line through these nodes. */
export const lineOf = (plan: Plan, inside: boolean): At[] => (inside ? plan.drawing.inner ?? [] : plan.drawing.contour);
export const nodeName = (i: number, inside: boolean): number | string => (inside ? `K${i + 1}` : i + 1);
export const fieldOf = (inside: boolean): string => (inside ? "form.inner" : "form.outer");

/** Why no inner surface can begin, or null: a closed form has no opening for a core,
 *  and a wall that fills the pot leaves no inside. */
export function innerBar(job: Job, plan: Plan | null): "closed" | "full" | null {
  if (job.form.outer.at(-1)!.r === 0) return "closed";
  return plan && plan.drawing.inner?.length > 1 ? null : "full";
}

/** Nodes of an inner surface to begin with: the inside of the drained cast, at the
 *  places that lie nearest to the outer nodes, drawn in below those that a core
 *  could not pass with the draft asked for. The floor is level, or rises. */
export function innerNodes(job: Job, plan: Plan): Node[] {
  const line = plan.drawing.inner, wall = job.clay.wall, out: { node: Node; at: number }[] = [];
  const node = (i: number, corner: boolean): Node => {
    const [r, z] = line[i]!, n: Node = { r: Math.max(0, hundredth(r / plan.scale)), z: hundredth(unseat(plan, z)) };
    return corner ? { ...n, corner: true } : n;
  };
  const put = (i: number, corner: boolean) => {
    const at = line[i]!, last = out.at(-1);
    if (!last || (i > last.at && Math.hypot(at[0] - line[last.at]![0], at[1] - line[last.at]![1]) > wall / 2)) out.push({ node: node(i, corner), at: i });
  };
  put(0, true);
  const end = line.length - 1;
  for (const n of job.form.outer.slice(1, -1)) {
    const r = n.r * plan.scale, z = seat(plan, n.z);
    let best = 0;
    line.forEach((p, i) => { if (Math.hypot(p[0] - r, p[1] - z) < Math.hypot(line[best]![0] - r, line[best]![1] - z)) best = i; });
    if (Math.hypot(line[end]![0] - line[best]![0], line[end]![1] - line[best]![1]) > wall / 2) put(best, !!n.corner);
  }
  // three at least, so that the core has a wall
  if (out.length < 2) put(Math.round(end / 2), false);
  const nodes = [...out.map((o) => o.node), node(end, true)];
  const slope = Math.tan(((job.rules.leastDraft + 1) * Math.PI) / 180); // a degree more, since the curve swings about its nodes
  const up = plan.drawing.turned ? -1 : 1, kept = [nodes.pop()!], floor = nodes[0]!.z;
  for (const n of nodes.slice(1).reverse()) {
    const above = kept[0]!;
    if ((n.z - floor) * up < 0) n.z = floor; // a foot ring stays full of clay
    n.r = Math.min(n.r, hundredth(above.r - slope * Math.max(0, (above.z - n.z) * up)));
    if (n.r > wall / 2 && Math.hypot(n.r - above.r, n.z - above.z) > wall / 2) kept.unshift(n);
  }
  return [nodes[0]!, ...kept];
}

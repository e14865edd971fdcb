// What can be done to a node of the profile, each one named step of undo. The
// drawing, the bar below it and the table all call these.
import type { At, Node, Plan } from "../contract";
import { hundredth } from "../numbers";
import { edit, now, set, settle } from "../state";
import { unseat } from "../view";
import { w } from "../words";

export function moveNode(i: number, r: number, z: number): void {
  edit(() => w.moved(i + 1), `node${i}`, (j) => {
    const n = j.form.outer[i]!;
    n.r = Math.max(0, hundredth(r));
    n.z = hundredth(z);
  });
}

export function turnNode(i: number): void {
  edit(() => w.turned(i + 1), "", (j) => {
    const n = j.form.outer[i]!;
    j.form.outer[i] = n.corner ? { r: n.r, z: n.z } : { r: n.r, z: n.z, corner: true };
  });
  settle();
}

/** Puts a node on the wall: between node i and the next, at a place or half way. */
export function addNode(i: number, at?: At): void {
  const outer = now().job.form.outer;
  const a = Math.min(i, outer.length - 2);
  const p = outer[a]!, q = outer[a + 1]!;
  const [r, z] = at ?? halfWay(a) ?? [(p.r + q.r) / 2, (p.z + q.z) / 2];
  const node: Node = { r: Math.max(0, hundredth(r)), z: hundredth(z) };
  if (p.corner && q.corner) node.corner = true;
  edit(() => w.added(a + 1), "", (j) => { j.form.outer.splice(a + 1, 0, node); });
  settle();
  set({ node: a + 1 });
}

export function removeNode(i: number): void {
  if (now().job.form.outer.length <= 2) return;
  edit(() => w.removed(i + 1), "", (j) => { j.form.outer.splice(i, 1); });
  settle();
  set({ node: Math.min(i, now().job.form.outer.length - 1) });
}

/** Makes the stretch between two neighbours straight: a corner at both ends. */
export function straighten(i: number, k: number): void {
  edit(() => w.straightened(i + 1, k + 1), "", (j) => {
    j.form.outer[i]!.corner = true;
    j.form.outer[k]!.corner = true;
  });
  settle();
}

/** Sets node i upright over node k, or level with it. */
export function lineUp(i: number, k: number, how: "upright" | "level"): void {
  edit(() => w.linedUp(i + 1, k + 1, how), "", (j) => {
    if (how === "upright") j.form.outer[i]!.r = j.form.outer[k]!.r;
    else j.form.outer[i]!.z = j.form.outer[k]!.z;
  });
  settle();
}

export const nodeKind = (n: Pick<Node, "corner">): string => (n.corner ? w.corner : w.smooth);

/** Where the nodes stand in the planned contour, as indices; empty while the
 *  plan is of another job. */
export function stations(plan: Plan): number[] {
  const { job, planned } = now();
  return planned === job ? along(plan, job.form.outer) : [];
}

/** Where the nodes of which a plan was made stand in its contour, as indices. */
export function along(plan: Plan, nodes: readonly Node[]): number[] {
  const c = plan.drawing.contour;
  let from = 0;
  return nodes.map((n) => {
    let best = from, least = Infinity;
    for (let i = from; i < c.length; i++) {
      const d = Math.hypot(c[i]![0] / plan.scale - n.r, unseat(plan, c[i]![1]) - n.z);
      if (d < least) [best, least] = [i, d];
      if (d > least + 5 && least < 0.02) break;
    }
    return (from = best);
  });
}

/** The wall's own place half way along a stretch, so that the form stays. */
function halfWay(a: number): At | null {
  const { plan } = now(), at = plan ? stations(plan) : [], c = plan?.drawing.contour ?? [];
  const [from, to] = [at[a], at[a + 1]];
  if (!plan || from === undefined || to === undefined || to - from < 2) return null;
  const [r, z] = c[Math.round((from + to) / 2)]!;
  return [r / plan.scale, unseat(plan, z)];
}

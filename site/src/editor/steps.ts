// What can be done to a node of the profile, each one named step of undo. The
// drawing, the bar below it and the table all call these.
import type { At, Node, Plan } from "../contract";
import { hundredth } from "../numbers";
import { edit, now, set, settle } from "../state";
import { unseat } from "../view";
import { w } from "../words";
import { lineOf, nodeName, nodesOf } from "./surface";

export function moveNode(i: number, r: number, z: number, inside = false): void {
  edit(() => w.moved(nodeName(i, inside)), `node${inside ? "K" : ""}${i}`, (j) => {
    const n = nodesOf(j, inside)[i]!;
    n.r = Math.max(0, hundredth(r));
    n.z = hundredth(z);
  });
}

export function turnNode(i: number, inside = false): void {
  edit(() => w.turned(nodeName(i, inside)), "", (j) => {
    const nodes = nodesOf(j, inside), n = nodes[i]!;
    nodes[i] = n.corner ? { r: n.r, z: n.z } : { r: n.r, z: n.z, corner: true };
  });
  settle();
}

/** Puts a node on the wall: between node i and the next, at a place or half way. */
export function addNode(i: number, inside = false, at?: At): void {
  const nodes = nodesOf(now().job, inside);
  const a = Math.min(i, nodes.length - 2);
  const p = nodes[a]!, q = nodes[a + 1]!;
  const [r, z] = at ?? halfWay(a, inside) ?? [(p.r + q.r) / 2, (p.z + q.z) / 2];
  const node: Node = { r: Math.max(0, hundredth(r)), z: hundredth(z) };
  if (p.corner && q.corner) node.corner = true;
  edit(() => w.added(nodeName(a, inside)), "", (j) => { nodesOf(j, inside).splice(a + 1, 0, node); });
  settle();
  set({ node: a + 1, inside });
}

/** The fewest nodes that a surface may have. */
export const leastNodes = (inside: boolean): number => (inside ? 3 : 2);

export function removeNode(i: number, inside = false): void {
  if (nodesOf(now().job, inside).length <= leastNodes(inside)) return;
  edit(() => w.removed(nodeName(i, inside)), "", (j) => { nodesOf(j, inside).splice(i, 1); });
  settle();
  set({ node: Math.min(i, nodesOf(now().job, inside).length - 1), inside });
}

/** Makes the stretch between two neighbours straight: a corner at both ends. */
export function straighten(i: number, k: number, inside = false): void {
  edit(() => w.straightened(nodeName(Math.min(i, k), inside), nodeName(Math.max(i, k), inside)), "", (j) => {
    nodesOf(j, inside)[i]!.corner = true;
    nodesOf(j, inside)[k]!.corner = true;
  });
  settle();
}

/** Sets node i upright over node k, or level with it. */
export function lineUp(i: number, k: number, how: "upright" | "level", inside = false): void {
  edit(() => w.linedUp(nodeName(i, inside), nodeName(k, inside), how), "", (j) => {
    const nodes = nodesOf(j, inside);
    if (how === "upright") nodes[i]!.r = nodes[k]!.r;
    else nodes[i]!.z = nodes[k]!.z;
  });
  settle();
}

/** Gives the pot an inner surface of its own, or takes it away. */
export function setInner(nodes: Node[] | null): void {
  edit(() => (nodes ? w.innerGiven : w.innerTaken), "", (j) => { j.form.inner = nodes; });
  settle();
  set({ node: null, inside: false });
}

export const nodeKind = (n: Pick<Node, "corner">): string => (n.corner ? w.corner : w.smooth);

/** Where the nodes stand in the planned line of their surface, as indices; empty while
 *  the plan is of another job. */
export function stations(plan: Plan, inside = false): number[] {
  const { job, planned } = now();
  return planned === job ? along(plan, nodesOf(job, inside), lineOf(plan, inside)) : [];
}

/** Where the nodes of which a plan was made stand in one of its lines, as indices. */
export function along(plan: Plan, nodes: readonly Node[], c: readonly At[]): number[] {
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
function halfWay(a: number, inside: boolean): At | null {
  const { plan } = now(), at = plan ? stations(plan, inside) : [], c = plan ? lineOf(plan, inside) : [];
  const [from, to] = [at[a], at[a + 1]];
  if (!plan || from === undefined || to === undefined || to - from < 2) return null;
  const [r, z] = c[Math.round((from + to) / 2)]!;
  return [r / plan.scale, unseat(plan, z)];
}

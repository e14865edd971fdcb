// The wall while the plan of a changed form is still under way: the planned one,
// bent so that it runs through the nodes where they stand now. It is drawn in the
// very frame of the pointer, and is gone with the plan's own wall, as a rule in
// the next; it is a picture of the move, and nothing is read from it.
import type { At, Job, Plan } from "./contract";
import { along } from "./editor/steps";
import { lineOf, nodesOf } from "./editor/surface";

/** A surface of plan, which is of the job planned, bent to the nodes of job;
 *  the plan's own where they are no other, or not the same nodes moved. */
export function ahead(plan: Plan, planned: Job, job: Job, inside = false): At[] {
  const own = lineOf(plan, inside), from = nodesOf(planned, inside), to = nodesOf(job, inside);
  if (from.length !== to.length || planned.form.size !== job.form.size) return own;
  const by = to.map((n, i): At => [(n.r - from[i]!.r) * plan.scale, (n.z - from[i]!.z) * plan.scale * (plan.drawing.turned ? -1 : 1)]);
  if (by.every(([r, z]) => r === 0 && z === 0)) return own;
  const at = along(plan, from, own), out = [...own];
  for (let i = 0; i + 1 < at.length; i++) {
    const [a, b] = [by[i]!, by[i + 1]!], straight = from[i]!.corner && from[i + 1]!.corner;
    if (![...a, ...b].some((x) => x !== 0)) continue;
    const far = [0]; // the way along the stretch
    for (let k = at[i]! + 1; k <= at[i + 1]!; k++) far.push(far.at(-1)! + Math.hypot(own[k]![0] - own[k - 1]![0], own[k]![1] - own[k - 1]![1]));
    far.forEach((way, n) => {
      const t = way / (far.at(-1)! || 1), s = straight ? t : t * t * (3 - 2 * t), [r, z] = own[at[i]! + n]!;
      out[at[i]! + n] = [r + a[0] + s * (b[0] - a[0]), z + a[1] + s * (b[1] - a[1])];
    });
  }
  return out;
}

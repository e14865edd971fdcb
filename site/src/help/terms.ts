// Which words can be asked, in their groups, and where each of them stands in
// the job on the bench, as far as the plan has a figure for it.
import type { Job, Plan } from "../contract";
import { mass, show, volume, withUnit } from "../numbers";
import { chosen } from "../verdict";
import { w } from "../words";

export const groups = {
  release: ["pull", "draft", "catch", "rub", "trap", "letGo", "ripple", "ghost", "pocket"],
  mold: ["partingLine", "seam", "lower", "upper", "side", "core", "block", "natch", "spare", "trimLine", "fillHole", "drainHole", "strap"],
  kit: ["positive", "plug", "plate", "stave", "collar", "tray", "clearance"],
  casting: ["consistency", "slip", "cast", "wall", "bands", "flotation"],
  form: ["shrinkage", "oversize", "testBar", "foot", "section", "node"],
} as const;

export type GroupId = keyof typeof groups;
export type TermId = (typeof groups)[GroupId][number];

export const groupIds = Object.keys(groups) as GroupId[];

const mm = (x: number, digits = 1) => withUnit(x, "mm", digits);

/** Where a word stands in this job, in words; null where it has no figure. */
export function here(id: TermId, job: Job, plan: Plan): string | null {
  const h = w.help, s = chosen(plan), part = (name: string) => s.parts.find((p) => p.name === name);
  const figure = (key: string) => plan.casting[key] as number;
  const between = (p: { zFrom: number; zTo: number } | undefined) => (p ? h.hereBetween(show(p.zFrom), mm(p.zTo)) : h.hereNone);
  const printed = (kind: string) => {
    const n = plan.prints.filter((p) => p.kind === kind).length;
    return n ? h.hereCount(n) : h.hereNone;
  };
  switch (id) {
    case "pull": return h.hereParts(s.count);
    case "draft": return h.hereAsked(withUnit(job.rules.leastDraft, "°").replace("\u00a0", ""));
    case "catch": {
      const deep = s.parts.flatMap((p) => p.catches).sort((a, b) => b.depth - a.depth)[0];
      return deep ? h.hereDeepest(mm(deep.depth, 2), mm(deep.atZ)) : h.hereNone;
    }
    case "rub": return h.hereShare(withUnit(Math.max(...s.parts.map((p) => p.rubShare)), "%"), withUnit(job.rules.rubShare, "%"));
    case "trap": return plan.traps.length ? plan.traps.map((t) => h.hereBetween(show(t.zFrom), mm(t.zTo))).join("; ") : h.hereNone;
    case "letGo": return withUnit(job.clay.releaseShrinkage, "%");
    case "pocket": {
      const held = [...plan.flow.air, ...plan.flow.slip].reduce((sum, p) => sum + p.volume, 0);
      return held > 0 ? h.hereHeld(volume(held)) : h.hereNone;
    }
    case "partingLine": case "seam": {
      const at = s.partingHeights.map((z) => show(z));
      return at.length ? h.hereAbove(at.join("; ") + "\u00a0mm") : s.count === 1 ? h.hereNoSeam : null;
    }
    case "lower": case "upper": case "core": return between(part(id));
    case "side": return s.sides ? between(part("A")) : h.hereNone;
    case "block": return h.hereBlock(mm(job.plaster.wall, 0), mm(job.plaster.base, 0));
    case "natch": {
      const [first] = plan.drawing.natches;
      return first ? h.hereNatches(plan.drawing.natches.length, mm(2 * first.radius)) : h.hereNone;
    }
    case "spare": return job.mold.spare ? h.hereHigh(mm(job.mold.spare.height)) : h.hereNone;
    case "trimLine": return plan.drawing.opening[0] ? h.hereAbove(mm(plan.drawing.opening[0][1])) : h.hereNone;
    case "fillHole": {
      const end = job.form.outer[job.form.outer.length - 1]!, mouth = plan.drawing.opening[0];
      return end.r === 0 && mouth ? h.hereAcross(mm(2 * mouth[0])) : h.hereNone;
    }
    case "drainHole": return job.mold.drainHole === null ? h.hereNone : h.hereAcross(mm(job.mold.drainHole));
    case "positive": case "plate": return printed("positive");
    case "stave": return h.hereStaves(job.mold.staves);
    case "collar": case "tray": case "plug": return printed(id);
    case "clearance": return mm(job.printer.clearance, 2);
    case "ripple": return mm(job.printer.layer, 2);
    case "consistency": return h.hereWater(show(job.plaster.consistency, 0));
    case "slip": return withUnit(job.clay.slipDensity, "g/ml", 2);
    case "cast": return mass(figure("castWet"));
    case "wall": return h.hereWall(mm(job.clay.wall), withUnit(figure("minutes"), "min", 0));
    case "bands": return s.count > 1 ? h.hereForce(withUnit(figure("bandForce"), "N", 0)) : h.hereNoSeam;
    case "flotation": return figure("flotation") > 0 ? h.hereLift(mass(figure("flotationMass"))) : h.hereNone;
    case "shrinkage": return withUnit(figure("totalShrinkage"), "%");
    case "oversize": return h.hereTimes(show(plan.scale, 3));
    case "ghost": case "strap": case "testBar": case "foot": case "section": case "node": return null;
  }
}

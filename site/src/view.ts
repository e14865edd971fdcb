// From mm in the half-plane to pixels on the screen: one scale for both
// directions, so that proportions are true. The elevation lies left of the axis,
// the section, with the plaster around it, right.
import type { At, Part, Plan } from "./contract";
import type { Zoom } from "./editor/zoom";

export interface View {
  width: number; height: number;
  /** Pixels a mm. */
  k: number;
  /** The axis, and the level z = 0. */
  x0: number; y0: number;
  /** Extents in mm: the pot's radius, the block's, its bottom and top. */
  pot: number; block: number; bottom: number; top: number;
}

/** Room in px left for the ruler, right and above and below for pull arrows; where the
 *  drawing is narrow also below for the buttons of zoom, which have room beside it else. */
const room = (width: number) => ({ left: 52, right: 46, top: 44, bottom: width < 480 ? 92 : 44 });

/** The view that holds the closed mold, or, where it is taken apart, whatever
 *  stands between the extents. */
export function fit(plan: Plan, width: number, height: number, all?: { left: number; right: number; bottom: number; top: number }): View {
  const around = room(width);
  let block = plan.size.maxRadius, bottom = 0, top = plan.size.height, pot = block;
  for (const p of plan.drawing.parts) {
    for (const [r, z] of p.outline) {
      block = Math.max(block, r);
      bottom = Math.min(bottom, z);
      top = Math.max(top, z);
    }
  }
  if (all) [pot, block, bottom, top] = [Math.max(pot, all.left), Math.max(block, all.right), Math.min(bottom, all.bottom), Math.max(top, all.top)];
  const k = Math.max(0.05, Math.min(
    (width - around.left - around.right) / (pot + block),
    (height - around.top - around.bottom) / (top - bottom),
    8,
  ));
  const spare = { x: width - around.left - around.right - k * (pot + block), y: height - around.top - around.bottom - k * (top - bottom) };
  return {
    width, height, k, pot, block, bottom, top,
    x0: around.left + spare.x / 2 + k * pot,
    y0: height - around.bottom - spare.y / 2 + k * bottom,
  };
}

/** The same view, looked at from nearer. */
export function zoomed(v: View, z: Zoom): View {
  return z.by === 1 ? v : { ...v, k: v.k * z.by, x0: v.x0 * z.by + z.dx, y0: v.y0 * z.by + z.dy };
}

const px = (x: number) => Math.round(x * 10) / 10;
export const X = (v: View, r: number): number => px(v.x0 + r * v.k);
export const Y = (v: View, z: number): number => px(v.y0 - z * v.k);

/** A path through places (radius, height); side -1 draws it left of the axis. */
export function path(v: View, at: readonly (readonly [number, number])[], closed = false, side = 1): string {
  let d = "";
  for (const [r, z] of at) d += `${d ? "L" : "M"}${X(v, side * r)} ${Y(v, z)}`;
  return closed ? d + "Z" : d;
}

/** A step of 1, 2 or 5 times a power of ten that is at least so many px. */
export function tick(v: View, least: number): number {
  const want = least / v.k;
  const ten = 10 ** Math.floor(Math.log10(want));
  for (const m of [1, 2, 5]) if (m * ten >= want) return m * ten;
  return 10 * ten;
}

const same = (a: At, b: At) => a[0] === b[0] && a[1] === b[1];

/** The seam between two parts' outlines: the points they share, from the pot outward. */
export function seam(a: readonly At[], b: readonly At[]): At[] {
  return a.filter((p) => b.some((q) => same(p, q))).sort((p, q) => p[0] - q[0]);
}

/** The pieces of the contour that a part holds: from and to, as indices. */
export function held(plan: Plan, part: Part): [number, number] {
  const { contour, parts } = plan.drawing;
  const outline = (parts.find((p) => p.name === part.name) ?? parts.find((p) => p.name === "A"))?.outline ?? [];
  const on = contour.map((p, i) => (outline.some((q) => same(p, q)) ? i : -1)).filter((i) => i >= 0);
  return on.length ? [on[0]!, on[on.length - 1]!] : [0, 0];
}

/** Which of the three pulls a part has, as the index of its draft in a stretch. */
export const pullOf = (part: Part): 0 | 1 | 2 => (part.pull[2] < 0 ? 0 : part.pull[2] > 0 ? 1 : 2);

/** Where a node's height stands in the mold, and back. */
export const seat = (plan: Plan, z: number): number => plan.drawing.lift + (plan.drawing.turned ? -z : z) * plan.scale;
export const unseat = (plan: Plan, z: number): number => ((plan.drawing.turned ? -1 : 1) * (z - plan.drawing.lift)) / plan.scale;

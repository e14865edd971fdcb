// What the Release and Parts panels are looking at, beyond the job itself: which
// pull, how far the wall is stretched, which place is pointed out, how far the
// mold is taken apart. None of it is saved.
import type { At, Job, Nearest, Plan } from "./contract";

/** The three pulls, as the index of their draft in a stretch. */
export type Pull = 0 | 1 | 2;

/** A form that lets go, with its wall for the ghost line; or why there is none. */
export interface Near { found: Nearest | null; why: string; contour: At[] }

export interface Look {
  /** The whole wall under this pull; null for the wall that the part holds. */
  pull: Pull | null;
  /** Radial differences are drawn so many times as large, about this line. */
  stretch: number;
  line: "ends" | "upright";
  /** A place that is pointed out, and which line of the panel asked for it. */
  place: { zFrom: number; zTo: number; of: string } | null;
  /** Id of the scheme whose fault is shown on the drawing. */
  scheme: string | null;
  /** How far the mold is taken apart: whole parts in their order, and the
   *  share of the next one's way. */
  apart: number;
  /** What the parts come away from. */
  body: "positive" | "cast";
  /** The nearest forms for one and two parts, and the job they are of. */
  near: { of: Job; one: Near; two: Near } | null;
  /** Which of them is drawn; null for the one that would save a part. */
  ghost: "one" | "two" | "none" | null;
  /** The bench shows the mold in space: the mold itself or its kit, and where
   *  it is cut, as a share of its half width. */
  space: boolean;
  /** The bench tells in tables what the drawing shows. */
  table: boolean;
  what: "mold" | "kit";
  cut: number | null;
}

export const firstLook: Look = {
  pull: null, stretch: 1, line: "ends", place: null, scheme: null, apart: 0, body: "positive", near: null, ghost: null,
  space: false, table: false, what: "mold", cut: 0,
};

/** Which ghost line is drawn. */
export function ghostOf(look: Look, plan: Plan): "one" | "two" | "none" {
  if (look.ghost) return look.ghost;
  const count = plan.schemes.find((s) => s.id === plan.chosen)?.count ?? 1;
  return count > 2 ? "two" : count === 2 ? "one" : "none";
}

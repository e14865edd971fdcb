// What crosses the boundary to the core, as types: the job that the user saves
// and the plan that the core makes of it. Lengths mm, angles degrees, volumes
// ml, masses g, times min; the plan's geometry is at mold size. The core is the
// authority; nothing here adds meaning.

export interface Node { r: number; z: number; corner?: boolean }

export interface Job {
  format: string;
  version: number;
  name: string;
  form: { size: "fired" | "mold"; outer: Node[]; inner: Node[] | null; section: { kind: string } };
  clay: {
    dryingShrinkage: number; firingShrinkage: number; releaseShrinkage: number; wall: number;
    slipDensity: number; solidsDensity: number; testCast: { wall: number; minutes: number };
  };
  plaster: { consistency: number; wall: number; base: number };
  printer: { bed: [number, number, number]; layer: number; clearance: number; shell: number };
  rules: { leastDraft: number; rubShare: number };
  mold: {
    scheme: string; partingHeights: number[] | null; sides: number | null;
    fillHole: number | null; drainHole: number | null; spare: { height: number } | null;
    staves: number; natches: boolean;
  };
}

/** Bad input, with the field and line where they apply and the remedy in the message. */
export interface Fault { code: string; message: string; field?: string; line?: number }

export type Verdict = "clear" | "rubs" | "catches";

export interface Catch {
  zFrom: number; zTo: number; depth: number; blockedAtZ: number; clayForgives: boolean;
  /** The place of the deepest catch. */
  atR: number; atZ: number;
}

export interface Part {
  name: string;
  pull: [number, number, number];
  zFrom: number; zTo: number;
  sector: [number, number] | null;
  verdict: Verdict;
  minDraft: number; rubbingArea: number; rubShare: number;
  draftBands: { from: number; to: number; area: number }[];
  catches: Catch[];
  volume: number; plaster: number; water: number; wet: number; dry: number;
}

export interface Scheme {
  id: string; count: number; verdict: Verdict; partingHeights: number[]; parts: Part[];
  /** Its parts in words, and what stands against it. */
  name: string; against: string;
  plaster: number;
}

export interface Trap { zFrom: number; zTo: number; rFrom: number; rTo: number; depth: number; volume: number }

export interface Print {
  name: string; part: string; size: [number, number, number]; fitsBed: boolean; volume: number;
}

/** A place in the half-plane: radius, height. */
export type At = [number, number];

export interface Plan {
  /** The verdict and what to do next, in words. */
  verdict: string;
  next: string[];
  scale: number;
  size: {
    height: number; maxRadius: number; firedHeight: number; firedRadius: number; capacityFired: number; castArea: number;
  };
  schemes: Scheme[];
  chosen: string;
  advised: string;
  whyNotFewer: string;
  order: string[];
  traps: Trap[];
  cautions: string[];
  casting: Record<string, unknown>;
  prints: Print[];
  drawing: Drawing;
}

/** One file of a solids reply; its bytes are the blob of the same index. */
export interface SolidFile {
  name: string; kind: string; part: string; triangles: number; volume: number; size: [number, number, number];
}

/** What the drawing shows, in the half-plane at mold size. */
export interface Drawing {
  /** What was added to every z of the scaled nodes so that the foot stands at 0. */
  lift: number;
  /** The outer wall from the axis under the foot to the rim. */
  contour: At[];
  /** The inside of the cast, in the same order; null where the wall fills it. */
  inner: At[];
  /** The wall of the spare or the fill hole, on from the mouth. */
  opening: At[];
  /** The plaster parts in section; one stands for all side parts. */
  parts: { name: string; outline: At[] }[];
  natches: { part: string; at: At; azimuth: number; radius: number; level: boolean }[];
  /** For each piece of contour: draft and depth of catch for the pulls down, up, outward. */
  stretches: { draft: [number, number, number]; depth: [number, number, number] }[];
}

/** One figure of casting with how it comes about. */
export interface Row {
  group: string; key: string; label: string; value: number; unit: string; digits: number;
  formula: string; source: string; status: string;
}
